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

// LotTaken is what a batch took of one of several lots.
type LotTaken struct {
	Lot    string
	Charge answer.Kilograms
}

// Batch is what the record of one comes to.
type Batch struct {
	File    string
	Batch   string
	Process string
	Began   time.Time        `doc:"when the first soak began; null where the record does not say"`
	Lot     string           `doc:"of the raw grain"`
	Lots    []LotTaken       `json:"-"` // the lots of a mixture, each with what was taken of it
	Charge  answer.Kilograms `doc:"raw grain"`
	Pinned  *answer.Pin      `json:",omitempty" doc:"left out where the record does not say by which text of its process it was begun"`

	Complete    bool     `doc:"whether the forecast of its process came to its end"`
	NotForecast Obstacle `json:",omitempty" doc:"why there is no forecast: unsound or too-costly"`

	Figures
	Analyses
	Rub string `doc:"at the last feel: gummy, gritty or chalky; empty where there was none"`

	StepsChanged    int
	RecordFindings  int `doc:"cautions and worse"`
	ProcessFaults   int `doc:"dangers too"`
	ProcessCautions int

	Changes  []Change
	Doubtful []Doubt
	Remarks  []Remark

	Written *model.Process   `json:"-"` // the house is spoken to in its units
	Course  []seasons.Moment `json:"-"` // what was weighed and read, over time
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
	RawMoisture   Figure[answer.Share]     `json:"raw_moisture_wb" doc:"of the raw grain, or of green malt as it was bought"`
	Water         Figure[answer.Celsius]   `doc:"of the steep, the mean of the readings"`
	Cast          Figure[answer.Seconds]   `json:"steep_out" doc:"from the beginning to the last weighing of the steep"`
	CastMoisture  Figure[answer.Share]     `json:"steep_out_moisture_wb"`
	Chit          Figure[answer.Share]     `doc:"kernels that have chitted, at the last count"`
	ChitCounted   Figure[answer.Seconds]   `doc:"from the beginning to that count"`
	BedWarmest    Figure[answer.Celsius]   `doc:"the warmest reading"`
	ThreeQuarters Figure[answer.Seconds]   `doc:"from the beginning until the acrospire had come to 3/4 in half of the kernels"`
	Acrospire     Figure[answer.Number]    `json:"acrospire_middle" doc:"of the middle kernel at the last count, as a part of the kernel"`
	Floor         Figure[answer.Seconds]   `doc:"from cast to the end of growth"`
	GreenMalt     Figure[answer.Kilograms] `doc:"when growth had ended"`
	Break         Figure[answer.Seconds]   `doc:"on the kiln until the break was seen"`
	Kiln          Figure[answer.Seconds]   `doc:"on the kiln"`
	Malt          Figure[answer.Kilograms] `doc:"without rootlets"`
	Yield         Figure[answer.Share]     `json:"yield_as_is" doc:"malt for raw grain, both as they are"`
	OnDryGrain    Figure[answer.Share]     `json:"yield_on_dry_grain" doc:"malt as it is for the dry matter of the raw grain"`
	DryYield      Figure[answer.Share]     `json:"yield_dry" doc:"malt for grain, both dry; measured where both moistures were"`
	EndMoisture   Figure[answer.Share]     `json:"final_moisture_wb"`
	Total         Figure[answer.Seconds]   `doc:"from the beginning to the weighing of the clean malt"`
	Fuel          Figure[answer.Joules]    `json:"fuel_per_kilogram" doc:"for each kg of clean malt"`
	Power         Figure[answer.Joules]    `json:"power_per_kilogram" doc:"electricity, the same"`
}

// Figure is a figure and how it was come by; its value is NaN where the record does not
// tell.
type Figure[T answer.Single] struct {
	Value    T                `csv:"."`
	Standing seasons.Standing `json:",omitempty" doc:"measured, reckoned, over, under, or impossible: it is left out of sums"`
}

// Unit is that of its value.
func (f Figure[T]) Unit() answer.Unit { return f.Value.Unit() }

// Plain is the figure without its kind, in SI.
func (f Figure[T]) Plain() seasons.Figure {
	return seasons.Figure{Value: float64(f.Value), Standing: f.Standing}
}

// Change is a step that was done otherwise than the process says.
type Change struct {
	Label      string `json:"-"` // soak 3
	Step       string `doc:"its word"`
	StepNumber int    `doc:"which of the steps of that kind; 0 where there is no saying"`
	To         string `doc:"as written"`
	Because    string
}

// Doubt is a weight below the dry matter that the forecast leaves in it.
type Doubt struct {
	What      Weighed `doc:"cast or clean malt"`
	Weight    answer.Kilograms
	DryMatter answer.Kilograms `doc:"that the forecast leaves in it"`
}

// Weighed is what was weighed.
type Weighed string

// What may be doubtful.
const (
	AtCast    Weighed = "cast"
	CleanMalt Weighed = "clean malt"
)

func figure[T answer.Single](f seasons.Figure) Figure[T] {
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
		Malt: figure[answer.Kilograms](s.Malt), Yield: figure[answer.Share](s.Yield), OnDryGrain: figure[answer.Share](s.OnDryGrain), DryYield: figure[answer.Share](s.DryYield),
		EndMoisture: figure[answer.Share](s.EndMoisture), Total: figure[answer.Seconds](s.Total),
		Fuel: figure[answer.Joules](s.Fuel), Power: figure[answer.Joules](s.Power),
	}
}
