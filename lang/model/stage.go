package model

import (
	"maltwright/lang/quantity"
	"maltwright/lang/source"
)

// StageKind says which stage it is, by the word that begins it.
type StageKind string

// The stages, in the order in which grain goes through them.
const (
	Steep     StageKind = "steep"
	Germinate StageKind = "germinate"
	Wither    StageKind = "wither"
	KilnStage StageKind = "kiln"
	Deculm    StageKind = "deculm"
	Store     StageKind = "store"
)

// Order lists the stages in the order of the work.
func Order() []StageKind {
	return []StageKind{Steep, Germinate, Wither, KilnStage, Deculm, Store}
}

// Stage is one stage with its steps.
type Stage struct {
	Kind     StageKind
	Place    source.Place // its head
	Vessel   *Vessel
	Floor    *Floor
	Kiln     *Kiln
	Target   *Range // the moisture wanted at steep-out
	Steps    []*Step
	Turn     *Quantity // from one turn to the next
	Sprinkle *Sprinkle
	Air      *Temperature // of withering
	Humidity *Range       // of the air over the piece
	Until    *Condition
	Allow    *Guard
	For      *Quantity
	Within   *Quantity       // of deculm
	Keep     *Word           // of store: what it is kept in
	Rest     *quantity.Bound // of store: how long
	RestAt   source.Place
}

// Sprinkle is water given to the growing piece.
type Sprinkle struct {
	Water Quantity // a volume or a mass
	Every Quantity
}

// StepKind says what a step does, by the word that begins it.
type StepKind string

// The steps.
const (
	Soak   StepKind = "soak"
	Rest   StepKind = "rest"
	Repeat StepKind = "repeat"
	Hold   StepKind = "hold"
	Dry    StepKind = "dry"
	Stew   StepKind = "stew"
	Cure   StepKind = "cure"
	Cool   StepKind = "cool"
	Gate   StepKind = "gate"
)

// Step is one step of a stage. What a step does not say is nil.
type Step struct {
	Kind    StepKind
	Place   source.Place // its head
	For     *Quantity
	At      *Temperature // a temperature or a band; of cool, where it is to end
	From    *Temperature // a rise, from Low to High as written
	Over    *Quantity
	Until   *Condition
	Allow   *Guard
	Aerated bool
	Limed   bool // lime in the steep water
	Airflow *Quantity
	Gate    *Condition
	Times   *quantity.Bound
	Steps   []*Step // of repeat
}

// Guard is the earliest and the latest time at which something may end.
type Guard struct {
	Earliest, Latest *quantity.Quantity // nil where that side is open
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
	Bound   *quantity.Bound // nil where a word is asked, or nothing as with break
	Op      quantity.Op     // with Word
	Word    string
	Place   source.Place
}

// MostSteps is how many steps a stage may have, those of a repeat counted as often as
// they are done: more than an hour each for the three weeks that a steep can last.
const MostSteps = 500

// LeastInterval is the shortest time after which something may be done again, s.
const LeastInterval = 60.0
