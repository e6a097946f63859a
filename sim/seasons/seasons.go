// Package seasons makes figures of the record of a batch, so that batches can stand
// side by side.
//
// # How it works
//
// Of takes a record and the forecast of its process and gives a Season: for each
// measure a Figure, which says besides its value how it was come by. What the record
// holds is measured. What needs the dry matter that the grain has burnt or lost with
// its water is reckoned: no scale shows it, and the forecast has to tell it. A count
// that came too early or too late gives a bound. A figure that cannot be, such as a yield
// above the whole, is shown and counts in no sum. What neither the record nor the
// forecast tells is missing; nothing is put in its place.
//
// Times are in seconds, weights in kg, temperatures in °C and shares from 0 to 1;
// moistures are on the wet basis.
package seasons

import (
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

// Standing says how a figure was come by.
type Standing string

// The standings.
const (
	Missing  Standing = ""         // it is not known
	Measured Standing = "measured" // from the record alone
	Reckoned Standing = "reckoned" // with something of the forecast
	Over     Standing = "over"     // it is more than the value
	Under    Standing = "under"    // it is the value or less

	Impossible Standing = "impossible" // it cannot be, and counts nowhere
)

// Figure is one figure of a batch; the zero value is missing.
type Figure struct {
	Value    float64
	Standing Standing
}

// Known tells whether the figure is a value, and no bound.
func (f Figure) Known() bool { return f.Standing == Measured || f.Standing == Reckoned }

// Season is what the record of one batch comes to.
type Season struct {
	Batch *model.Batch

	RawMoisture  Figure // of the raw grain: by the sample, or as the lot says
	Cast         Figure // s from the beginning to the last weighing of the steep
	CastMoisture Figure
	Water        Figure // °C, the mean of the steep water as read
	Chit         Figure // share of the kernels, by the last count of chit
	ChitAt       Figure // s from the beginning to that count

	ThreeQuarters Figure // s from the beginning; see threeQuarters
	Acrospire     Figure // of the middle kernel at the last count, as a share of the kernel
	Floor         Figure // s from cast to the end of growth
	Bed           Figure // °C, the warmest reading
	Rub           string // at the last feel; "" where none was
	Green         Figure // kg, when growth had ended

	Break Figure // s on the kiln until the break was seen
	Kiln  Figure // s on the kiln

	Malt        Figure // kg, without rootlets
	Yield       Figure // malt for raw grain, both as they are
	OnDryGrain  Figure // malt as it is for the dry matter of the raw grain
	DryYield    Figure // malt for raw grain, both dry
	EndMoisture Figure
	Total       Figure // s from the beginning to the weighing of the clean malt
	Fuel, Power Figure // J for each kg of clean malt, as the forecast of the batch has them

	Doubts []Doubt // weights that cannot be, if the forecast is right
}

// Doubt is a weight that is less than the dry matter in it as the forecast has it:
// grain was lost, or its moisture or a weight is wrong.
type Doubt struct {
	Clean       bool    // the clean malt; otherwise the batch at cast
	Weight, Dry float64 // kg
}

// Of makes the figures of a batch. The forecast is that of its process, or nil where
// there is none.
func Of(b *model.Batch, f *forecast.Forecast) Season {
	r := &record{b: b, f: f}
	s := Season{Batch: b, RawMoisture: r.rawMoisture()}
	if w, can := b.SampleMoisture(); b.Sample != nil && !can {
		s.RawMoisture = Figure{w, Impossible} // what is reckoned goes by the lot
	}
	r.steep(&s)
	r.floor(&s)
	r.kiln(&s)
	r.malt(&s)
	return s
}

// record is a batch beside the forecast of its process.
type record struct {
	b *model.Batch
	f *forecast.Forecast // nil where there is none
}

// since gives the time of an instant from the beginning.
func (r *record) since(at model.Instant) Figure {
	if at.IsZero() || r.b.Began.IsZero() {
		return Figure{}
	}
	return Figure{at.Sub(r.b.Began.Time).Seconds(), Measured}
}

// between gives the time from one figure to another, as well known as the less known.
func between(from, to Figure) Figure {
	if !from.Known() || !to.Known() || to.Value < from.Value {
		return Figure{}
	}
	d := Figure{to.Value - from.Value, Measured}
	if from.Standing == Reckoned || to.Standing == Reckoned {
		d.Standing = Reckoned
	}
	return d
}

const zeroC = quantity.ZeroCelsius

// temperatures gives what was read in a place, °C, in the order of the clock.
func (r *record) temperatures(where string) []float64 {
	var list []float64
	for _, x := range r.b.Readings {
		if t := model.Thermometer(x); t != nil && t.Where == where {
			list = append(list, t.Low.SI-zeroC)
		}
	}
	return list
}
