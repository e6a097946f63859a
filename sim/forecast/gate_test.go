package forecast

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
)

// written gives the gate of the forecast that is written so.
func written(t *testing.T, f *Forecast, text string) Gate {
	t.Helper()
	for _, g := range f.Gates {
		if g.Text == text {
			return g
		}
	}
	require.Failf(t, "no such gate", "%s is not among the gates of the forecast: %v", text, f.Gates)
	return Gate{}
}

func grownUntil(t *testing.T, stage string) *Forecast {
	return run1(t, steepText+`germinate on "tray" { turn every 8 h; humidity 98 %; `+stage+" }\n"+kilnText)
}

func TestAGateBehindTheLastHoldIsWaitedForAtTheEndOfTheStage(t *testing.T) {
	short := grownUntil(t, `hold bed at 14 to 16 °C; gate acrospire at least 3/4 allow 0 to 3 days; until acrospire at least 1/2; allow 2 to 8 days`)
	g := written(t, short, "acrospire at least 3/4")
	assert.True(t, g.Hold && g.Met)
	assert.Greater(t, g.Waited, 6*3600.0, "half of the kernel is not three quarters")
	long := grownUntil(t, `hold bed at 14 to 16 °C; until acrospire at least 3/4; allow 2 to 8 days`)
	assert.InDelta(t, long.Pieces[0].Took, short.Pieces[0].Took, 3600, "it grows as long as if it had been asked for at once")

	never := grownUntil(t, `hold bed at 14 to 16 °C; gate acrospire at least 3/4; for 2 days`)
	g = written(t, never, "acrospire at least 3/4")
	assert.False(t, g.Met)
	assert.InDelta(t, gateWait, g.Waited, 1)
	grown := never.Stages[1].Steps
	assert.Equal(t, Temperature{"bed", 14, 16, true}, grown[len(grown)-1].Temperature, "it waits in the band of the hold")
}

func TestAPieceThatWaitsAtAGateIsTurnedOn(t *testing.T) {
	waits := grownUntil(t, `hold bed at 14 to 16 °C; gate acrospire at least 3/4 allow 0 to 3 days; for 3 days`)
	grows := grownUntil(t, `hold bed at 14 to 16 °C; until acrospire at least 3/4; allow 3 to 8 days`)
	assert.InDelta(t, warmest(grows), warmest(waits), 0.3)
}

func warmest(f *Forecast) float64 {
	for _, t := range Troubles[BedWarm](f) {
		return t.Temperature
	}
	return math.NaN()
}

func TestAGateBeforeTheFirstHoldIsWaitedForInItsSetting(t *testing.T) {
	plain := grownUntil(t, `hold bed at 14 to 16 °C; until acrospire at least 3/4; allow 2 to 8 days`)
	for _, ask := range []string{"chit at least 90 %", "acrospire at least 1/8"} {
		f := grownUntil(t, `gate `+ask+` allow 0 to 3 days; hold bed at 14 to 16 °C; until acrospire at least 3/4; allow 2 to 8 days`)
		g := written(t, f, ask)
		assert.True(t, g.Met, ask)
		assert.Greater(t, g.Waited, 3600.0, ask)
		assert.InDelta(t, plain.Pieces[0].Took, f.Pieces[0].Took, 60, "it grows as if nobody had waited")
		assert.Equal(t, Temperature{"bed", 14, 16, true}, f.Stages[1].Steps[0].Temperature)
		assert.False(t, f.BrokenOff(), ask)
	}
}

func TestAGateIsWaitedForWhereNothingWasDoneInItsStageYet(t *testing.T) {
	f := run1(t, steepText+growText+strings.Replace(kilnText, "{ dry", "{ gate weight at most 1 kg allow 0 to 1 h; dry", 1))
	assert.False(t, f.BrokenOff())
	assert.False(t, written(t, f, "weight at most 1 kg").Met)
	f = run1(t, strings.Replace(steepText, "{ soak", "{ gate moisture at least 40 % allow 0 to 1 h; soak", 1)+growText+kilnText)
	assert.False(t, f.BrokenOff())
}

func TestAGateBetweenHoldsIsLookedAtWhenTheStageEndsBeforeIt(t *testing.T) {
	f := grownUntil(t, `hold bed at 14 to 16 °C for 6 days; gate chit at least 50 %; hold bed at 12 to 14 °C; for 4 days`)
	assert.True(t, written(t, f, "chit at least 50 %").Met)
	holds := 0
	for _, s := range f.Stages[1].Steps {
		if s.Kind == model.HoldStep {
			holds++
		}
	}
	assert.Equal(t, 1, holds, "the second is never come to")
}

func steeped(t *testing.T, end string) *Forecast {
	return run1(t, strings.Replace(steepText, "}", "; "+end+" }", 1)+growText+kilnText)
}

func TestWhatEndsTheSteepIsAmongTheGates(t *testing.T) {
	met := written(t, steeped(t, "until moisture at least 38 %"), "moisture at least 38 %")
	assert.True(t, met.Met)
	assert.Less(t, met.Reached, 36*3600.0)
	unmet := written(t, steeped(t, "until moisture at least 52 %"), "moisture at least 52 %")
	assert.False(t, unmet.Met)
	assert.InDelta(t, 38*3600.0, unmet.Waited, 1)
}

func TestAGateBehindWhatEndedTheSteepIsStillWaitedFor(t *testing.T) {
	f := steeped(t, "gate chit at least 99 % allow 0 to 2 h; until moisture at least 38 %")
	assert.False(t, written(t, f, "chit at least 99 %").Met)
}

func TestTheSteepMayEndByItsTime(t *testing.T) {
	f := steeped(t, "until time at least 20 h")
	assert.InDelta(t, 23*3600, f.Totals.SteepOut, 1, "at the end of the soak in which it comes about")
}

func TestWhatEndsTheSteepEndsARepeatInItToo(t *testing.T) {
	f := run1(t, `steep in "tub" { repeat 6 times { soak 7 h in water at 14 °C; rest 9 h in air at 14 °C }; until moisture at least 38 % }`+"\n"+growText+kilnText)
	assert.Less(t, f.Totals.SteepOut, 36*3600.0)
}

func TestCoolingMayHaveAnEarliestTime(t *testing.T) {
	f := run1(t, steepText+growText+strings.Replace(kilnText, "cool to malt 30 °C", "cool to malt 30 °C allow 3 to 6 h", 1))
	steps := f.Stages[2].Steps
	last := steps[len(steps)-1]
	assert.GreaterOrEqual(t, last.End-last.Start, 3*3600.0-1)
}

func TestAConditionTellsWhenItFirstHeld(t *testing.T) {
	f := run1(t, steepText+growText+strings.Replace(kilnText, "20 % allow 0 to 24 h", "20 % allow 20 to 30 h", 1))
	g := written(t, f, "moisture at most 20 %")
	assert.InDelta(t, 20*3600, g.Waited, 1)
	assert.Less(t, g.First, 12*3600.0)
	assert.Greater(t, g.First, 3600.0)
	grown := written(t, f, "acrospire at least 3/4")
	assert.Equal(t, grown.Waited, grown.First, "it ended then")
}

// deepKiln is a forecast of a deep bed that is stirred, with the drying in its kiln.
func deepKiln(t *testing.T, drying string) *Forecast {
	t.Helper()
	deep := strings.ReplaceAll(house, "area 0.5 m2; airflow 120 m3/h", "area 0.04 m2; airflow 15 m3/h")
	f, err := Run(load(t, deep+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steepText+growText+
		`kiln in "kiln" { stir every 2 h; `+drying+"; cool to malt 30 °C }\n}\n"), Options{})
	require.NoError(t, err)
	return f
}

func TestMaltThatWaitsAtAGateIsStirredOn(t *testing.T) {
	waits := written(t, deepKiln(t, "dry at air-on 55 °C for 1 h; gate moisture at most 10 % allow 0 to 90 h"), "moisture at most 10 %")
	dries := written(t, deepKiln(t, "dry at air-on 55 °C until moisture at most 10 % allow 0 to 90 h"), "moisture at most 10 %")
	require.True(t, waits.Met && dries.Met)
	assert.InDelta(t, dries.Reached, waits.Reached, 60)
}

// A gate that is given up tells how much longer it would have taken: as long as one that
// waits for it, stirred, turned and sprinkled as before.
func TestWhatAGateWouldHaveTakenCountsTheWorkThatGoesOn(t *testing.T) {
	met := written(t, deepKiln(t, "dry at air-on 55 °C for 1 h; gate moisture at most 10 % allow 0 to 90 h"), "moisture at most 10 %")
	given := written(t, deepKiln(t, "dry at air-on 55 °C for 1 h; gate moisture at most 10 % allow 0 to 5 h"), "moisture at most 10 %")
	require.True(t, met.Met && !given.Met)
	assert.InDelta(t, met.Reached, given.Ended+given.Needs, 60)

	grown := func(allow string) *Forecast {
		return grownUntil(t, `sprinkle 0.2 l every 12 h; hold bed at 14 to 16 °C; gate acrospire at least 3/4 allow 0 to `+allow+`; for 2 days`)
	}
	long, short := grown("4 days"), grown("3 h")
	whole, cut := written(t, long, "acrospire at least 3/4"), written(t, short, "acrospire at least 3/4")
	require.True(t, whole.Met && !cut.Met)
	assert.InDelta(t, whole.Reached, cut.Ended+cut.Needs, 60)
	assert.Less(t, len(short.Sprinkled), len(long.Sprinkled), "what is only tried is not written down")
}
