// Package model is the typed process: what a file says of a house, its processes and
// its batches, once names are resolved and every quantity has its dimension. The
// checker, the simulator and the commands take it; package read builds it.
//
// Each value keeps its place, so that a finding of the simulator can underline the
// words that caused it. A quantity that is not said is a nil pointer, never a zero; a
// word that is not said is empty, an Instant zero, and the number of a step 0, since steps
// count from 1.
//
// Steps, stages and readings are sealed interfaces, with one struct for each thing. What
// all of them have in common is asked through the interface or a function of this
// package; what is particular to one, of its struct.
package model

import (
	"maltwright/lang/quantity"
	"maltwright/lang/source"
)

// House is everything one file says, with the files it uses.
type House struct {
	Files     []*source.File
	Grains    []*Grain
	Sites     []*Site
	Vessels   []*Vessel
	Floors    []*Floor
	Kilns     []*Kiln
	Scales    []*Scale
	Processes []*Process
	Batches   []*Batch // of the file itself, not of those it uses
	Limits    []Limit
	Accepts   []Accept
	Learnt    *Learnt // nil where no block says what was learnt
}

// Quantity is a quantity and where it is written.
type Quantity struct {
	quantity.Quantity
	Place source.Place
}

// Range is a range and where it is written; a single value has Low equal to High.
type Range struct {
	quantity.Range
	Place source.Place
}

// Mid is the middle of the range, in the SI unit of its dimension.
func (r Range) Mid() float64 { return (r.Low.SI + r.High.SI) / 2 }

// Temperature is a temperature, or a band or a rise of them, and where it is taken.
type Temperature struct {
	Range
	Where string // "water", "air-on" ...; "" where it was not said and cannot be mistaken
}

// Word is a word that was chosen from a list, or a text, and where it is written. One
// that is not said is empty.
type Word struct {
	Text  string
	Place source.Place
}

// Clock is a span of the day, in seconds from midnight; it may run over midnight.
type Clock struct {
	From, To int
	Place    source.Place
}

// Awake tells whether the second of the day lies in the span.
func (c Clock) Awake(second int) bool {
	if c.From <= c.To {
		return c.From <= second && second < c.To
	}
	return second >= c.From || second < c.To
}

// Grain is a lot of raw grain.
type Grain struct {
	Name         string
	Place        source.Place
	Species      Word
	Already      Word      // green or kilned: what it was made into before it comes; Text "" for raw grain
	Moisture     *Quantity // share of the whole weight
	Germination  []GerminationTest
	Protein      *Quantity
	KernelWeight *Quantity // of a thousand kernels
	Treated      Word      // no, yes or unknown; Text "" where nothing is said
	Ergot        Word      // none, found or unknown; the same
	Mould        Word
	Delivered    []Delivery
	Store        Word // where it lies
}

// Already is what a lot is that is no raw grain.
const (
	GreenMalt  = "green"  // it has grown, and was not dried
	KilnedMalt = "kilned" // it is malt, to be roasted
)

// Grown tells whether the lot is no raw grain but green malt.
func (g *Grain) Grown() bool { return g != nil && g.Already.Text == GreenMalt }

// Raw tells whether the lot is raw grain, or nothing is known of it.
func (g *Grain) Raw() bool { return !g.Grown() && !g.Kilned() }

// Kilned tells whether the lot is no raw grain but malt that was dried before it comes.
func (g *Grain) Kilned() bool { return g != nil && g.Already.Text == KilnedMalt }

// GerminationTest is one germination test of a lot.
type GerminationTest struct {
	Place   source.Place
	Share   Quantity
	Kernels *Quantity
	Water   *Quantity
	On      Word // the date as written
}

// Site is a place of work at a time of year.
type Site struct {
	Name                 string
	Place                source.Place
	Air, Humidity, Water *Range
	Altitude             *Quantity
	Hours
}

// Vessel is a steeping vessel.
type Vessel struct {
	Name   string
	Place  source.Place
	Holds  *Quantity
	Weighs *Quantity // empty
	Grows  Floor     // its facts as where grain grows in it, without its name
}

// Floor is where the piece lies: a floor, a tray, or a box or drum that air is blown
// through.
type Floor struct {
	Name       string
	Place      source.Place
	Area       *Quantity
	Weighs     *Quantity // empty
	Airflow    *Quantity // what its fan can drive through the bed
	FanPower   *Quantity // electric power that its fan draws
	Heater     *Quantity
	Efficiency *Quantity // share of the fuel's heat that reaches the air
	Cooler     *Quantity // the heat that it takes out
	Returns    *Quantity // share of the exhaust that is led back
	Tumbles    Word      // yes of a drum; Text "" where nothing is said
}

// Blown tells whether a fan blows air through the bed of a floor; of no floor it does not.
func (f *Floor) Blown() bool { return f != nil && f.Airflow != nil }

// Limit is a threshold that the house moved.
type Limit struct {
	Word  string
	Bound quantity.Bound
	Place source.Place
}

// Accept silences a rule in a block.
type Accept struct {
	Rule   Word
	Reason string
	Place  source.Place
	Scope  source.Place // the block it stands in
}

// Process is one whole process.
type Process struct {
	Name    string
	Place   source.Place // the words that name it
	Scope   source.Place // the whole of it
	House   *House
	Make    Word // the malt type
	Charge  *Quantity
	Bag     *Quantity // raw grain in the marked bag
	Grain   *Grain    // of several lots their mixture
	Lots    []Taken   // the lots of a mixture; none where there is one
	Site    *Site
	Stages  []Stage
	Expect  []Condition
	Limits  []Limit
	Accepts []Accept
	Broken  bool // some of it did not read, so what is missing may only be unread
}

// FindLimit finds a moved threshold by its word; of several the last one holds.
func FindLimit(limits []Limit, word string) (Limit, bool) {
	for i := len(limits) - 1; i >= 0; i-- {
		if limits[i].Word == word {
			return limits[i], true
		}
	}
	return Limit{}, false
}
