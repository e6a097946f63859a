package kiln_test

import (
	"fmt"
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
	"maltwright/sim/drying"
	"maltwright/sim/kiln"
	"maltwright/sim/quality"
)

// situation is green malt of 45 % in the kiln of a house in winter: kg on the m²,
// m³/h for each kg, air-on while it dries, °C, and the share of the exhaust led back.
type situation struct{ load, air, on, back float64 }

func (s situation) charge() kiln.Charge {
	depth := s.load / 480
	return kiln.Charge{DryMass: s.load * 0.55, Moisture: dry(0.45), Temperature: 15, Depth: &depth}
}

func (s situation) layers() int {
	return kiln.LayersFor(s.charge(), winter, drying.Malt{}, kiln.Draught{T: s.on, Airflow: s.flow()})
}

func (s situation) flow() float64 { return s.load * s.air / 3600 }

// look is the longest piece in which the forecast takes a kiln, s.
const look = 1200.0

// outcome is what came of a kilning.
type outcome struct {
	moistures []float64 // at each look, wet basis
	hours     float64   // to 10 %; NaN where it does not come to it
	broke     float64   // h, of the break; 0 where there is none
	quality   quality.State
}

// heated follows what heat does to each layer, as the forecast does.
type heated struct {
	bed           *kiln.Bed
	quality       []quality.State
	before, after []kiln.Layer
}

func (h *heated) Stepped(dt float64) error {
	h.after = h.bed.Layers(h.after[:0])
	for i, b := range h.before {
		a := h.after[i]
		if err := h.quality[i].Step(dt, b.T, a.T, b.X/(1+b.X), a.X/(1+a.X), false); err != nil {
			return err
		}
	}
	h.before, h.after = h.after, h.before
	return nil
}

// kilned dries the situation's malt for as long as its air needs, warms it to 82 °C in 3 h
// and cures it for 5, in pieces of so many seconds.
func (s situation) kilned(t testing.TB, layers int, piece float64) outcome {
	t.Helper()
	b, err := kiln.New(s.charge(), kiln.Equipment{Area: 1, Airflow: s.flow(), Recirculation: s.back, Layers: layers}, winter, drying.Malt{})
	require.NoError(t, err)
	h := &heated{bed: b, before: b.Layers(nil)}
	for range layers {
		h.quality = append(h.quality, quality.Green(0.85))
	}
	out := outcome{hours: math.NaN()}
	last := b.View()
	advance := func(set kiln.Setting) {
		_, err := b.AdvanceBy(piece, set, h)
		require.NoError(t, err)
		v := b.View()
		if math.Mod(3600*v.Hours+1, look) < 2 {
			out.moistures = append(out.moistures, v.WetBasis)
		}
		if last.WetBasis > 0.10 && v.WetBasis <= 0.10 {
			out.hours = last.Hours + (v.Hours-last.Hours)*(last.WetBasis-0.10)/(last.WetBasis-v.WetBasis)
		}
		last = v
	}
	drying := 3600 * max(16, math.Round(26/(s.air*(1-s.back))+12))
	for at := 0.0; at < drying-1; at += piece {
		advance(kiln.Hold(kiln.AirOn, s.on))
	}
	for at := 0.0; at < 3*3600-1; at += piece {
		rise := (82 - s.on) / (3 * 3600)
		advance(kiln.Setting{From: s.on + at*rise, To: s.on + (at+piece)*rise})
	}
	for at := 0.0; at < 5*3600-1; at += piece {
		advance(kiln.Hold(kiln.AirOn, 82))
	}
	out.broke, out.quality = last.BreakHours, quality.Mean(h.quality)
	return out
}

// misses are the largest gaps between two forecasts.
type misses struct {
	moisture, end  float64 // points, at any time and at the end
	hours, broke   float64 // h, to 10 % and to the break
	enzymes, split float64 // points of the enzymes and of the DMS precursor that are left
	colour         float64 // EBC
}

// bounds are what docs/model.md states of the layers that are chosen, stepBounds of pieces of twenty
// minutes.
var bounds = misses{moisture: 0.25, end: 0.1, hours: 0.3, broke: 0.35, enzymes: 1.5, split: 0.5, colour: 0.06}

var stepBounds = misses{moisture: 0.04, end: 0.005, hours: 0.02, broke: 0.05, enzymes: 0.1, split: 0.02, colour: 0.005}

func TestTheDocumentStatesTheBounds(t *testing.T) {
	text, err := os.ReadFile("../../docs/model.md")
	require.NoError(t, err)
	for _, r := range []struct {
		what, unit   string
		step, layers float64
	}{
		{"mean moisture at any time", "points", stepBounds.moisture, bounds.moisture},
		{"mean moisture at the end", "points", stepBounds.end, bounds.end},
		{"hours to 10 %, of 16 to 60", "h", stepBounds.hours, bounds.hours},
		{"the break", "h", stepBounds.broke, bounds.broke},
		{"enzymes left", "points", stepBounds.enzymes, bounds.enzymes},
		{"DMS precursor left", "points", stepBounds.split, bounds.split},
		{"colour", "EBC", stepBounds.colour, bounds.colour},
	} {
		assert.Contains(t, string(text), fmt.Sprintf("| %s | %g %s | %g %s |\n", r.what, r.step, r.unit, r.layers, r.unit))
	}
}

func (o outcome) from(ref outcome) misses {
	var m misses
	for i := range o.moistures {
		m.moisture = max(m.moisture, 100*math.Abs(o.moistures[i]-ref.moistures[i]))
	}
	last := len(o.moistures) - 1
	m.end = 100 * math.Abs(o.moistures[last]-ref.moistures[last])
	if gap := math.Abs(o.hours - ref.hours); gap > 0 { // no malt that stays wetter
		m.hours = gap
	}
	m.broke = math.Abs(o.broke - ref.broke)
	m.enzymes = 100 * max(math.Abs(o.quality.Diastatic-ref.quality.Diastatic), math.Abs(o.quality.Alpha-ref.quality.Alpha))
	m.split = 100 * math.Abs(o.quality.Precursor-ref.quality.Precursor)
	m.colour = math.Abs(o.quality.Colour - ref.quality.Colour)
	return m
}

func (m misses) max(o misses) misses {
	return misses{max(m.moisture, o.moisture), max(m.end, o.end), max(m.hours, o.hours), max(m.broke, o.broke), max(m.enzymes, o.enzymes), max(m.split, o.split), max(m.colour, o.colour)}
}

func (m misses) within(t *testing.T, most misses, what string) {
	assert.LessOrEqual(t, m.moisture, most.moisture, "%s: points of moisture", what)
	assert.LessOrEqual(t, m.end, most.end, "%s: points at the end", what)
	assert.LessOrEqual(t, m.hours, most.hours, "%s: hours to 10 %%", what)
	assert.LessOrEqual(t, m.broke, most.broke, "%s: hours to the break", what)
	assert.LessOrEqual(t, m.enzymes, most.enzymes, "%s: points of enzymes", what)
	assert.LessOrEqual(t, m.split, most.split, "%s: points of the DMS precursor", what)
	assert.LessOrEqual(t, m.colour, most.colour, "%s: EBC", what)
}

// range of beds: from single kernels to 60 cm, from 0.6 to 40 m³/h for each kg.
func situations() []situation {
	var list []situation
	for _, on := range []float64{40, 50, 60, 75} {
		for _, load := range []float64{2, 15, 72, 300} {
			for _, air := range []float64{0.6, 0.9, 1.2, 1.6, 2, 3, 5, 8, 16, 40} {
				for _, back := range []float64{0, 0.5} {
					if s := (situation{load, air, on, back}); s.flow() < 2.9 && (back == 0 || air >= 2) {
						list = append(list, s)
					}
				}
			}
		}
	}
	return list
}

// The layers that are chosen, beside sixty, over the range of depth, air and heat.
func TestChosenLayersHoldTheirBoundsOverDepthAndAir(t *testing.T) {
	every := 17
	if golden.Long() {
		every = 1
	}
	var worst misses
	for i, s := range situations() {
		if i%every != 0 {
			continue
		}
		n := s.layers()
		m := s.kilned(t, n, look).from(s.kilned(t, 60, look))
		m.within(t, bounds, fmt.Sprintf("%+v in %d layers", s, n))
		worst = worst.max(m)
	}
	t.Logf("%.3f", worst)
}

// Pieces of twenty minutes, the longest that the forecast takes, beside those of fifteen seconds.
func TestPiecesOfTwentyMinutesAreFineEnoughForWhatHeatDoes(t *testing.T) {
	var worst misses
	for _, s := range []situation{{15, 8, 50, 0}, {15, 16, 75, 0}, {15, 1.2, 50, 0}, {300, 2, 60, 0}, {15, 8, 60, 0.5}} {
		n := s.layers()
		m := s.kilned(t, n, look).from(s.kilned(t, n, 15))
		m.within(t, stepBounds, fmt.Sprintf("%+v", s))
		worst = worst.max(m)
	}
	t.Logf("%.4f", worst)
}

// Few layers where few do: a tray under the air of a small kiln, a deep bed under that of
// a large one, and what lies beyond what is chosen.
func TestLayersAreAsManyAsTheAirAsksFor(t *testing.T) {
	assert.LessOrEqual(t, situation{15, 8, 55, 0}.layers(), 4)
	assert.LessOrEqual(t, situation{300, 2.6, 60, 0}.layers(), 8)
	assert.Equal(t, situation{15, 2.6, 60, 0}.layers(), situation{300, 2.6, 60, 0}.layers(), "the depth does not matter")
	assert.Equal(t, 2, situation{15, 80, 60, 0}.layers())
	assert.Equal(t, 20, situation{15, 0.1, 60, 0}.layers())
}
