// Package ledger answers how the batches of a house stand beside each other by their
// records.
//
// # How it works
//
// A Book takes the records one by one, while the folder that they were read from is open
// (book.go). Each process is forecast once and its file checked once, however many batches
// it has (process.go); the figures of a batch are those of package seasons. Times are
// lengths from the beginning of the batch.
package ledger

import (
	"math"
	"time"

	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/sim/seasons"
)

// Result is batches side by side, in the order in which they began.
type Result struct {
	Batches []Batch
}

// Batch is what the record of one comes to.
type Batch struct {
	File    string
	Batch   string
	Process string
	Began   time.Time // zero where the record does not say
	Charge  answer.Kilograms

	// Complete says that the forecast of its process came to its end. Where there is none
	// NotForecast says why, and nothing of the batch is reckoned.
	Complete    bool
	NotForecast Obstacle `json:",omitempty"`

	Figures
	Rub string // at the last feel; "" where none was

	StepsChanged    int
	RecordFindings  int // cautions and worse
	ProcessFaults   int // a danger counts as a fault
	ProcessCautions int

	Changes  []Change
	Doubtful []Doubt

	Written *model.Process `json:"-"` // the house is spoken to in its units
}

// Obstacle is why a process has no forecast.
type Obstacle string

// The obstacles.
const (
	Unsound Obstacle = "unsound"    // there is nothing sound to forecast
	TooDear Obstacle = "too-costly" // the forecasts would take more than their allowance
)

// Figures are what batches are compared by; see seasons.Season.
type Figures struct {
	RawMoisture   Figure[answer.Share]   `json:"raw_moisture_wb"`
	Water         Figure[answer.Celsius] // the mean of the steep water
	Cast          Figure[answer.Seconds]
	CastMoisture  Figure[answer.Share] `json:"cast_moisture_wb"`
	Chit          Figure[answer.Share]
	ChitCounted   Figure[answer.Seconds]
	BedWarmest    Figure[answer.Celsius]
	ThreeQuarters Figure[answer.Seconds] // until the acrospire had come to 3/4 in half of the corns
	Acrospire     Figure[answer.Number]  `json:"acrospire_middle"` // part of the corn
	Floor         Figure[answer.Seconds]
	GreenMalt     Figure[answer.Kilograms]
	Break         Figure[answer.Seconds] // from the loading of the kiln
	Kiln          Figure[answer.Seconds]
	Malt          Figure[answer.Kilograms]
	Yield         Figure[answer.Share] `json:"yield_as_is"`
	DryYield      Figure[answer.Share] `json:"yield_on_dry_grain"`
	EndMoisture   Figure[answer.Share] `json:"end_moisture_wb"`
	Total         Figure[answer.Seconds]
}

// Kind is a kind of figure that is one number.
type Kind interface {
	~float64
	answer.Figure
}

// Figure is a figure and how it was come by; its value is NaN where the record does not
// tell.
type Figure[T Kind] struct {
	Value    T                `csv:"."`
	Standing seasons.Standing `json:",omitempty"`
}

// Unit is that of its value.
func (f Figure[T]) Unit() answer.Unit { return f.Value.Unit() }

// Plain is the figure without its kind, in SI.
func (f Figure[T]) Plain() seasons.Figure {
	return seasons.Figure{Value: float64(f.Value), Standing: f.Standing}
}

// Change is a step that was done otherwise than the process says.
type Change struct {
	Step    string // and its number
	To      string // as written
	Because string
}

// Doubt is a weight below the dry matter that the forecast leaves in it.
type Doubt struct {
	What      Weighed
	Weight    answer.Kilograms
	DryMatter answer.Kilograms
}

// Weighed is what was weighed.
type Weighed string

// What may be doubtful.
const (
	AtCast    Weighed = "cast"
	CleanMalt Weighed = "clean malt"
)

func figure[T Kind](f seasons.Figure) Figure[T] {
	if f.Standing == seasons.Missing {
		f.Value = math.NaN()
	}
	return Figure[T]{T(f.Value), f.Standing}
}

func figures(s *seasons.Season) Figures {
	return Figures{
		RawMoisture: figure[answer.Share](s.RawMoisture), Water: figure[answer.Celsius](s.Water),
		Cast: figure[answer.Seconds](s.Cast), CastMoisture: figure[answer.Share](s.CastMoisture),
		Chit: figure[answer.Share](s.Chit), ChitCounted: figure[answer.Seconds](s.ChitAt),
		BedWarmest: figure[answer.Celsius](s.Bed), ThreeQuarters: figure[answer.Seconds](s.ThreeQuarters),
		Acrospire: figure[answer.Number](s.Acrospire), Floor: figure[answer.Seconds](s.Floor),
		GreenMalt: figure[answer.Kilograms](s.Green), Break: figure[answer.Seconds](s.Break), Kiln: figure[answer.Seconds](s.Kiln),
		Malt: figure[answer.Kilograms](s.Malt), Yield: figure[answer.Share](s.Yield), DryYield: figure[answer.Share](s.DryYield),
		EndMoisture: figure[answer.Share](s.EndMoisture), Total: figure[answer.Seconds](s.Total),
	}
}
