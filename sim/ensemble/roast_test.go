package ensemble

import (
	"context"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

// roasts are forecasts of malt that is roasted so hot, with a gate and a promise that its moisture and its yield keep or not.
func roasts(t *testing.T, at string) *Ensemble {
	t.Helper()
	root, err := read.OpenRoot(t.TempDir())
	require.NoError(t, err)
	defer root.Close()
	text := fmt.Sprintf(`site "Shed" { air 14 to 22 °C; humidity 50 to 70 %%; water 10 to 14 °C; altitude 100 m }
kiln "roaster" { holds 20 l; tumbles yes; airflow 4 m3/h; heater 2 kW; reaches 60 to 230 °C; fired gas by indirect }
grain "Pale" { species barley; already kilned malt; moisture 4.5 %% }
process "Roast" {
  make chocolate malt
  from 4 kg of "Pale"
  at "Shed"
  kiln in "roaster" { roast at malt %s for 40 min; gate moisture at most 3 %%; cool to malt 30 °C with water 0.1 l }
  expect total time at most 4 h
  expect yield at least 90 %%
}
`, at)
	h, _ := read.Load("x.malt", []byte(text), ".", root)
	require.Len(t, h.Processes, 1)
	e, err := Run(context.Background(), h.Processes[0], Options{Members: 40})
	require.NoError(t, err)
	return e
}

func TestWhatIsNotForecastHasNoSpread(t *testing.T) {
	yield := func(t *forecast.Totals) float64 { return t.Yield }
	e := roasts(t, "215 °C")
	assert.Zero(t, e.Total(yield).Share)
	assert.Zero(t, e.Total(finalMoisture).Share)
	assert.Nil(t, e.Drivers(yield))
	total := e.Total(totalTime)
	assert.InDelta(t, 1, total.Share, 1e-9)
	assert.LessOrEqual(t, total.P10, total.P90)
	for _, s := range e.Steps() {
		assert.False(t, math.IsNaN(s.End.P50), s.Label)
		assert.Zero(t, s.Moisture.Share+s.Weight.Share, s.Label)
	}
	assert.Empty(t, e.Gates(), "no odds of what cannot be judged")
	require.Len(t, e.Expectations(), 1)
	assert.InDelta(t, 1, e.Expectations()[0].Holds, 1e-9, "a time is a time")

	below := roasts(t, "160 °C")
	assert.InDelta(t, 1, below.Total(yield).Share, 1e-9)
	assert.Len(t, below.Gates(), 1)
	assert.Len(t, below.Expectations(), 2)
}

// Asked for a band at the very end of the model some members come beyond it, and odds are of the others.
func TestOddsAreOfThoseThatCanJudge(t *testing.T) {
	e := roasts(t, "176 to 186 °C")
	share := e.Total(finalMoisture).Share
	require.Greater(t, share, 0.1)
	require.Less(t, share, 0.9)
	require.Len(t, e.Expectations(), 2)
	for _, x := range append(e.Gates(), e.Expectations()...) {
		assert.InDelta(t, 1, x.Holds, 1e-9, x.Text)
	}
}
