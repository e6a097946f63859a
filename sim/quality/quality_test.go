package quality

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func held(t *testing.T, temp, w, hours float64, stewed bool) State {
	s := Green(0.85)
	require.NoError(t, s.Step(hours*hour, temp, temp, w, w, stewed))
	return s
}

// Calibration: a fifth to a quarter of the diastatic power goes in 4 h at 80 °C and 6 %
// (common practice).
func TestAFifthToAQuarterOfTheDiastaticPowerGoesInACure(t *testing.T) {
	assert.InDelta(t, 0.775, held(t, 80, 0.06, 4, false).Diastatic, 0.025)
}

// Cure windows of equal DMS effect, 84 °C for 5.5 h and 90 °C for 3 h, each 1.5 to 1.6
// half-lives (a German maltings' published process; seen).
func TestCureWindowsOfEqualEffectOnThePrecursor(t *testing.T) {
	for _, c := range []struct{ t, h float64 }{{84, 5.5}, {90, 3}} {
		halves := -math.Log2(held(t, c.t, 0.05, c.h, false).Precursor)
		assert.GreaterOrEqual(t, halves, 1.45, "%v °C", c.t)
		assert.LessOrEqual(t, halves, 1.65, "%v °C", c.t)
	}
}

// An ale kiln of 90 to 105 °C keeps 40 to 60 % of the enzymes over all (Encyclopaedia
// Britannica, "Beer"; seen): here the cure alone, 4 h at 95 °C and 4 %.
func TestAnAleCureKeepsAboutHalfOfTheEnzymes(t *testing.T) {
	kept := held(t, 95, 0.04, 4, false)
	assert.InDelta(t, 0.5, kept.Diastatic, 0.1)
	assert.Greater(t, kept.Alpha, kept.Diastatic)
}

func TestWetEnzymesDieWhereDryOnesLive(t *testing.T) {
	wet, dry := held(t, 65, 0.40, 1, false), held(t, 65, 0.08, 1, false)
	assert.Less(t, wet.Diastatic, 0.35)
	assert.Greater(t, dry.Diastatic, 0.94)
	assert.Greater(t, wet.Alpha, wet.Diastatic)
}

// Published malt specifications: pilsner 2.5 to 3.0 EBC (seen); cured at 83 °C for 4 h.
func TestACureColoursPilsnerAsItIsSold(t *testing.T) {
	assert.InDelta(t, 2.8, held(t, 83, 0.05, 4, false).Colour, 0.3)
	assert.InDelta(t, GreenColour, held(t, 30, 0.45, 24, false).Colour, 0.1, "wet and cool it stays pale")
}

// Malt that was dried first at 65 °C shows no colour until 110 °C, wet malt from about 80 °C
// [inns-2007]: somewhere from 105 to 115 °C malt of 4 % colours as fast as green malt of 40 % does at 80.
func TestDryMaltColoursThirtyKelvinLaterThanWet(t *testing.T) {
	formed := func(temp, w float64) float64 { return held(t, temp, w, 1, false).Colour - GreenColour }
	assert.Less(t, formed(105, 0.04), formed(80, 0.40))
	assert.Greater(t, formed(115, 0.04), formed(80, 0.40))
	assert.Less(t, formed(80, 0.04), formed(80, 0.40)/15)
}

func TestColourRisesSeveralfoldFromSixToTwentyPercent(t *testing.T) {
	rise := (held(t, 85, 0.20, 1, false).Colour - GreenColour) / (held(t, 85, 0.06, 1, false).Colour - GreenColour)
	assert.Greater(t, rise, 3.0)
	assert.Less(t, rise, 8.0)
}

func TestMaltThatIsMoreModifiedOrWasStewedColoursFaster(t *testing.T) {
	cured := func(modified, stew float64) float64 {
		s := Green(modified)
		require.NoError(t, s.Step(stew*hour, 40, 40, 0.44, 0.44, true))
		before := s.Colour
		require.NoError(t, s.Step(4*hour, 85, 85, 0.06, 0.06, false))
		return s.Colour - before
	}
	assert.InEpsilon(t, 2, cured(0.8, 0)/cured(0.4, 0), 1e-2)
	assert.Greater(t, cured(0.85, 6)/cured(0.85, 0), 4.0)
	assert.Less(t, cured(0.85, 60)/cured(0.85, 6), 2.0, "there is no more to be gained than all")
	dry := Green(0.85)
	require.NoError(t, dry.Step(6*hour, 60, 60, 0.20, 0.20, true))
	assert.Zero(t, dry.Stewed, "no stew where it is not wet")
}

// stewedThenCured is malt that is stewed at 44 %, then cured for 4 h.
func stewedThenCured(t require.TestingT, warm, hours, cure, w float64) State {
	s := Green(0.85)
	for range int(hours / 0.25) {
		require.NoError(t, s.Step(0.25*hour, warm, warm, 0.44, 0.44, true))
	}
	require.NoError(t, s.Step(4*hour, cure, cure, w, w, false))
	return s
}

func TestStewedLongerMaltIsNeverPaler(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		warm, cure, w := rapid.Float64Range(30, 70).Draw(rt, "stew"), rapid.Float64Range(60, 110).Draw(rt, "cure"), rapid.Float64Range(0.02, 0.2).Draw(rt, "w")
		hours := rapid.Float64Range(0.25, 24).Draw(rt, "hours")
		assert.GreaterOrEqual(rt, stewedThenCured(rt, warm, hours+0.25, cure, w).Colour, stewedThenCured(rt, warm, hours, cure, w).Colour)
	})
}

// Munich malts of 83 and of 103 °C are sold two shades apart, pale malts cured so five: what the
// stew made is used up by the cooler cure too.
func TestWhatStewingMadeIsUsedUp(t *testing.T) {
	more := func(cure float64) float64 {
		return stewedThenCured(t, 40, 6, cure, 0.06).Colour - stewedThenCured(t, 40, 0, cure, 0.06).Colour
	}
	assert.Greater(t, more(83), 5.0)
	assert.Less(t, more(103)/more(83), 1.6)
	assert.Less(t, more(140), stewMost)
	hot := stewedThenCured(t, 70, 24, 70, 0.44)
	assert.Less(t, hot.Used, stewMash, "no more than was made")
}

func TestStarchIsMashedInAHotStewOnly(t *testing.T) {
	stewed := func(warm float64) float64 {
		s := Green(0.85)
		require.NoError(t, s.Step(24*hour, warm, warm, 0.44, 0.44, true))
		return s.Stewed
	}
	assert.InDelta(t, 1, stewed(55), 1e-6)
	assert.InDelta(t, stewMash, stewed(70), 1e-6)
	s := Green(0.85)
	require.NoError(t, s.Step(3*hour, 70, 70, 0.44, 0.44, true))
	sugars := s.Stewed
	require.NoError(t, s.Step(hour, 31, 31, 0.44, 0.44, true))
	assert.GreaterOrEqual(t, s.Stewed, sugars, "it keeps what it has in a cooler stew")
}

func TestStepsOfAnyLengthGiveTheSame(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		temp, w := rapid.Float64Range(20, 110).Draw(rt, "t"), rapid.Float64Range(0.02, 0.45).Draw(rt, "w")
		parts := rapid.IntRange(1, 20).Draw(rt, "parts")
		whole, pieces := Green(0.85), Green(0.85)
		require.NoError(rt, whole.Step(hour, temp, temp, w, w, false))
		for range parts {
			require.NoError(rt, pieces.Step(hour/float64(parts), temp, temp, w, w, false))
		}
		assert.InDelta(rt, whole.Diastatic, pieces.Diastatic, 1e-9)
		assert.InDelta(rt, whole.Colour, pieces.Colour, 1e-6*whole.Colour)
	})
}

func TestNothingComesBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := Green(0.85)
		for range rapid.IntRange(1, 8).Draw(rt, "steps") {
			before := s
			t0, w0 := rapid.Float64Range(0, 180).Draw(rt, "t"), rapid.Float64Range(0, 0.5).Draw(rt, "w")
			require.NoError(rt, s.Step(600, t0, t0+2, w0, w0, rapid.Bool().Draw(rt, "stewed")))
			assert.LessOrEqual(rt, s.Diastatic, before.Diastatic)
			assert.LessOrEqual(rt, s.Alpha, before.Alpha)
			assert.LessOrEqual(rt, s.Precursor, before.Precursor)
			assert.GreaterOrEqual(rt, s.Colour, before.Colour)
		}
	})
}

func TestOutOfRangeIsAnErrorAndChangesNothing(t *testing.T) {
	s := Green(0.85)
	for _, err := range []error{s.Step(600, 300, 300, 0.1, 0.1, false), s.Step(600, 50, 50, -0.1, 0.1, false), s.Step(-1, 50, 50, 0.1, 0.1, false), s.Step(600, math.NaN(), 50, 0.1, 0.1, false)} {
		assert.Error(t, err)
	}
	assert.Equal(t, Green(0.85), s)
}
