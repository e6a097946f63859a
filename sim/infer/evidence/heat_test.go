package evidence_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
)

// onKiln is a batch that came on the kiln at 02:00, dry 1 at 50 °C, dry 2 at 55 to 65, cure at 82.
const onKiln = "  weighed 8.96 kg at 2026-03-12 08:00 after germinate\n  weighed 7.60 kg at 2026-03-13 02:00 after wither\n"

func stepsAt(t *testing.T, lines string, until time.Time) (*evidence.Trial, *forecast.Forecast) {
	t.Helper()
	x := trial(t, written(t, onKiln+lines), until)
	return x, middle(t, x)
}

func endOf(f *forecast.Forecast, kind model.StepKind, n int) float64 {
	for _, st := range f.Stages {
		for _, s := range st.Steps {
			if s.Kind == kind && s.Nth == n {
				return s.End
			}
		}
	}
	return 0
}

func hoursIn(day, h, m int) float64 {
	return time.Date(2026, 3, day, h, m, 0, 0, time.Local).Sub(began).Seconds()
}

func TestAirOnTellsTheStepOfTheKiln(t *testing.T) {
	_, plain := stepsAt(t, "", time.Time{})
	_, planned := endOf(plain, model.DryStep, 1), endOf(plain, model.DryStep, 2)
	require.Greater(t, planned, hoursIn(13, 9, 0), "the plan cures later than that")
	x, f := stepsAt(t, "  read air-on 81 °C at 09:00\n", time.Time{})
	assert.LessOrEqual(t, endOf(f, model.DryStep, 2), hoursIn(13, 9, 0)+1, "the malt is cured by then")
	last := x.Observations[len(x.Observations)-1].Sight(f)
	require.NotNil(t, last)
	assert.Equal(t, "cure", last.Step, "no gate before it waits on")
	assert.InDelta(t, 81, last.AirOn, 5, "and it had half an hour to come to its heat")
	require.Len(t, x.Assumed(), 2)
	a, ok := x.Assumed()[1].(forecast.StepByHeat)
	require.True(t, ok)
	assert.Equal(t, "cure 1", a.Step)
	assert.Equal(t, "air-on 81 °C", a.Read)
}

func TestAirOnTellsThatAStepIsNotOver(t *testing.T) {
	_, plain := stepsAt(t, "", time.Time{})
	late := 4 * time.Hour
	at := began.Add(time.Duration(endOf(plain, model.DryStep, 1))*time.Second + late)
	_, f := stepsAt(t, "  read air-on 50 °C at "+at.Format("2006-01-02 15:04")+"\n", time.Time{})
	assert.InDelta(t, endOf(plain, model.DryStep, 1)+late.Seconds(), endOf(f, model.DryStep, 1), 120)
}

func TestAirOnThatTellsNoStepTellsNothing(t *testing.T) {
	_, plain := stepsAt(t, "", time.Time{})
	for _, read := range []string{"52.5", "73", "20"} { // between two, on the way, before it is warm
		x, f := stepsAt(t, "  read air-on "+read+" °C at 09:00\n", time.Time{})
		assert.InDelta(t, endOf(plain, model.DryStep, 2), endOf(f, model.DryStep, 2), 30, read) // a look cuts the steps of the sums
		assert.Len(t, x.Assumed(), 1, read)
	}
	x, f := stepsAt(t, "  read air-on 81 °C at 09:00\n  weighed 5.9 kg at 11:00 after dry 1\n  weighed 5.3 kg at 15:00 after dry 2\n", time.Time{})
	assert.InDelta(t, hoursIn(13, 15, 0), endOf(f, model.DryStep, 2), 60, "a line that says it goes before")
	assert.Len(t, x.Assumed(), 1)
}

func TestAirOfNoStep(t *testing.T) {
	x, _ := stepsAt(t, "  read air-on 97 °C at 09:00\n  read air-on 81 °C at 09:30\n  read air-off 97 °C at 09:40\n", time.Time{})
	assert.True(t, x.FitsNoStep(x.Batch.Readings[2]))
	assert.False(t, x.FitsNoStep(x.Batch.Readings[3]))
	assert.False(t, x.FitsNoStep(x.Batch.Readings[4]), "what comes off the malt is held by nobody")
}

// The kiln of a house with a box has air before and behind its malt as the box has.
func TestHotAirOfAHouseWithABoxIsOfTheKiln(t *testing.T) {
	b := load(t, "batch \"x\" of \"Mill pale\" {\n  began 2026-03-06 07:00\n  read air-on 60 °C at 2026-03-12 08:00\n}\n")
	x := trial(t, b, began.Add(6*24*time.Hour+2*time.Hour))
	f := middle(t, x)
	require.Len(t, x.Observations, 1)
	assert.Equal(t, model.KilnStage, x.Observations[0].Sight(f).Stage)
}

// Green malt that withers in its box has air before and behind it too.
func TestAirOfABoxIsReadWhileItWithers(t *testing.T) {
	b := load(t, `process "Withered" {
  make pale malt
  from 1 t of "Far field 2026"
  at   "Loft, spring"
  steep in "steel tank" {
    soak 7 h in water at 13 °C
    rest 9 h in air at 14 °C
    soak 7 h in water at 13 °C
  }
  germinate on "mill box" {
    hold bed at 14 to 17 °C
    turn every 12 h by machine
    for  5 days
  }
  wither on "mill box" {
    air at air-on 22 °C
    for 12 h
  }
  kiln in "deep bed" {
    dry  at air-on 55 °C for 24 h
    cure at air-on 84 °C for 5 h
  }
}
batch "x" of "Withered" {
  began 2026-03-06 07:00
  read air-on 20 °C at 2026-03-12 10:00
  read air-off 17 °C at 10:00
}
`)
	x := trial(t, b, began.Add(6*24*time.Hour+4*time.Hour))
	f := middle(t, x)
	require.Len(t, x.Observations, 2)
	for i := range x.Observations {
		o := &x.Observations[i]
		require.Equal(t, model.WitherStage, o.Sight(f).Stage)
		assert.False(t, math.IsNaN(o.Expect(f, 0)), "there is such air")
	}
}
