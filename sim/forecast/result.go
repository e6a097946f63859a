// Package forecast runs a whole process through the models of sim: from raw grain
// to stored malt, step by step.
//
// A stage of the process is driven over one model - the steep, the growing piece,
// the kiln bed. A driver (drive.go) advances the model in chunks, looks after each
// whether the step's condition holds, and on the first chunk in which it does
// finds the moment by bisection on copies of the state. What cannot be had - a
// gate that is not met in its time, a heater too weak - is written down and the
// forecast goes on, so that the reader sees the whole batch and every trouble in it.
//
// Inside, times are in seconds, temperatures in °C, masses in kg and moistures in
// kg of water per kg of dry matter; the result gives moisture on the wet basis, as
// a share of 1.
package forecast

import (
	"math"
	"strings"
	"time"

	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/quality"
)

// Forecast is what is to be expected of a process.
type Forecast struct {
	Process   *model.Process
	Begun     time.Time // when the first soak begins; the zero time where that is not known
	Stages    []Stage
	Gates     []Gate
	Left      []Left // conditions that did not hold when the record left them
	Expects   []Expect
	Pieces    []Piece  // one for each floor, in order
	Kilns     []Kilned // one for each kiln, in order
	Spent     []Spent  // what each of these took, in the order of the stages
	Totals    Totals
	Assumed   []Assumption
	Learnt    []Used // what it used of the figures that the house has learnt; each stands in Assumed too
	Trouble   []Trouble
	Seen      []Sight // at each look of the course, as far as it came
	DryMass   float64 // kg of dry matter in the raw grain
	Beyond    *Beyond // where the malt came to where the model ends; nil where it did not
	Sprinkled []Sprinkling
	Turned    []float64 // s from the first soak, as the course says

	green *green                     // nil where nothing came onto a kiln
	fixed map[*model.Kilning]settled // of the stages that take the exhaust of others
}

// Stage is one stage with its steps.
type Stage struct {
	Kind   model.StageKind
	Number int         // which of its kind, from 1
	Of     model.Stage // of the process
	Steps  []Step
}

// Word is the word of the step, without its number: what a record names it by.
func (s Step) Word() string {
	word, _, _ := strings.Cut(s.Label, " ")
	return word
}

// Waiting is the label of a step that waits at a gate.
const Waiting = "wait"

// Step is one step as it runs.
type Step struct {
	Kind          model.StepKind // "" for a stage that is one step
	Label         string         // soak 1, rest 1, hold, cure ...
	Number        int            // which of those of its label's word, from 1, as a record counts them; 0 for a wait
	Nth           int            // which of its kind, from 1, through all stages: of a germinate with one hold the hold
	Place         source.Place
	Start, End    float64 // s from the first soak
	MoistureStart float64 // wet basis, 0 to 1
	MoistureEnd   float64
	WeightEnd     float64 // kg on the scale, drained
	Temperature   Temperature
	Warmest       Warmest  // of a step on a kiln
	Given         *float64 // °C: what came in the mean, where for most of the step the kiln did not give what is asked; else nil
	EndedBy       Ending
}

// Warmest is how warm it gets in a step on a kiln, °C.
type Warmest struct {
	Air   float64 // onto the malt
	Off   float64 // off it
	Malt  float64 // the mean of the bed
	Known bool    // whether the step is one on a kiln, and takes any time
}

// Temperature is the temperature of a step and where it is taken, °C.
type Temperature struct {
	Place    string
	From, To float64
	Known    bool
}

// Ending says what ended a step.
type Ending string

// The endings.
const (
	ByTime  Ending = "time"  // its time was over
	ByGate  Ending = "gate"  // what it waited for came about
	ByGuard Ending = "guard" // its latest time came first

	ByRecord Ending = "record" // the record of the batch says so

	BrokenOff Ending = "broken off" // the forecast could not go on; see [Unable]
)

// Gate is a hold point, or a condition that ends a step or a stage, and how it went.
type Gate struct {
	Stage     model.StageKind
	Of        model.Stage // the stage
	Text      string      // as written
	Place     source.Place
	Hold      bool    // a gate statement; otherwise an until
	Met       bool    // whether it held in time
	Reached   float64 // s from the first soak at which it held; NaN where it did not
	Ready     float64 // the same of a condition that held before a batch under way went on; NaN where it is as Reached
	Ended     float64 // s from the first soak at which the waiting ended, either way
	First     float64 // s from the beginning of the step at which it first held, be it before the step might end; NaN where it did not
	Waited    float64 // s from the beginning of the step to when it held or was given up
	Moisture  float64 // of the grain or malt then, wet basis, 0 to 1
	Failed    *model.Test
	Measured  float64 // what was measured at the end for the test that failed, in SI
	Word      string  // the same for a test that asks a word
	Needs     float64 // s more that it would have taken; NaN where it does not come about in searchLimit
	Searching bool    // whether Needs was looked for
	Unjudged  bool    // it asks what is not forecast, and is taken to hold; see [EndsAt]
}

// Came is when the condition came about, s from the first soak, or would have, had it been waited for
// longer; +Inf where it does not.
func (g Gate) Came() float64 {
	switch {
	case !math.IsNaN(g.Ready):
		return g.Ready
	case g.Met:
		return g.Reached
	case !math.IsNaN(g.Needs):
		return g.Ended + g.Needs
	}
	return math.Inf(1)
}

// Expect is a promise and what the forecast gives for it.
type Expect struct {
	Condition model.Condition
	Test      model.Test
	Holds     bool
	Value     float64 // SI
	Unjudged  bool    // it asks what is not forecast
}

// Totals are the figures of the whole batch; NaN is what is not forecast.
type Totals struct {
	SteepOut         float64 // s, to the end of the last steep
	SteepOutMoisture float64 // then, wet basis, 0 to 1; NaN where there is no steep
	Total            float64 // s, to the end of deculming
	FinalMoisture    float64
	Malt             float64       // kg, without rootlets
	Rootlets         float64       // kg, as they are taken off
	Yield            float64       // malt for grain, both as they are
	YieldDry         float64       // the same, both dry
	DryMatterLost    float64       // share of the grain's dry matter that is not in the malt
	BedHeat          float64       // J given to the growing bed by the heater of its floor
	BedCold          float64       // J taken out of it by the cooler of its floor
	KilnWater        float64       // kg driven off in the kiln, without the steam of water that was poured on hot malt
	KilnEnergy       float64       // J of heat given to the air
	SteepWater       float64       // kg of water drawn for the soaks
	FanTime          float64       // s for which fans blew air through growing and withering beds
	FanEnergy        float64       // J that they drew
	AirHeat, AirCold float64       // J given to that air, and taken out of it
	Sprayed          float64       // kg of water sprayed into that air
	Sprinkled        float64       // kg of water given to the growing grain
	Energy           Energy        // of all stages
	CO2              float64       // kg of carbon dioxide that the grain gave off until it went to the kiln
	Quality          quality.State // what the kiln did to the malt; all of it calibrated to practice
}
