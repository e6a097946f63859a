package outlook_test

import (
	"math"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/sample"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

var examples = []string{"pale.malt", "crystal.malt", "deep-bed.malt", "floor-kiln.malt", "oven.malt", "oats.malt", "box.malt"}

func courseOf(t *testing.T, f *forecast.Forecast, every answer.Seconds) outlook.Result {
	t.Helper()
	r, err := outlook.Ask(t.Context(), f, outlook.Options{Every: every})
	require.NoError(t, err)
	return r
}

func TestCourseIsThatOfTheSteps(t *testing.T) {
	for _, name := range examples {
		r := courseOf(t, sample.Forecast(t, name), 3600)
		r.Rows(func(s outlook.Row) {
			if s.End == s.Start || s.Stage == "store" { // one that takes no time is as the one before it
				return
			}
			i := slices.IndexFunc(r.Course, func(p outlook.Point) bool { return p.At == s.End })
			require.GreaterOrEqual(t, i, 0, "%s: no point at the end of %s", name, s.Label)
			p := r.Course[i]
			assert.Equal(t, s.MoistureEnd, p.Moisture, "%s: %s", name, s.Label)
			assert.Equal(t, s.WeightEnd, p.Weight, "%s: %s", name, s.Label)
			assert.Equal(t, s.StepName, p.StepName, name)
			assert.Equal(t, s.Stage, p.Stage, name)
		})
	}
}

func TestCourseRunsFromTheFirstSoakToTheMaltInEvenSteps(t *testing.T) {
	for _, name := range examples {
		r := courseOf(t, sample.Forecast(t, name), 1800)
		first, last := r.Course[0], r.Course[len(r.Course)-1]
		assert.Zero(t, first.At, name)
		assert.Equal(t, r.Stages[0].Steps[0].MoistureStart, first.Moisture, name)
		assert.Equal(t, r.Totals.Total, last.At, name)
		assert.Equal(t, r.Totals.FinalMoisture, last.Moisture, name)
		assert.InDelta(t, float64(r.Totals.Malt), float64(last.Weight), 1e-9, name)
		assert.InDelta(t, float64(r.Totals.DryMatterLost), float64(last.DryMatterLost), 1e-9, name)
		assert.Equal(t, r.Totals.KilnHeat, last.Heat, name)
		assert.InDelta(t, float64(r.Totals.CO2), float64(last.CO2), 1e-12, name)
		next := 0
		for i, p := range r.Course {
			if i > 0 {
				require.Greater(t, p.At, r.Course[i-1].At, name)
				assert.GreaterOrEqual(t, p.Heat, r.Course[i-1].Heat, "%s: heat is never taken back", name)
				assert.GreaterOrEqual(t, p.CO2, r.Course[i-1].CO2, name)
			}
			if p.At == answer.Seconds(1800*next) {
				next++
			}
		}
		assert.Equal(t, int(r.Totals.Total/1800)+1, next, "%s: a point each half hour", name)
	}
}

func TestAFigureStandsOnlyWhereItHasAMeaning(t *testing.T) {
	known := func(v answer.Celsius) bool { return !math.IsNaN(float64(v)) }
	r := courseOf(t, sample.Forecast(t, "pale.malt"), 3600)
	soaks := 0
	for _, p := range r.Course {
		kiln := p.Stage == "kiln"
		assert.Equal(t, kiln, known(p.AirOn) && known(p.AirOff) && !math.IsNaN(float64(p.Airflow)), "%v", p)
		if known(p.Water) {
			soaks++
			assert.Equal(t, "steep", p.Stage)
		}
		if !kiln && p.Stage != "deculm" {
			assert.False(t, math.IsNaN(float64(p.Acrospire)), "%v", p)
			assert.True(t, known(p.Grain))
		}
	}
	assert.GreaterOrEqual(t, soaks, 3*7, "three soaks of seven hours")
}

// Looking more often moves the moment of a gate by no more than the model finds it to.
func TestLookingHardlyMovesTheForecast(t *testing.T) {
	for _, name := range examples {
		f := sample.Forecast(t, name)
		plain, seen := outlook.Of(f, time.Time{}), courseOf(t, f, 600)
		assert.InDelta(t, float64(plain.Totals.Total), float64(seen.Totals.Total), 60, name)
		assert.InDelta(t, float64(plain.Totals.FinalMoisture), float64(seen.Totals.FinalMoisture), 1e-4, name)
		assert.InEpsilon(t, float64(plain.Totals.Malt), float64(seen.Totals.Malt), 1e-4, name)
	}
}

func TestCourseIsBounded(t *testing.T) {
	f := *sample.Forecast(t, "pale.malt")
	f.Totals.Total = 40 * 86400
	_, err := outlook.Ask(t.Context(), &f, outlook.Options{Every: 60})
	var many *outlook.TooManyError
	require.ErrorAs(t, err, &many)
	assert.EqualValues(t, 120, many.Least)
	assert.EqualError(t, err, "a course has at most 50000 points; for this process take 2 min or longer")

	steps := 0
	outlook.Of(&f, time.Time{}).Rows(func(outlook.Row) { steps++ })
	f.Totals.Total = float64(60 * (outlook.MostPoints - steps - 1))
	r := courseOf(t, &f, 60)
	assert.LessOrEqual(t, len(r.Course), outlook.MostPoints)
}

func TestCourseOfAForecastThatBreaksOffEndsThere(t *testing.T) {
	f := sample.Forecast(t, "broken/forecast-unable.malt")
	r := courseOf(t, f, 3600)
	assert.False(t, r.Complete)
	require.NotNil(t, r.BrokenOff)
	for _, p := range r.Course {
		assert.LessOrEqual(t, p.At, r.BrokenOff.At)
	}
}

func TestABoxHasABottomATopAndAirBetweenWhileItsFanRuns(t *testing.T) {
	known := func(v answer.Celsius) bool { return !math.IsNaN(float64(v)) }
	r := courseOf(t, sample.Forecast(t, "box.malt"), 1800)
	ran, stood := 0, 0
	for _, p := range r.Course {
		growing := p.Stage == string(model.GerminateStage)
		assert.Equal(t, growing, known(p.Bottom) && known(p.Top), "%v", p.At)
		if !growing {
			continue
		}
		if p.Airflow > 0 {
			ran++
			assert.True(t, known(p.AirOn) && known(p.AirOff))
		} else {
			stood++
			assert.False(t, known(p.AirOn) || known(p.AirOff))
		}
	}
	assert.Positive(t, ran)
	assert.Positive(t, stood)
	require.NotNil(t, r.Totals.Blown)
	assert.Positive(t, float64(r.Totals.Blown.Energy))
	assert.Positive(t, float64(r.Totals.Sprinkled))
	assert.Nil(t, outlook.Of(sample.Forecast(t, "pale.malt"), time.Time{}).Totals.Blown)
}
