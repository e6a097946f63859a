package curve_test

import (
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/curve"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/sample"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

var examples = []string{"pale.malt", "crystal.malt", "deep-bed.malt", "floor-kiln.malt", "oven.malt", "oats.malt", "box.malt", "dryer.malt", "mill/two-floor.malt", "mill/chocolate.malt", "mill/caramel.malt", "hall/rye.malt"}

// forecastOf is that of an example, in the folder that it stands in.
func forecastOf(t testing.TB, name string) *forecast.Forecast {
	t.Helper()
	folder, file := filepath.Split(name)
	text, err := os.ReadFile(filepath.Join(sample.Folder(t), name))
	require.NoError(t, err)
	root, err := read.OpenRoot(filepath.Join(sample.Folder(t), folder))
	require.NoError(t, err)
	defer root.Close()
	house, found := read.Load(file, text, ".", root)
	require.Len(t, house.Processes, 1, "%v", found)
	f, err := forecast.Run(house.Processes[0], forecast.Options{})
	require.NoError(t, err)
	return f
}

func curveOf(t testing.TB, f *forecast.Forecast, o curve.Options) curve.Curve {
	t.Helper()
	c, err := curve.Forecast(t.Context(), f, o)
	require.NoError(t, err)
	return c
}

// at is the last point of a curve at a time of a stage, nil where there is none.
func at(c curve.Curve, stage string, when answer.Seconds) (found *curve.Point) {
	for i := range c.Points {
		if p := &c.Points[i]; p.Stage == stage && math.Abs(float64(p.At-when)) < 0.5 {
			found = p
		}
	}
	return found
}

// What the curve shows at the end of a step is what the outlook says of it. Looking along the way moves the moment of
// a gate by less than it is found to.
func TestTheEndOfEachStepLiesOnTheCurve(t *testing.T) {
	for _, name := range examples {
		f := forecastOf(t, name)
		c, r := curveOf(t, f, curve.Options{}), outlook.Of(f, time.Time{})
		n := 0
		r.Rows(func(s outlook.Row) {
			if s.End == s.Start || s.Stage == string(model.StoreStage) {
				return
			}
			require.Less(t, n, len(c.Steps), name)
			step := c.Steps[n]
			n++
			assert.Equal(t, s.Label, step.Label, name)
			assert.InDelta(t, float64(s.End), float64(step.To), 60, "%s: %s", name, s.Label)
			p := at(c, s.Stage, step.To)
			require.NotNil(t, p, "%s: no point at the end of %s", name, s.Label)
			if r.NotForecast != nil && s.End > r.NotForecast.At {
				assert.True(t, math.IsNaN(float64(p.Moisture+answer.Share(p.Weight))), "%s: %s", name, s.Label)
				return
			}
			assert.InDelta(t, float64(s.MoistureEnd), float64(p.Moisture), 2e-4, "%s: %s", name, s.Label)
			assert.InEpsilon(t, float64(s.WeightEnd), float64(p.Weight), 2e-4, "%s: %s", name, s.Label)
		})
		assert.Len(t, c.Steps, n, name)
		last := c.Points[len(c.Points)-1]
		assert.InDelta(t, float64(r.Totals.Total), float64(c.To), 60, name)
		if r.NotForecast != nil {
			continue
		}
		assert.InDelta(t, float64(r.Totals.FinalMoisture), float64(last.Moisture), 1e-4, name)
		assert.InEpsilon(t, float64(r.Totals.Malt), float64(last.Weight), 1e-4, name)
	}
}

func TestACurveBeginsWithTheRawGrain(t *testing.T) {
	for _, name := range examples {
		f := forecastOf(t, name)
		c := curveOf(t, f, curve.Options{})
		first := c.Points[0]
		assert.Zero(t, first.At, name)
		assert.InDelta(t, f.Process.Charge.SI, float64(first.Weight), 1e-9, name)
		assert.InDelta(t, 1-f.DryMass/f.Process.Charge.SI, float64(first.Moisture), 1e-9, name)
	}
}

// Points are in the order of time and not too many; dry matter is only lost, but for what a reading of it in
// the water of the steep would be; and the water and dry matter of each point make up its weight.
func TestACurveKeepsWhatTheGrainKeeps(t *testing.T) {
	for _, name := range examples {
		f := forecastOf(t, name)
		c := curveOf(t, f, curve.Options{})
		assert.Less(t, len(c.Points), 900, name)
		dry := math.Inf(1)
		for i, p := range c.Points {
			if i > 0 {
				require.GreaterOrEqual(t, p.At, c.Points[i-1].At, name)
			}
			now := float64(p.Weight) * (1 - float64(p.Moisture))
			if math.IsNaN(now) { // the model ends before it
				require.NotNil(t, c.NotForecast, "%s: %v", name, p)
				assert.GreaterOrEqual(t, p.At, c.NotForecast.At, name)
				continue
			}
			assert.LessOrEqual(t, now, dry*(1+1e-9), "%s: dry matter at %v", name, p.At)
			assert.InDelta(t, f.DryMass*(1-float64(p.DryMatterLost)), now, 1e-9*f.DryMass, name)
			dry = now
		}
	}
}

// The beds hold the water that the points say, and begin as the malt came on.
func TestLayersOfABedMakeUpItsPoint(t *testing.T) {
	seen := map[string]bool{}
	for _, name := range examples {
		c := curveOf(t, forecastOf(t, name), curve.Options{})
		for _, b := range c.Beds {
			first := b.Looks[0]
			for _, l := range first.Layers[1:] {
				assert.InDelta(t, float64(first.Layers[0].Moisture), float64(l.Moisture), 1e-9, "%s: it comes on even", name)
			}
			for _, look := range b.Looks {
				p := at(c, b.Stage, look.At)
				require.NotNil(t, p, name)
				x := 0.0
				for _, l := range look.Layers {
					x += float64(l.Moisture/(1-l.Moisture)) / float64(len(look.Layers))
				}
				if b.Stage == string(model.KilnStage) { // every layer of it has the same dry matter
					assert.InDelta(t, float64(p.Moisture/(1-p.Moisture)), x, 1e-9, name)
				} else {
					assert.InEpsilon(t, float64(p.Moisture/(1-p.Moisture)), x, 0.01, name)
				}
			}
			seen[b.Stage] = true
		}
	}
	assert.True(t, seen["kiln"] && seen["germinate"], "%v", seen)
}

func TestStagesFollowOneAnotherToTheEnd(t *testing.T) {
	for _, name := range examples {
		c := curveOf(t, forecastOf(t, name), curve.Options{})
		assert.Zero(t, c.Stages[0].From, name)
		for i := 1; i < len(c.Stages); i++ {
			assert.Equal(t, c.Stages[i-1].To, c.Stages[i].From, name)
		}
		assert.Equal(t, c.To, c.Stages[len(c.Stages)-1].To, name)
		for _, s := range c.Steps {
			if s.Set != nil {
				assert.Equal(t, s.From, s.Set.At[0], "%s: %s", name, s.Label)
				assert.Equal(t, s.To, s.Set.At[len(s.Set.At)-1], "%s: %s", name, s.Label)
			}
		}
	}
}

// The upper floor takes the exhaust of the lower one as it comes; the lower one is set.
func TestWhatIsNotSetHasNoBand(t *testing.T) {
	c := curveOf(t, forecastOf(t, "mill/two-floor.malt"), curve.Options{})
	set := map[int]int{}
	for _, s := range c.Steps {
		if s.Stage == string(model.KilnStage) && s.Set != nil {
			set[s.Number]++
		}
	}
	assert.Zero(t, set[1])
	assert.Positive(t, set[2])
}

// A gate that is met by a level is met where the curve crosses it.
func TestAGateIsMetWhereTheCurveCrossesItsLevel(t *testing.T) {
	c := curveOf(t, sample.Forecast(t, "pale.malt"), curve.Options{})
	crossed := 0
	for _, g := range c.Gates {
		for _, l := range g.Levels {
			if l.Measure != "moisture" || g.Stage != string(model.KilnStage) || !g.Met || g.Waited == 0 {
				continue
			}
			p := at(c, g.Stage, g.To)
			require.NotNil(t, p)
			assert.LessOrEqual(t, float64(p.Moisture), l.Value+1e-3, g.Text)
			if l.Value-float64(p.Moisture) < 1e-3 { // an earliest time lets one pass well below
				crossed++
			}
		}
	}
	assert.Positive(t, crossed)
}

func TestAForecastThatBreaksOffIsToldAsFarAsItCame(t *testing.T) {
	c := curveOf(t, sample.Forecast(t, "broken/forecast-unable.malt"), curve.Options{})
	require.NotNil(t, c.BrokenOff)
	assert.False(t, c.Complete)
	for _, p := range c.Points {
		assert.LessOrEqual(t, p.At, c.BrokenOff.At+1)
	}
}

// Nights are the time in which nobody is awake, by the clock on the wall, also where it is put forward.
func TestNightsAreByTheClock(t *testing.T) {
	zone, err := time.LoadLocation("Europe/London")
	require.NoError(t, err)
	f := sample.Forecast(t, "pale.malt")
	require.True(t, f.Process.Site.Said())
	start := time.Date(2026, 3, 27, 18, 0, 0, 0, zone) // the clocks go forward on the 29th
	c := curveOf(t, f, curve.Options{Start: start})
	require.NotEmpty(t, c.Nights)
	for _, n := range c.Nights {
		from := outlook.ClockAt(start, n.From)
		middle := outlook.ClockAt(start, (n.From+n.To)/2)
		assert.False(t, f.Process.Site.Up(middle.Hour()*3600+middle.Minute()*60), "%v", middle)
		if n.From > 0 {
			assert.True(t, f.Process.Site.Up(from.Hour()*3600+from.Minute()*60-60), "%v", from)
		}
	}
	assert.Empty(t, curveOf(t, f, curve.Options{}).Nights, "no start, no night")
}

// The middle of the bands runs beside the forecast, and its ends on either side of it.
func TestBandsLieAboutTheForecast(t *testing.T) {
	f := sample.Forecast(t, "pale.malt")
	c := curveOf(t, f, curve.Options{Members: 40})
	require.NotNil(t, c.Bands)
	b := c.Bands
	assert.Equal(t, 40, b.Members)
	assert.Less(t, len(b.At), 320)
	require.NotNil(t, b.Spread)
	inside, all := 0, 0
	for i, when := range b.At {
		m, w := b.Moisture[i], b.Weight[i]
		assert.LessOrEqual(t, m.P10, m.P50)
		assert.LessOrEqual(t, m.P50, m.P90)
		assert.LessOrEqual(t, w.P10, w.P90)
		for _, p := range c.Points {
			if p.At == when {
				all++
				if p.Moisture >= m.P10-1e-9 && p.Moisture <= m.P90+1e-9 {
					inside++
				}
				break
			}
		}
	}
	assert.Greater(t, float64(inside), 0.7*float64(all))
	assert.InDelta(t, f.Process.Charge.SI, float64(b.Weight[0].P50), 1e-9, "all begin with the charge")
	last := len(b.At) - 1
	assert.True(t, math.IsNaN(float64(b.Acrospire[last].P50)), "nothing grows on the kiln")
}

func BenchmarkCurveOfAForecast(b *testing.B) {
	f := sample.Forecast(b, "pale.malt")
	for b.Loop() {
		curveOf(b, f, curve.Options{})
	}
}

func BenchmarkBandsOfAForecast(b *testing.B) {
	f := sample.Forecast(b, "pale.malt")
	for b.Loop() {
		curveOf(b, f, curve.Options{Members: curve.DefaultMembers})
	}
}
