// Package reference answers what a word means: a word of the language, a measure, a
// threshold, a unit or a rule, each from its own declaration.
package reference

import (
	"slices"
	"strings"

	"maltwright/check"
	"maltwright/lang/finding"
	"maltwright/lang/nearest"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// Kind is what an entry is about.
type Kind string

// The kinds.
const (
	Word      Kind = "word"      // it begins a statement
	Measure   Kind = "measure"   // for until and gate
	Promise   Kind = "promise"   // a measure of the whole process, for expect
	Threshold Kind = "threshold" // for a limits block
	Rule      Kind = "rule"
	Part      Kind = "part" // a word within statements
	Term      Kind = "term" // a word that the program says
	Unit      Kind = "unit"
)

// Entry is what there is to say of a name. What does not apply to its kind is empty.
type Entry struct {
	Name     string
	Kind     Kind
	Doc      string
	In       []string `json:",omitempty"` // blocks that a word stands in
	Form     string   `json:",omitempty"`
	Clauses  []Named  `json:",omitempty"`
	Values   []Named  `json:",omitempty"` // between what a value may lie
	Inside   []string `json:",omitempty"` // words of the block that it opens
	Words    []string `json:",omitempty"` // that a measure is asked for
	Example  string   `json:",omitempty"`
	Severity string   `json:",omitempty"` // of a rule, usually
	Why      string   `json:",omitempty"`
	Do       string   `json:",omitempty"`
	Limits   string   `json:",omitempty"`
	Bad      string   `json:",omitempty"`
	Good     string   `json:",omitempty"`
	Since    string   `json:",omitempty"` // the version that brought a rule
	Looks    string   `json:",omitempty"` // how it looks and feels
	Drawing  []string `json:",omitempty"` // lines of a drawing
}

// Named is a text under a name.
type Named struct{ Name, Doc string }

// Of gives every entry of a name: a word can stand in several blocks, and be a measure
// as well. An older word of the language has the entries of that of today.
func Of(name string) (list []Entry) {
	if list = of(vocabulary.Today(name)); len(list) > 0 {
		return list
	}
	for _, g := range vocabulary.Glossary() { // DON, and dormancy at the head of a sentence
		if strings.EqualFold(g.Word, name) {
			return of(g.Word)
		}
	}
	return nil
}

func of(name string) (list []Entry) {
	for _, r := range vocabulary.Rows() {
		if r.Word == name {
			list = append(list, word(r))
		}
	}
	for _, m := range vocabulary.Measures() {
		if m.Word == name {
			list = append(list, measure(m))
		}
	}
	if n := len(list); n > 1 && list[n-1].Kind == Measure && slices.Equal(list[0].In, []string{string(vocabulary.House)}) {
		slices.Reverse(list) // what is seen on the grain stands before a factor that goes by it
	}
	for _, l := range vocabulary.LimitNames() {
		if l.Word == name && len(list) == 0 {
			list = append(list, Entry{Name: l.Word, Kind: Threshold, Doc: l.Doc, Values: []Named{{"", l.Sense.Text()}}})
		}
	}
	list = glossed(name, list)
	if u, ok := unit(name); ok && len(list) == 0 {
		list = append(list, u)
	}
	for _, r := range check.Rules() {
		if r.Name == name {
			list = append(list, rule(r))
		}
	}
	return list
}

func word(r vocabulary.Row) Entry {
	e := Entry{Name: r.Word, Kind: Word, Doc: r.Doc, Form: vocabulary.Form(r), Example: r.Example}
	for _, b := range r.In {
		e.In = append(e.In, string(b))
	}
	for _, c := range r.Clauses {
		e.Clauses = append(e.Clauses, Named{c.Word, c.Doc})
	}
	for _, s := range vocabulary.Senses(r) {
		e.Values = append(e.Values, Named{s.Label, s.Sense.Text()})
	}
	if r.Opens != vocabulary.None {
		e.Inside = vocabulary.Words(r.Opens)
	}
	return e
}

func measure(m vocabulary.Measure) Entry {
	e := Entry{Name: m.Word, Kind: Measure, Doc: m.Doc, Words: m.Words}
	if m.Promise {
		e.Kind = Promise
	}
	return e
}

// firstVersion brought the rules that do not say since when they are.
const firstVersion = "0.1"

func rule(r finding.Rule) Entry {
	e := Entry{Name: r.Name, Kind: Rule, Doc: r.Title, Severity: r.Severity.String(), Why: r.Why, Do: r.Do, Limits: r.Limits, Bad: r.Bad, Good: r.Good, Since: r.Since}
	if e.Since == "" {
		e.Since = firstVersion
	}
	return e
}

// Words lists the words of the language and the measures, each name once, with its first
// meaning.
func Words() (list []Entry) {
	seen := map[string]bool{}
	add := func(e Entry) {
		if !seen[e.Name] {
			seen[e.Name] = true
			list = append(list, e)
		}
	}
	for _, r := range vocabulary.Rows() {
		add(word(r))
	}
	for _, m := range vocabulary.Measures() {
		add(measure(m))
	}
	return list
}

// Rules lists the rules.
func Rules() (list []Entry) {
	for _, r := range check.Rules() {
		list = append(list, rule(r))
	}
	return list
}

// Units are those of one dimension.
type Units struct {
	Dimension string
	Units     []Named // as they may be spelt, and what they are
}

// AllUnits lists the units of the language by dimension.
func AllUnits() (list []Units) {
	for _, u := range quantity.Units() {
		of := u.Dimension.String()
		if n := len(list); n == 0 || list[n-1].Dimension != of {
			list = append(list, Units{Dimension: of})
		}
		last := &list[len(list)-1]
		last.Units = append(last.Units, Named{strings.Join(append([]string{u.Name}, u.Aliases...), " "), u.Doc})
	}
	return list
}

// Names are all that Of knows, in their order, each once, but for thresholds that are
// only known to a limits block, and units.
func Names() []string {
	var list []string
	for _, e := range slices.Concat(Words(), Rules()) {
		list = append(list, e.Name)
	}
	for _, g := range vocabulary.Glossary() {
		list = append(list, g.Word)
	}
	slices.Sort(list)
	return slices.Compact(list)
}

// Meant is the name that a misspelt one is likely for.
func Meant(name string, more ...string) (string, bool) {
	return nearest.Word(name, append(Names(), more...))
}
