package outlook_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/sample"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
)

func TestAForecastThatBreaksOffSaysWhere(t *testing.T) {
	r := outlook.Of(sample.Forecast(t, "broken/forecast-unable.malt"), time.Time{})
	assert.False(t, r.Complete)
	require.NotNil(t, r.BrokenOff)
	assert.Equal(t, "steep", r.BrokenOff.Stage)
	assert.Equal(t, 11, r.BrokenOff.Line)
	for name, v := range map[string]float64{"malt": float64(r.Totals.Malt), "total": float64(r.Totals.Total), "lost": float64(r.Totals.DryMatterLost), "CO2": float64(r.Totals.CO2)} {
		assert.True(t, math.IsNaN(v), "%s of a batch that came to no end", name)
	}

	whole := outlook.Of(sample.Forecast(t, "pale.malt"), time.Time{})
	assert.True(t, whole.Complete)
	assert.Nil(t, whole.BrokenOff)
}

func TestTimesOfTheClockStandWhereAStartIsGiven(t *testing.T) {
	f := sample.Forecast(t, "pale.malt")
	start := time.Date(2026, 3, 6, 7, 0, 0, 0, time.UTC)
	outlook.Of(f, start).Rows(func(s outlook.Row) {
		assert.InDelta(t, float64(s.End), s.EndTime.Sub(start).Seconds(), 30, s.Label)
		assert.Zero(t, s.EndTime.Second(), "rounded once, so that no writer cuts it: %s", s.Label)
	})
	outlook.Of(f, time.Time{}).Rows(func(s outlook.Row) { assert.True(t, s.EndTime.IsZero(), s.Label) })
}

func TestRestOfALengthHasNoWordOfABound(t *testing.T) {
	f := sample.Forecast(t, "pale.malt")
	assert.Equal(t, "at least 3 weeks", outlook.Of(f, time.Time{}).Rest)
	model.First[*model.Storing](f.Process).Rest.Op = quantity.Is
	assert.Equal(t, "3 weeks", outlook.Of(f, time.Time{}).Rest)
}

func TestClassesOfTheKernelsAreAllOfThem(t *testing.T) {
	for _, name := range []string{"pale.malt", "oats.malt"} {
		g := outlook.Of(sample.Forecast(t, name), time.Time{}).Growth
		require.NotNil(t, g)
		c := g.Classes
		assert.InDelta(t, 1, float64(c.None+c.ToQuarter+c.ToHalf+c.ToThreeQuarters+c.ToWhole+c.Overgrown), 1e-9, name)
		assert.InDelta(t, float64(1-g.Chitted), float64(c.None), 1e-9, name)
	}
}

// Each total of a spread is that of its name.
func TestSpreadOfATotalIsThatOfItsName(t *testing.T) {
	e, err := ensemble.Run(t.Context(), sample.Process(t, "pale.malt"), ensemble.Options{Members: 12})
	require.NoError(t, err)
	got := outlook.TotalsOver(e)
	for name, c := range map[string]struct {
		of  func(*forecast.Totals) float64
		got float64
	}{
		"steep-out moisture": {func(x *forecast.Totals) float64 { return x.SteepOutMoisture }, float64(got.SteepOutMoisture.P50)},
		"total":              {func(x *forecast.Totals) float64 { return x.Total }, float64(got.Total.P50)},
		"final moisture":     {func(x *forecast.Totals) float64 { return x.FinalMoisture }, float64(got.FinalMoisture.P50)},
		"malt":               {func(x *forecast.Totals) float64 { return x.Malt }, float64(got.Malt.P50)},
		"yield":              {func(x *forecast.Totals) float64 { return x.Yield }, float64(got.Yield.P50)},
		"fuel":               {func(x *forecast.Totals) float64 { return 1000 * x.Energy.Fuel / x.Malt }, float64(got.FuelPerTonne.P50)},
		"power":              {func(x *forecast.Totals) float64 { return 1000 * x.Energy.Power / x.Malt }, float64(got.PowerPerTonne.P50)},
		"diastatic":          {func(x *forecast.Totals) float64 { return x.Quality.Diastatic }, float64(got.Diastatic.P50)},
	} {
		assert.Equal(t, e.Total(c.of).P50, c.got, name)
	}
}

func TestAPromiseThatIsBrokenSaysWhatTheForecastGives(t *testing.T) {
	p := sample.Process(t, "pale.malt")
	for i := range p.Expect {
		p.Expect[i].Tests[0].Bound.Range.Low.SI, p.Expect[i].Tests[0].Bound.Range.High.SI = 0, 1e-6
	}
	f, err := forecast.Run(p, forecast.Options{})
	require.NoError(t, err)
	r := outlook.Of(f, time.Time{})
	require.NotEmpty(t, r.Expects)
	for _, e := range r.Expects {
		assert.False(t, e.Holds)
		require.NotNil(t, e.Forecast)
		assert.Greater(t, e.Forecast.SI, 0.0)
	}
}

func BenchmarkCourse(b *testing.B) {
	f := sample.Forecast(b, "pale.malt")
	for _, c := range []struct {
		name  string
		every answer.Seconds
	}{{"1 h", 3600}, {"1 min", 60}} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				_, err := outlook.Ask(b.Context(), f, outlook.Options{Every: c.every})
				require.NoError(b, err)
			}
		})
	}
}

// The kernels are counted when the kiln takes them: they grow on while they wither.
func TestTheGrowthIsThatOfWhatComesToTheKiln(t *testing.T) {
	f := sample.Forecast(t, "pale.malt")
	require.Len(t, f.Pieces, 2)
	grown, withered := f.Pieces[0], f.Pieces[1]
	require.Equal(t, model.WitherStage, withered.Stage)
	require.Greater(t, withered.Acrospire, grown.Acrospire)
	assert.InDelta(t, withered.Acrospire, float64(outlook.Of(f, time.Time{}).Growth.Acrospire), 1e-12)
}

func TestWhatABoxDoesNotGiveIsAmongWhatIsNotGiven(t *testing.T) {
	f := *sample.Forecast(t, "box.malt")
	assert.Empty(t, outlook.AskedOf(&f).NotGiven)
	for _, lacks := range []forecast.Trouble{forecast.AirOnShort{}, forecast.FanShort{}, forecast.BandOff{}, forecast.RanHot{}, forecast.Drowned{}} {
		f.Trouble = []forecast.Trouble{forecast.BedWarm{}, lacks}
		assert.Equal(t, []outlook.Trouble{{Of: lacks}}, outlook.AskedOf(&f).NotGiven)
	}
}
