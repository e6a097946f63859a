// Package curve answers how a batch goes over time: what is drawn behind a chart. Its figures are in SI
// and those of the answers of outlook and progress; it adds when each of them holds.
//
// # How it works
//
// A forecast is made once more with looks at even times, closer together while the malt is on a kiln, and
// at both ends of every stage (course.go). Of a batch under way that is the forecast at the centre of those
// that its readings weigh. Bands are the 10, 50 and 90 % points over the courses of many members
// (bands.go): of a plan, over likely lots, houses and weather; of a batch, over members drawn by its
// readings.
package curve

import (
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
)

// Curve is a batch over time. Times are s from the first soak, of bought green malt from when it was begun.
// What is not known is NaN.
type Curve struct {
	outlook.Head
	Batch    string         // "" of a plan
	Start    time.Time      // of the first soak; zero where it is not known
	To       answer.Seconds // how far it is told: until the malt is ready, or as far as it is known
	Now      answer.Seconds // of a batch under way; NaN of a plan and of one that is over
	Points   []Point        // in the order of time; as one stage ends and the next begins there are two at one time
	Stages   []Stage
	Steps    []Step
	Gates    []Gate
	Aims     []Aim
	Nights   []Span // when nobody is awake, as far as the site says so and the start is known
	Beds     []Bed  // of each kiln and each box
	Bands    *Bands // nil where they were not asked for
	Astray   bool   // hardly any forecast agrees with all of the readings: neither lines nor bands are to be relied on
	Readings []Reading

	Complete    bool
	BrokenOff   *outlook.Break    // where and why the forecast came to no end
	NotForecast *outlook.ModelEnd // where the malt came to where the model ends: only times are known from there on
	NoMalt      *outlook.NoMalt   // what comes off the kiln too wet to be malt; it is told until then
}

// Span is a stretch of time.
type Span struct{ From, To answer.Seconds }

// Stage is when a stage runs.
type Stage struct {
	outlook.StageName
	Span
	Still bool // an oven without a fan, in which there is one air about the malt
}

// Aim is the moisture that a steep is to end with, and when it runs.
type Aim struct {
	Span
	Low, High answer.Share // wet basis
}

// Point is a batch at one time. In a still oven its air is AirOn, and nothing is AirOff.
type Point struct {
	outlook.Point
	StageNumber int              // which of its kind the stage is, where there are several
	Gross       answer.Kilograms // what the scale shows with what it lies in; NaN where that does not say what it weighs
	Chit        answer.Share     // of all kernels, while it grows
	Classes     *outlook.Classes // of the acrospires, while it grows; else nil
}

// StageName names its stage.
func (p *Point) StageName() outlook.StageName {
	return outlook.StageName{Stage: p.Stage, Number: p.StageNumber}
}

// Bed is a bed that air goes through, by depth and time.
type Bed struct {
	outlook.StageName
	Still bool // in an oven without a fan
	Looks []BedLook
}

// BedLook is a bed at one time: its layers, the lowest first, which is where the air comes on.
type BedLook struct {
	At     answer.Seconds
	Layers []Layer
}

// Layer is a slice of a bed.
type Layer struct {
	Depth, Thick answer.Metres  // of its middle above the plate; of itself
	Moisture     answer.Share   // wet basis
	Malt         answer.Celsius // of the grain or malt
	Air          answer.Celsius // in it; NaN of a growing bed
}

// Options are what is asked for; the zero value is the usual.
type Options struct {
	Start    time.Time             // of the first soak; zero where times of the clock are not known
	Every    answer.Seconds        // between two points; 0 for what suits its length, and so is what would make more than 480 of them
	Members  int                   // of the bands: of a plan 0 for none; of a batch 0 is DefaultMembers and -1 none
	Progress func(done, total int) // of the bands; may be nil
}
