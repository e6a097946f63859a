package forecast

import (
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/drying"
	"maltwright/sim/quality"
)

// Where the model ends
//
// Malt above [drying.Hottest] burns, glows and loses more than water: nothing that was at hand
// tells how much. From then on its temperature, its moisture, its weight, what comes of it and what heat did
// to it are not forecast, and stand as NaN wherever they are told. The equations are carried along
// all the same, beyond where they hold, so that the malt is timed as it cools: of what they give
// nothing but times is told.
//
// A condition on what is not forecast cannot be judged. It is taken to hold as soon as its step may end,
// for whoever stands at the drum sees what the forecast does not.

// EndsAt is the temperature of the malt above which it is not forecast, °C.
const EndsAt = drying.Hottest

// endsBy is how far above [EndsAt] malt counts as above it, K: no step is held more closely.
const endsBy = 0.5

// ColourEndsAt is the temperature of the malt from which on its colour is not forecast, °C: the hottest malt
// that colour was set on lay in an oven of 107 °C, and roasted malt colours by more than one reaction.
const ColourEndsAt = 120.0

// Beyond is where in a batch the malt came above [EndsAt].
type Beyond struct {
	Met
	Of    *model.Kilning
	Share float64 // of the bed that was above it then, 0 to 1
	Mean  float64 // the mean temperature of the malt then, °C
}

// unknownQuality is what heat did to malt of which that is not known.
func unknownQuality() quality.State {
	nan := math.NaN()
	return quality.State{Diastatic: nan, Alpha: nan, Precursor: nan, Colour: nan, Modified: nan, Stewed: nan, Used: nan}
}

// leave looks whether the malt, with a step of the bed behind it, comes to where the model ends.
func (m *kilnModel) leave() {
	for i, l := range m.layers {
		switch {
		case m.beyond:
		case l.T > EndsAt+endsBy:
			m.beyond, m.left = true, m.leaves()
		case l.T > ColourEndsAt:
			m.quality[i].Colour = math.NaN()
		}
	}
	if m.beyond {
		for i := range m.quality {
			m.quality[i] = unknownQuality()
		}
	}
}

// leaves is where and how the malt, as it is, comes to where the model ends.
func (m *kilnModel) leaves() Beyond {
	v := m.bed.View()
	b := Beyond{Met: Met{At: 3600 * v.Hours}, Mean: v.MaltT}
	for _, l := range m.layers {
		if l.T > EndsAt+endsBy {
			b.Share += 1 / float64(len(m.layers))
		}
	}
	return b
}

// leftIn tells of the step in which the malt came to where the model ends.
func (r *run) leftIn(m *kilnModel, st *model.Kilning, place source.Place, loaded float64) {
	if m.beyond && r.f.Beyond == nil {
		b := m.left
		b.Place, b.At, b.Of = place, loaded+b.At, st
		r.f.Beyond = &b
	}
}

// forecast is a figure that is not forecast beyond the model.
func (m *kilnModel) forecast(v float64) float64 {
	if m.beyond {
		return math.NaN()
	}
	return v
}

// unjudged tells whether a condition asks what is not forecast.
func unjudged(m physics, c *model.Condition) bool {
	return slices.ContainsFunc(c.Tests, func(t model.Test) bool {
		v, _, ok := m.measure(t.Measure)
		return ok && math.IsNaN(v)
	})
}
