// Package vocabulary is the one table of the language: which statements stand in
// which block, which values and clauses each takes, of what dimension, what is true of
// them and what they mean; bounds, measures, places and thresholds beside them.
//
// The lexer knows clause words and bounds from it. The meaning stage reads statements by
// it, the messages name what it allows, layout, comparison and merge ask its columns,
// explain quotes it, and the reference page is printed from it. To add
// a statement is to add a row here and, in package read, what it does.
package vocabulary

import "maltwright/lang/quantity"

// Block is a place where statements stand.
type Block string

// The blocks.
const (
	File      Block = "file"
	Process   Block = "process"
	Steep     Block = "steep"
	Repeat    Block = "repeat"
	Germinate Block = "germinate"
	Wither    Block = "wither"
	Kiln      Block = "kiln stage"
	Grain     Block = "grain"
	Site      Block = "site"
	Vessel    Block = "vessel"
	Floor     Block = "floor"
	KilnFacts Block = "kiln"
	Scale     Block = "scale"
	Limits    Block = "limits"
	Batch     Block = "batch"
	House     Block = "house"
	None      Block = "" // the statement opens no block
)

// Blocks lists the blocks.
func Blocks() []Block {
	return []Block{File, Process, Steep, Repeat, Germinate, Wither, Kiln, Grain, Site, Vessel, Floor, KilnFacts, Scale, Limits, Batch, House}
}

// Kind is the kind of value a slot takes.
type Kind int

// The kinds of value.
const (
	Amount    Kind = iota // a quantity or range of one of the slot's dimensions
	Condition             // a measure and its bound, joined by "and"
	Name                  // the quoted name of a definition
	Text                  // any quoted text
	Choice                // one of the slot's words
	Literal               // a word that only makes the line read well; may be left out
	Clock                 // two times of day
	Date                  // a date
	Moment                // a time of day, with its date or without
	Hour                  // a time of day of any day
)

// Slot is one value of a statement or a clause.
type Slot struct {
	Kind     Kind
	Label    string               // what it is called in messages: "how long"
	Dims     []quantity.Dimension // of an Amount
	Places   []string             // where a temperature may be measured; the word stands before it
	Placed   bool                 // the place must be said
	Range    bool                 // a range is allowed, of dates too
	Bound    bool                 // a bound ("at least") is allowed
	Of       Block                // of a Name: what it names
	Or       []Block              // of a Name: what else it may name
	Words    []string             // of a Choice or Literal
	Optional bool
	Unless   []string // it is not wanted behind one of these words
	Sense    *Sense   // of an Amount: which values make sense; nil where any may
}

// Clause is a clause that a statement may take.
type Clause struct {
	Word     string
	Slots    []Slot
	Required bool
	Joins    bool   // its values may stand several times, joined by "and"
	Told     bool   // as of a row
	Not      string // the clause in whose place it stands, so that one of the two stands
	Doc      string
}

// Row is one statement in the blocks where it may stand.
type Row struct {
	Word      string
	In        []Block
	Slots     []Slot
	Clauses   []Clause
	Opens     Block
	Once      bool   // may stand once in its block
	Needed    bool   // its block is of no use without it
	Ordered   bool   // it is a step: its place among the others of its block means something
	Ranked    bool   // its place among those of its own word means something
	Grows     bool   // its block never stands on one line
	By        By     // what tells it apart from others of its word, beside a quoted name
	Includes  bool   // it brings in another file
	Phase     Phase  // of a step: how far the batch has come when it is over
	Dries     bool   // malt is drier behind it
	Aside     bool   // it keeps account, or silences: a process is made the same without it
	Told      bool   // people are told of it, and no forecast goes by it: a record pinned to a process without it stays true
	NamesStep bool   // its first value is a step and its number, so that a "to" behind it opens a clause
	Leads     string // the clause whose value may as well stand right behind the word: cure 4 h at malt 82 °C
	Doc       string
	Example   string
}

// By is what tells a statement apart from others of its word, where no quoted name does.
type By int

// What tells statements apart.
const (
	ByNothing By = iota
	ByValue      // its first value, a measure or the name of a rule
	ByName       // the definition that it names in a clause: of "Far field 2026"
)

// Wanted lists the dimensions of the slots.
func Wanted(slots []Slot) []quantity.Dimension {
	var list []quantity.Dimension
	for _, s := range slots {
		list = append(list, s.Dims...)
	}
	return list
}

// Key names a row for those who dispatch on it.
type Key struct {
	In   Block
	Word string
}

// Timed gives the clause of the row that says when something was, if it takes one.
func (r *Row) Timed() (*Clause, bool) {
	for i := range r.Clauses {
		if c := &r.Clauses[i]; len(c.Slots) > 0 && c.Slots[0].Kind == Moment {
			return c, true
		}
	}
	return nil, false
}

// Clause finds a clause of the row by its word.
func (r *Row) Clause(word string) (*Clause, bool) {
	for i := range r.Clauses {
		if r.Clauses[i].Word == word {
			return &r.Clauses[i], true
		}
	}
	return nil, false
}
