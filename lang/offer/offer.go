// Package offer tells what may stand at a place of a text, and what that means which stands
// there.
//
// Both go by the vocabulary alone. Of the text they take the line up to the place as the
// lexer cuts it, and of the tree only which block the place lies in, so that a statement
// that is half written is read as far as it goes, and one that is broken elsewhere is of no
// matter. What the vocabulary cannot know is handed in as Known: the names of a house, and
// what is usual for a grain made into a malt.
package offer

import (
	"slices"
	"strings"
	"time"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Kind is what is offered.
type Kind int

// The kinds of offer.
const (
	Statement Kind = iota // the word of a statement
	Clause                // the word of a clause
	Join                  // a bound, "to", "and", a word that only makes the line read well
	Name                  // of a lot, a vessel and the like, in quotes
	Choice                // a word of a list: a malt, a place, a measure
	Unit
	Value // a whole value with its unit, a time
	Whole // a statement with its block and all that stands in it
)

// Item is one thing that may stand at a place.
type Item struct {
	Label  string
	Kind   Kind
	Detail string // one line
	Doc    string // what it means
	Form   string // of a statement
	Edit   Edit
	// Stops are places in Edit.New at which a value stands that is likely to be changed, from
	// the first to the last; none of most items.
	Stops  []source.Span
	Sort   string // items stand by the alphabet of it
	Filter string // what people may type for it; begins with what stands at the place
	Needed bool   // something must stand here, this or another
}

// Edit is a text in the place of what stands at a span of the file.
type Edit struct {
	source.Span
	New string
}

// Named is a definition that can be named.
type Named struct {
	Block  vocabulary.Block // the block that it opens
	Text   string
	Detail string // vessel, holds 25 l
	Place  source.Place
	end    int // of its block
}

// Asked is a value of which somebody may know what is usual.
type Asked struct {
	In      vocabulary.Block // the block in which the statement stands
	Verb    string
	Clause  string // "" for a value right behind the verb
	Place   string // of a temperature; "" where none is said
	Measure string // of a condition
	Beside  string // the choice in front of the value: airflow
}

// Usual is what is usual for a value.
type Usual struct {
	quantity.Range // in the units of the house
	Why            string
}

// Known is what a text does not say itself. Its zero value knows nothing.
type Known struct {
	Names  []Named
	Files  []string // that use can bring in
	Rules  []Named  // that accept can silence, with what they tell as Detail
	Usual  func(Asked) []Usual
	System quantity.System // the units of the house
	Now    time.Time       // zero where it is of no matter
}

func (k Known) usual(a Asked) []Usual {
	if k.Usual == nil {
		return nil
	}
	return k.Usual(a)
}

// At lists what may stand at an offset, in the order in which it is shown. In comments, and in
// quoted texts that name nothing, nothing may.
func At(f *source.File, tree *syntax.Tree, offset int, k Known) []Item {
	sp, ok := spotAt(f, tree, offset)
	if !ok {
		return nil
	}
	l := &list{spot: sp, known: k, seen: map[string]bool{}}
	if sp.head == nil {
		l.statements()
	} else {
		l.behind()
	}
	l.quiet()
	slices.SortStableFunc(l.items, func(a, b Item) int { return strings.Compare(a.Sort, b.Sort) })
	return l.items
}
