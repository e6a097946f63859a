package follow

import (
	"context"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/forecast"
	"maltwright/sim/visits"
)

const roastRecord = `site "Shed" { air 18 °C; water 12 °C; humidity 60 %; altitude 100 m }
kiln "roaster" { holds 20 l; tumbles yes; airflow 4 m3/h; heater 2 kW; reaches 60 to 230 °C; fired gas by indirect }
grain "Pale" { species barley; already kilned malt; moisture 4.5 % }
process "Chocolate" {
  make chocolate malt
  from 4 kg of "Pale"
  at "Shed"
  kiln in "roaster" {
    roast at malt 150 °C for 20 min
    roast at malt 215 °C for 30 min
    gate moisture at most 3 %
    cool to malt 30 °C with water 0.1 l
  }
  store in "tin" for at least 2 weeks
}
batch "C1" of "Chocolate" {
  began 2026-03-01 10:00
  read malt 149 °C at 10:19
  read malt 205 °C at 10:40
  weighed 3.3 kg at 10:55 after roast 2
  weighed 3.4 kg at 11:40 after cool
  weighed 3.4 kg clean at 11:45
}
`

// A batch that goes where the model ends is followed all the same: its times and visits are told, what it was
// before counts, and nothing that was read behind it is doubted, or moves a forecast.
func TestARoastIsFollowedBeyondTheModel(t *testing.T) {
	b := load(t, roastRecord)
	for _, at := range []time.Time{time.Date(2026, 3, 1, 10, 45, 0, 0, time.Local), time.Date(2026, 3, 1, 11, 0, 0, 0, time.Local), time.Date(2026, 3, 1, 12, 0, 0, 0, time.Local)} {
		f, err := Of(context.Background(), b, at, Options{Members: few})
		require.NoError(t, err)
		require.NotNil(t, f.Centre.Beyond)
		assert.Empty(t, f.Doubts, at)
		assert.True(t, f.Trusted())
		for i, j := range f.Judged {
			behind := j.Observation.Reading.When().Sub(b.Began.Time) > 30*time.Minute
			assert.Equal(t, behind, j.Unjudged, "%d", i)
			assert.Equal(t, behind, math.IsNaN(j.Residual), "%d", i)
		}
		assert.Zero(t, f.Stand.Weight.Share)
		assert.NotEmpty(t, f.Due)
		total := f.Ensemble.Total(func(t *forecast.Totals) float64 { return t.Total })
		assert.InDelta(t, 1, total.Share, 1e-9)
		assert.False(t, math.IsNaN(total.P50))
		for _, odds := range f.Ensemble.Gates() {
			assert.Fail(t, "no odds of what cannot be judged", "%+v", odds)
		}
	}
}

// Malt that is read at 120 °C when it was to be cool is told, and is not taken off within the minute; one that
// was read cool since, or weighed after the cooling, is.
func TestHotMaltIsNotPutAway(t *testing.T) {
	const hot = " read malt 120 °C at 11:50\n"
	at := time.Date(2026, 3, 1, 11, 51, 0, 0, time.Local)
	record := strings.ReplaceAll(roastRecord, "  weighed 3.4 kg at 11:40 after cool\n  weighed 3.4 kg clean at 11:45\n", "")
	of := func(more string) *Following {
		f, err := Of(context.Background(), load(t, strings.TrimSuffix(record, "}\n")+more+"}\n"), at, Options{Members: few})
		require.NoError(t, err)
		return f
	}
	unload := func(f *Following) float64 {
		for _, v := range f.Due {
			for _, x := range v.Tasks {
				if x.Kind == visits.Unload {
					return x.At - f.Now
				}
			}
		}
		return math.NaN()
	}
	late := func(f *Following) bool {
		return slices.ContainsFunc(f.Late, func(l Late) bool { return l.Kind == LateCool })
	}
	f := of(hot)
	assert.True(t, late(f))
	assert.Greater(t, unload(f), 300.0, "it has yet to cool")
	f = of(" read malt 31 °C at 11:50\n")
	assert.False(t, late(f))
	f = of(hot + " weighed 3.4 kg at 11:51 after cool\n")
	assert.False(t, late(f))
}
