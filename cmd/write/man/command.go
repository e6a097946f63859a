package man

import (
	"strings"
)

// Command is a command as its help tells of it.
type Command struct {
	Path      string // "" for the program, "reckon target" for the command behind these words
	About     string // in a sentence
	Detail    string // at length: paragraphs, and lines further in that are to be typed
	Usage     string // what stands behind its name on the command line
	Arguments []Word
	Flags     []Word
	Commands  []Command // those below it
}

// Word is an argument, a flag or a variable, with what it means.
type Word struct{ Name, Help string }

// name is that of the page of a command.
func (c Command) name() string {
	return strings.ReplaceAll(strings.TrimSpace(program+" "+c.Path), " ", "-")
}

// Pages are the page of a command and those of all below it.
func Pages(c Command, s Stamp) []Page {
	return pages(c, s, nil)
}

func pages(c Command, s Stamp, above []Page) []Page {
	list := []Page{{Name: c.name(), Section: 1, Text: c.text(s, above)}}
	above = append(above[:len(above):len(above)], Page{Name: c.name(), Section: 1})
	for _, below := range c.Commands {
		list = append(list, pages(below, s, above)...)
	}
	return list
}

func (c Command) text(s Stamp, above []Page) string {
	r := begun(c.name(), 1, c.summary(), s)
	r.macro("SH", "SYNOPSIS")
	r.line(strings.TrimSpace(bold(strings.TrimSpace(program+" "+c.Path)) + " " + escaped(c.Usage)))
	said := parted(c.Detail)
	r.macro("SH", "DESCRIPTION")
	r.prose(c.About)
	r.paragraphs(said.description)
	if len(c.Commands) > 0 {
		r.macro("SH", "COMMANDS")
		for _, below := range c.Commands {
			r.item(bold(strings.TrimPrefix(below.Path, c.Path+" ")), below.About, "")
		}
	}
	r.words("ARGUMENTS", c.Arguments)
	r.words("OPTIONS", c.Flags)
	r.section("EXIT STATUS", said.exit)
	if c.Path == "" {
		r.program()
	}
	r.section("EXAMPLES", said.examples)
	r.also(append(above, c.beside()...)...)
	return r.b.String()
}

// summary is what the name of the page is followed by; the program tells of itself in its first paragraph.
func (c Command) summary() string {
	about, _, _ := strings.Cut(c.About, "\n")
	return about
}

// beside are the pages to read beside that of a command: those of its own commands, and the language.
func (c Command) beside() (list []Page) {
	for _, below := range c.Commands {
		list = append(list, Page{Name: below.name(), Section: 1})
	}
	return append(list, Page{Name: LanguagePage, Section: 5})
}

// said are the parts of a longer help, each with its paragraphs.
type said struct{ description, exit, examples []string }

// parted parts a longer help: what stands below "Examples:", and what begins with "Exit code:", have sections of
// their own on a page.
func parted(detail string) (s said) {
	into := &s.description
	for _, p := range strings.Split(strings.Trim(detail, "\n"), "\n\n") {
		head, rest, _ := strings.Cut(p, "\n")
		codes, isExit := strings.CutPrefix(p, "Exit code: ")
		switch {
		case p == "":
		case head == "Examples:":
			into = &s.examples
			if rest != "" {
				s.examples = append(s.examples, rest)
			}
		case isExit:
			s.exit = append(s.exit, codes)
		case into == &s.examples && !isLiteral(p):
			into = &s.description
			fallthrough
		default:
			*into = append(*into, p)
		}
	}
	return s
}

// isLiteral tells whether a paragraph is of lines to type, which stand further in.
func isLiteral(paragraph string) bool {
	for line := range strings.Lines(paragraph) {
		if !strings.HasPrefix(line, "  ") {
			return false
		}
	}
	return true
}

// section writes paragraphs below a heading of their own, if there are any.
func (r *roff) section(heading string, paragraphs []string) {
	if len(paragraphs) > 0 {
		r.macro("SH", heading)
		r.paragraphs(paragraphs)
	}
}

func (r *roff) paragraphs(list []string) {
	for _, p := range list {
		if !isLiteral(p) {
			r.prose(p)
			continue
		}
		var lines []string
		for line := range strings.Lines(p) {
			lines = append(lines, strings.TrimSuffix(strings.TrimPrefix(line, "  "), "\n"))
		}
		r.literal(lines)
	}
}

// words writes a list of words, if there are any.
func (r *roff) words(heading string, list []Word) {
	if len(list) == 0 {
		return
	}
	r.macro("SH", heading)
	for _, w := range list {
		r.item(term(w.Name), w.Help, "")
	}
}

// term is a flag or an argument as it is shown: what is typed as it is is bold, what stands for something else is not.
func term(name string) string {
	flag, value, has := strings.Cut(name, "=")
	switch {
	case !strings.HasPrefix(name, "-"):
		return italic(name)
	case has:
		return bold(flag) + "=" + italic(value)
	}
	return bold(name)
}
