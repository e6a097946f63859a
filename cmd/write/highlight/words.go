// Package highlight writes what editors colour process files by, out of the vocabulary and
// the table of units: a grammar as TextMate has them, and the lists of words that the modes
// for Vim and Emacs in docs/editors are built on.
//
// All three know the same kinds of words. What a word is hangs on where it stands: it begins
// a statement, opens a clause, is the unit of a number or stands between two ends of a range.
// The tests lay every example beside the tree that the language itself reads, word by word.
package highlight

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// Words are the words of the language by what they do in a line. Each list is by the
// alphabet, but for those of units and bounds, where what is longer stands first.
type Words struct {
	Includes    []string // begin a statement that brings in another file
	Definitions []string // begin a statement that gives a name to what its block says
	Acts        []string // begin a step, a stage, a setting of one, or a line of a record
	Facts       []string // begin a fact of a lot, a site, a vessel, a limit
	Clauses     []string // open a clause
	Bounds      []string // at least; with one space between their words
	Signs       []string // >=
	Places      []string // where a temperature is taken, and what a condition can name
	Choices     []string // barley, electric, yes
	Times       []string // noon
	Units       []string // every spelling of a unit, but for those of Either
	Either      []string // units that open a clause too, where something follows: in
	Numbered    []string // begin a statement in which the number of a step stands in front of a clause
	Steps       []string // that can be numbered so
}

// Collect gives the words of the vocabulary and of the table of units.
func Collect() Words {
	var w Words
	facts, acts := map[string]bool{}, map[string]bool{}
	var choices, places, steps []string
	for _, r := range vocabulary.Rows() {
		takes := valueWords(r)
		places, choices = append(places, takes.places...), append(choices, takes.choices...)
		if r.NamesStep {
			w.Numbered, steps = append(w.Numbered, r.Word), append(steps, r.Slots[0].Words...)
		}
		switch {
		case r.Includes:
			w.Includes = append(w.Includes, r.Word)
		case r.Opens != vocabulary.None && len(r.Slots) > 0 && r.Slots[0].Kind == vocabulary.Text:
			w.Definitions = append(w.Definitions, r.Word)
		case slices.ContainsFunc(r.In, ofFacts):
			facts[r.Word] = true
		}
		if slices.ContainsFunc(r.In, ofActs) || r.Opens != vocabulary.None && len(r.Slots) == 0 {
			acts[r.Word] = true
		}
	}
	for _, l := range vocabulary.LimitNames() {
		facts[l.Word] = true
	}
	for _, word := range vocabulary.Older() {
		facts[word] = true
	}
	for _, m := range vocabulary.Measures() {
		places, choices = append(places, strings.Fields(m.Word)...), append(choices, m.Words...)
	}
	for word := range acts {
		delete(facts, word)
	}
	w.Acts, w.Facts = slices.Sorted(maps.Keys(acts)), slices.Sorted(maps.Keys(facts))
	w.Places = sorted(places)
	w.Choices = slices.DeleteFunc(sorted(choices), func(word string) bool { return slices.Contains(w.Places, word) })
	w.Steps, w.Includes, w.Definitions = sorted(steps), sorted(w.Includes), sorted(w.Definitions)
	w.Clauses = vocabulary.ClauseWords()
	w.Times = []string{vocabulary.Midnight, vocabulary.Noon}
	w.Bounds, w.Signs = bounds()
	for _, unit := range units() {
		if vocabulary.IsClause(unit) {
			w.Either = append(w.Either, unit)
		} else {
			w.Units = append(w.Units, unit)
		}
	}
	return w
}

// ofActs tells whether a block holds what is done, or what was; ofFacts whether it holds what is so.
func ofActs(b vocabulary.Block) bool { return b != vocabulary.File && !ofFacts(b) }

func ofFacts(b vocabulary.Block) bool {
	return slices.Contains([]vocabulary.Block{vocabulary.Grain, vocabulary.Site, vocabulary.Vessel, vocabulary.Floor, vocabulary.KilnFacts,
		vocabulary.Scale, vocabulary.Limits, vocabulary.House}, b)
}

type values struct{ places, choices []string }

// valueWords are the words that stand as values in a statement and its clauses.
func valueWords(r vocabulary.Row) (v values) {
	slots := slices.Clone(r.Slots)
	for _, c := range r.Clauses {
		slots = append(slots, c.Slots...)
	}
	for _, s := range slots {
		v.places, v.choices = append(v.places, s.Places...), append(v.choices, s.Words...)
	}
	return v
}

func bounds() (words, signs []string) {
	for op := quantity.AtLeast; op <= quantity.Below; op++ {
		words, signs = append(words, op.String()), append(signs, vocabulary.Signs(op)...)
	}
	return longestFirst(words), longestFirst(signs)
}

// units are the spellings of every unit, those of degrees with a blank in them too: deg C.
func units() []string {
	degrees := quantity.Degrees()
	list := slices.Clone(degrees)
	for _, u := range quantity.Units() {
		spellings := append([]string{u.Name}, u.Aliases...)
		if u.One != "" {
			spellings = append(spellings, u.One)
		}
		list = append(list, spellings...)
		for _, scale := range spellings {
			for _, degree := range degrees {
				if _, ok := quantity.Lookup(degree + " " + scale); ok && u.Dimension == quantity.Temperature {
					list = append(list, degree+" "+scale)
				}
			}
		}
	}
	return longestFirst(list)
}

func sorted(list []string) []string { return slices.Compact(slices.Sorted(slices.Values(list))) }

// longestFirst puts a text in front of what it begins with, as a choice between patterns must
// have them.
func longestFirst(list []string) []string {
	list = sorted(list)
	slices.SortStableFunc(list, func(a, b string) int { return cmp.Compare(len(b), len(a)) })
	return list
}
