package whatif

import (
	"fmt"
	"path"
	"regexp"
	"slices"
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/sorted"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// factForm is a fact of the house that is supposed to be otherwise: what it is a fact of,
// with its name where the process uses several, its word, and what it is to be.
var factForm = regexp.MustCompile(`^\s*(grain|site|vessel|floor|kiln)(?:\s+"([^"]*)")?\s+([a-z-]+)\s+to\s+(\S.*?)\s*$`)

// stageForm is a statement of a stage that is supposed to be otherwise: the stage, its number
// where there are several, the word of the statement and what stands behind it.
var stageForm = regexp.MustCompile(`^\s*(steep|germinate|wither|kiln)(?:\s+(\d{1,3}))?\s+([a-z-]+)\s+to\s+(\S.*?)\s*$`)

// isFact tells whether a change is of a fact of the house.
func isFact(change string) bool {
	word, _, _ := strings.Cut(strings.TrimSpace(change), " ")
	switch vocabulary.Opens(vocabulary.File, word) {
	case vocabulary.Grain, vocabulary.Site, vocabulary.Vessel, vocabulary.Floor, vocabulary.KilnFacts:
		return true
	}
	return false
}

// asLines are the lines of a record for changes of steps and of the charge. The error is a
// Misuse.
func asLines(changes []string) ([]string, error) {
	list := make([]string, len(changes))
	for i, c := range changes {
		line := strings.TrimSpace(c)
		word, _, _ := strings.Cut(line, " ")
		switch _, own := vocabulary.Lookup(vocabulary.Batch, word); {
		case strings.ContainsAny(line, "{}\r\n"):
			return nil, Misuse(fmt.Sprintf("%q is more than a line", line))
		case isStep(word):
			line = vocabulary.RecordChanged + " " + line
		case !own:
			return nil, Misuse(fmt.Sprintf("%q names neither a step nor a fact of the house. A change begins with a step (soak 1 to 6 h), a stage (germinate turn to every 6 h), from (from 5 kg of \"...\"), or with grain, site, vessel, floor, kiln or the name of one (site air to 5 °C)", line))
		}
		if first, _, _ := strings.Cut(line, " "); first == vocabulary.RecordChanged && !strings.Contains(line, vocabulary.ClauseBecause) {
			line += " " + vocabulary.ClauseBecause + ` "supposed"`
		}
		list[i] = line
	}
	return list, nil
}

// isStep tells whether a word is a step that a record can have changed.
func isStep(word string) bool {
	row, _ := vocabulary.Lookup(vocabulary.Batch, vocabulary.RecordChanged)
	return slices.ContainsFunc(row.Slots, func(s vocabulary.Slot) bool { return slices.Contains(s.Words, word) })
}

// altered reads the files of a house, of which some are supposed to be otherwise.
type altered struct {
	read.Reader
	first string // the path of the main file
	texts map[string][]byte
}

// Read gives a file as it is supposed to be. Errors are those of the reader.
func (a *altered) Read(name string) ([]byte, error) {
	if text, ok := a.texts[path.Clean(name)]; ok {
		return text, nil
	}
	return a.Reader.Read(name)
}

func (a *altered) main() []byte { return a.texts[a.first] }

// base is what the main file is called in its folder.
func (a *altered) base() string { return path.Base(a.first) }

// withFacts writes facts into copies of the texts in which they stand.
func (c Case) withFacts(p *model.Process, facts []string) (*altered, error) {
	a := &altered{Reader: c.Reader, texts: map[string][]byte{}}
	a.first = path.Join(c.Dir, path.Base(strings.ReplaceAll(c.Name, `\`, "/")))
	if c.Name == "-" {
		a.first = path.Join(c.Dir, "standard input.malt")
	}
	a.texts[a.first] = c.Text
	edits := map[*source.File][]edit{}
	for _, fact := range facts {
		find := factEdit
		if isInStage(fact) {
			find = stageEdit
		}
		f, e, err := find(p, fact)
		if err != nil {
			return nil, err
		}
		if slices.ContainsFunc(edits[f], func(o edit) bool { return !e.span.Empty() && o.span == e.span }) {
			return nil, Misuse(fmt.Sprintf("%q: the same is changed before it; leave one of the two out", fact))
		}
		edits[f] = append(edits[f], e)
	}
	for f, list := range edits {
		at := a.first
		if f.Name() != c.Name {
			at = c.Below(f)
		}
		a.texts[path.Clean(at)] = applied(f.Bytes(), list)
	}
	return a, nil
}

// edit puts words in the place of others.
type edit struct {
	span source.Span
	new  string
}

func applied(text []byte, list []edit) []byte {
	sorted.Stable(list, func(x, y edit) int { return y.span.Start - x.span.Start })
	for _, e := range list {
		text = slices.Concat(text[:e.span.Start], []byte(e.new), text[e.span.End:])
	}
	return text
}

// factEdit finds where a fact stands.
func factEdit(p *model.Process, fact string) (*source.File, edit, error) {
	m := factForm.FindStringSubmatch(fact)
	if m == nil {
		word, _, _ := strings.Cut(strings.TrimSpace(fact), " ")
		return nil, edit{}, Misuse(fmt.Sprintf("%q is no change of the %s; write it as: %s", fact, word, sampleOf(word)))
	}
	file, block, err := blockOf(p, m[1], m[2])
	if err != nil {
		return nil, edit{}, err
	}
	inside := vocabulary.Opens(vocabulary.File, m[1])
	if _, ok := vocabulary.Lookup(inside, vocabulary.Today(m[3])); !ok {
		meant, near := vocabulary.Meant(inside, m[3])
		if !near {
			meant = strings.Join(vocabulary.Words(inside), ", ")
		}
		return nil, edit{}, Misuse(fmt.Sprintf("%q is no fact of a %s; known here: %s", m[3], m[1], meant))
	}
	return inBlock(file, block, m[1], m[3], m[4])
}

// without is what a fact is said to be that is not there.
const without = "none"

// inBlock writes a statement of a block otherwise; one that is not there is added, and one
// that is to be none goes.
func inBlock(file *source.File, block *syntax.Statement, kind, word, to string) (*source.File, edit, error) {
	var stands []*syntax.Statement
	for _, s := range block.Body.Statements {
		if s.Verb.Text == vocabulary.Today(word) {
			stands = append(stands, s)
		}
	}
	line := word + " " + to
	switch {
	case len(stands) > 1:
		return nil, edit{}, Misuse(fmt.Sprintf("%s %s stands %d times, and it is not clear which is meant; change it in a copy of the file", kind, word, len(stands)))
	case len(stands) == 1 && to == without && !takesNone(kind, word):
		return file, edit{stands[0].Span, ""}, nil
	case len(stands) == 1:
		return file, edit{stands[0].Span, line}, nil
	case to == without:
		return nil, edit{}, Misuse(fmt.Sprintf("the %s has no %s that could go", kind, word))
	}
	end := block.Body.End - 1 // in front of the brace
	return file, edit{source.Span{Start: end, End: end}, "\n" + line + "\n"}, nil
}

// takesNone tells whether none is a value of the fact itself, as of mould.
func takesNone(kind, word string) bool {
	row, ok := vocabulary.Lookup(vocabulary.Opens(vocabulary.File, kind), vocabulary.Today(word))
	return ok && slices.ContainsFunc(row.Slots, func(s vocabulary.Slot) bool { return slices.Contains(s.Words, without) })
}

// sampleOf is a change of a fact as it is written: site air to 8 to 15 °C.
func sampleOf(word string) string {
	inside := vocabulary.Opens(vocabulary.File, word)
	for _, fact := range vocabulary.Words(inside) {
		if row, ok := vocabulary.Lookup(inside, fact); ok && len(row.Slots) == 1 && row.Slots[0].Kind == vocabulary.Amount {
			return word + " " + strings.Replace(row.Example, " ", " to ", 1)
		}
	}
	return word
}

// blockOf finds the one definition that the process uses of a kind, or the one of a name.
func blockOf(p *model.Process, kind, called string) (*source.File, *syntax.Statement, error) {
	var files []*source.File
	var blocks []*syntax.Statement
	var names []string
	for _, u := range usedBy(p) {
		if u.kind == kind && (called == "" || u.name == called) {
			files, blocks, names = append(files, u.file), append(blocks, u.block), append(names, fmt.Sprintf("%s %q", kind, u.name))
		}
	}
	switch {
	case len(blocks) == 1:
		return files[0], blocks[0], nil
	case len(blocks) > 1:
		return nil, nil, Misuse(fmt.Sprintf("the process uses several: %s; say which", strings.Join(names, ", ")))
	case called != "":
		return nil, nil, Misuse(fmt.Sprintf("the process uses no %s %q", kind, called))
	}
	return nil, nil, Misuse(fmt.Sprintf("the process uses no %s", kind))
}

func nameOf(s *syntax.Statement) string {
	if len(s.Terms) == 0 {
		return ""
	}
	t, _ := s.Terms[0].(syntax.Text)
	return t.Value
}
