package model

import (
	"maltwright/lang/quantity"
	"maltwright/lang/source"
)

// Bound is a bound and where it is written; a plain value or range is "is".
type Bound struct {
	quantity.Bound
	Place source.Place
}

// Guard is the earliest and the latest time at which something may end.
type Guard struct {
	Earliest, Latest *Quantity // nil where that side is open
	Place            source.Place
}

// Condition is one or more tests that must all hold.
type Condition struct {
	Tests []Test
	Place source.Place
}

// Test is a measure and what is asked of it.
type Test struct {
	Measure string
	Bound   *Bound      // nil where a word is asked, or nothing as with break
	Op      quantity.Op // with Word
	Word    string
	Place   source.Place
}

// MostSteps is how many steps a stage may have, those of a repeat counted as often as
// they are done: more than an hour each for the three weeks that a steep can last.
const MostSteps = 500

// MostStages is how many stages a process may have: more than twice those of any that is
// steeped, moved and kilned several times.
const MostStages = 24

// LeastInterval is the shortest time after which something may be done again, s.
const LeastInterval = 60.0
