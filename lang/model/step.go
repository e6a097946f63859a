package model

import "maltwright/lang/source"

// Step is one step of a stage: one of *Soak, *Rest, *Repeat, *Hold, *Dry, *Stew, *Cure,
// *Roast, *Cool and *Gate. What a step does not say is nil.
type Step interface {
	Place() source.Place // its head
	Kind() StepKind
	Ends() Ending
	Warmth() Warming
	step()
}

// StepKind says what a step does, by the word that begins it.
type StepKind string

// The kinds of step.
const (
	SoakStep   StepKind = "soak"
	RestStep   StepKind = "rest"
	RepeatStep StepKind = "repeat"
	HoldStep   StepKind = "hold"
	DryStep    StepKind = "dry"
	StewStep   StepKind = "stew"
	CureStep   StepKind = "cure"
	RoastStep  StepKind = "roast"
	CoolStep   StepKind = "cool"
	GateStep   StepKind = "gate"
)

// Written is where a step, a stage or a reading is written.
type Written struct{ Head source.Place }

// Place is the words that it begins with, without its block.
func (w Written) Place() source.Place { return w.Head }

// Ending is what a step or a stage says of its end. Each is nil where it is not said.
type Ending struct {
	For   *Quantity
	Until *Condition
	Allow *Guard
}

// Ends is what is said of the end.
func (e Ending) Ends() Ending { return e }

// Warming is what a step says of its temperature. Each is nil where it is not said.
type Warming struct {
	At   *Temperature // a temperature or a band; of cool, where it is to end
	From *Temperature // a rise, from Low to High as written
	Over *Quantity    // the time of the rise
}

// Warmth is what is said of the temperature.
func (w Warming) Warmth() Warming { return w }

// Soak lays the grain under water.
type Soak struct {
	Written
	Ending
	At       *Temperature // of the water, as it is poured
	Water    *Quantity    // how much, a volume or a mass
	Aerated  bool
	Limed    bool      // lime in the water
	Airflow  *Quantity // air blown through it all the time
	Overflow *Quantity // fresh water that runs in, and off again
}

// Rest leaves the drained grain in air.
type Rest struct {
	Written
	Ending
	At      *Temperature // of the air
	Airflow *Quantity    // drawn through the bed
	Spray   *Spray       // water over the bed
}

// Spray is water that runs over drained grain.
type Spray struct {
	Written
	Flow *Quantity // nil where it only keeps the grain wet
}

// Repeat does its steps again.
type Repeat struct {
	Written
	Times *Bound
	Until *Condition
	Steps []Step
}

// Hold keeps the growing piece in a band.
type Hold struct {
	Written
	Ending
	Warming
}

// Heated is what dry, stew, cure and roast can say.
type Heated struct {
	Written
	Ending
	Warming
	Airflow *Quantity // nil for the kiln's own
	Returns *Quantity // share of the exhaust that is led back; nil for the kiln's own
	Smoke   bool      // wood smoke is led through the malt
}

// Dry dries the malt.
type Dry struct{ Heated }

// Stew keeps the green malt warm and wet.
type Stew struct{ Heated }

// Cure heats the dry malt.
type Cure struct{ Heated }

// Roast heats malt beyond what a cure does, for the colour and the taste of roast.
type Roast struct{ Heated }

// Cool cools the malt with room air.
type Cool struct {
	Written
	To    *Temperature
	Water *Quantity // poured over it at the start, a volume or a mass
	Allow *Guard
}

// Gate is a hold point.
type Gate struct {
	Written
	Asks  *Condition
	Allow *Guard
}

func (*Soak) step()   {}
func (*Rest) step()   {}
func (*Repeat) step() {}
func (*Hold) step()   {}
func (*Dry) step()    {}
func (*Stew) step()   {}
func (*Cure) step()   {}
func (*Roast) step()  {}
func (*Cool) step()   {}
func (*Gate) step()   {}

// Kind says what the step does.
func (*Soak) Kind() StepKind   { return SoakStep }
func (*Rest) Kind() StepKind   { return RestStep }
func (*Repeat) Kind() StepKind { return RepeatStep }
func (*Hold) Kind() StepKind   { return HoldStep }
func (*Dry) Kind() StepKind    { return DryStep }
func (*Stew) Kind() StepKind   { return StewStep }
func (*Cure) Kind() StepKind   { return CureStep }
func (*Roast) Kind() StepKind  { return RoastStep }
func (*Cool) Kind() StepKind   { return CoolStep }
func (*Gate) Kind() StepKind   { return GateStep }

// Ends is what is said of the end.
func (s *Repeat) Ends() Ending { return Ending{Until: s.Until} }
func (s *Cool) Ends() Ending   { return Ending{Allow: s.Allow} }
func (s *Gate) Ends() Ending   { return Ending{Allow: s.Allow} }

// Warmth is what is said of the temperature.
func (s *Soak) Warmth() Warming { return Warming{At: s.At} }
func (s *Rest) Warmth() Warming { return Warming{At: s.At} }
func (*Repeat) Warmth() Warming { return Warming{} }
func (s *Cool) Warmth() Warming { return Warming{At: s.To} }
func (*Gate) Warmth() Warming   { return Warming{} }
