package man

import (
	_ "embed"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"maltwright/cmd/answer/reference"
)

// LanguagePage is the name of the page of the language.
const LanguagePage = program + "-language"

// example is a file that reads, and of which nothing is found.
//
//go:embed example.malt
var example string

// Reference is what there is to say of the language.
type Reference struct {
	Entries []reference.Entry // statements, measures and thresholds, as they are to stand
	Units   []reference.Units
}

// kinds are the sections that entries stand in.
var kinds = []struct {
	heading, about string
	kind           reference.Kind
}{
	{"STATEMENTS", "A form shows in round brackets what may be left out, in pointed ones what a value is.", reference.Word},
	{"MEASURES", "They are what until and gate wait for.", reference.Measure},
	{"PROMISES", "They are measures of the whole process, for expect.", reference.Promise},
}

// Language is the page of the language: what a file is, and each word of it.
func Language(l Reference, s Stamp) Page {
	r := begun(LanguagePage, 5, "The language of malting processes, records of batches and houses", s)
	r.macro("SH", "DESCRIPTION")
	r.prose(`A house process is a text file in UTF-8 that ends in .malt. A process says what is done, stage by stage; the other
blocks are facts of the house: lots of grain, the place at its time of year, vessels, floors, kilns, scales. A batch is the record
of one run of a process. A process calls the facts by their quoted names, and it does not matter which stands first.`)
	r.prose(`A statement begins with a word, and values and clauses follow. It ends with its line, with a ";", or with the brace that
closes its block. What stands behind a # is for people. Every number carries its unit: 14 to 17 °C, 7 h 30 min, 5 lb 4 oz. A bound is
at least, at most, above, below or is, in front of the value. Dates are written 2026-03-06, times of day 06:30.`)
	for _, k := range kinds {
		r.macro("SH", k.heading)
		r.prose(k.about)
		for _, e := range l.Entries {
			if e.Kind == k.kind {
				r.entry(e)
			}
		}
	}
	r.macro("SH", "UNITS")
	r.prose("Each with the other ways to spell it.")
	for _, u := range l.Units {
		r.macro("SS", u.Dimension)
		for _, unit := range u.Units {
			r.item(bold(unit.Name), unit.Doc, "")
		}
	}
	r.macro("SH", "EXAMPLES")
	r.prose("The house and the lot are invented.")
	r.literal(strings.Split(strings.TrimSuffix(example, "\n"), "\n"))
	r.also(Page{Name: program, Section: 1}, Page{Name: program + "-explain", Section: 1}, Page{Name: program + "-card", Section: 1})
	return Page{Name: LanguagePage, Section: 5, Text: r.b.String()}
}

// entry writes a word of the language.
func (r *roff) entry(e reference.Entry) {
	form := e.Form
	if form == "" {
		form = e.Name
	}
	said := sentence(e.Doc)
	if len(e.In) > 0 {
		said += " It stands in: " + strings.Join(e.In, ", ") + "."
	}
	if len(e.Words) > 0 {
		said += " It is one of: " + strings.Join(e.Words, ", ") + "."
	}
	if e.Looks != "" {
		said += " " + sentence(e.Looks)
	}
	r.item(formed(form), said, near)
	if len(e.Clauses)+len(e.Values) > 0 {
		r.macro("RS", near)
		for _, c := range e.Clauses {
			r.item(bold(c.Name), c.Doc, "")
		}
		for _, v := range e.Values {
			r.item(italic(strings.TrimSpace("values "+v.Name)), v.Doc, "")
		}
		r.macro("RE")
	}
	if e.Example != "" {
		r.literal(laid(e.Example))
	}
}

// sentence is what is said of a word with a capital and a stop, so that another sentence may follow.
func sentence(text string) string {
	text = strings.TrimSpace(text)
	if text == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(text)
	text = string(unicode.ToUpper(first)) + text[size:]
	if strings.HasSuffix(text, ".") || strings.HasSuffix(text, "?") || strings.HasSuffix(text, "!") {
		return text
	}
	return text + "."
}

// near is how far in the text of an entry stands, so that a statement fits beside it on 80 columns; wide is a longer one.
const (
	near = "2"
	wide = 71
)

// laid gives the lines of an example: a block that is too long for one has its statements on lines of their own.
func laid(example string) []string {
	head, rest, isBlock := strings.Cut(strings.TrimSuffix(example, "\n"), " { ")
	if !isBlock || utf8.RuneCountInString(example) <= wide {
		return strings.Split(strings.TrimSuffix(example, "\n"), "\n")
	}
	lines := []string{head + " {"}
	for _, s := range strings.Split(strings.TrimSuffix(rest, " }"), "; ") {
		lines = append(lines, "  "+s)
	}
	return append(lines, "}")
}

// formed writes the form of a statement, whose first word is what it is looked up by.
func formed(form string) string {
	word, rest, more := strings.Cut(form, " ")
	if !more {
		return bold(word)
	}
	return fmt.Sprintf("%s %s", bold(word), escaped(rest))
}
