package drying_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
	"maltwright/sim/drying"
)

// barn is the vapour pressure, Pa, of air drawn in at 15 °C and 60 %, which
// all schedules below are taken in.
func barn(t *testing.T) float64 {
	t.Helper()
	s, err := air.FromRH(15, 0.60, air.StandardPressure)
	require.NoError(t, err)
	return s.VapourPressure()
}

func hours(temperature, h float64) drying.Hold { return drying.Hold{T: temperature, Seconds: h * 3600} }

// after gives the moisture, wet basis, at the end of each hold from 45 %.
func after(t *testing.T, schedule ...drying.Hold) []float64 {
	t.Helper()
	x, at := dry(0.45), make([]float64, 0, len(schedule))
	for _, hold := range schedule {
		var err error
		x, err = drying.ThinLayer(house, x, barn(t), hold)
		require.NoError(t, err)
		at = append(at, wet(x))
	}
	return at
}

// mebak is the kiln of MEBAK micromalting, research that of a 24 h research
// kiln (USDA-ARS research malting reports); both handbook, from memory.
// Common to both: from 45 %, thin and well aired, end 3.0 to 4.8 %, about 10 %
// reached before 60 °C.
var (
	mebak    = []drying.Hold{hours(50, 16), hours(60, 1), hours(70, 1), hours(80, 5)}
	research = []drying.Hold{hours(49, 10), hours(54, 4), hours(60, 3), hours(68, 2), hours(85, 3)}
)

func TestMEBAKKilnEndsInsideItsBand(t *testing.T) {
	w := after(t, mebak...)
	assert.LessOrEqual(t, w[0], 0.10, "about 10 %% or less before 60 °C")
	assert.GreaterOrEqual(t, w[3], 0.030)
	assert.LessOrEqual(t, w[3], 0.048)
}

func TestResearchKilnEndsInsideItsBand(t *testing.T) {
	w := after(t, research...)
	assert.LessOrEqual(t, w[1], 0.10, "about 10 %% or less before 60 °C")
	assert.GreaterOrEqual(t, w[4], 0.030)
	assert.LessOrEqual(t, w[4], 0.048)
}

// Published small-scale practice, 2023; seen: 35–38 °C 12–16 h to 20–25 % or
// lower; 45–50 °C 6–12 h to less than 10 %; 80–95 °C 3–5 h, end 2.5–5 %.
func TestSmallScalePracticeMeetsItsGates(t *testing.T) {
	w := after(t, hours(37, 14), hours(48, 9), hours(85, 4))
	assert.LessOrEqual(t, w[0], 0.25)
	assert.Less(t, w[1], 0.10)
	assert.GreaterOrEqual(t, w[2], 0.025)
	assert.LessOrEqual(t, w[2], 0.05)
}

// The three schedules as this model gives them, which ties the calibration of
// the bound regime down to a tenth of a per cent (our own figures).
func TestCalibrationOfTheBoundRegimeStands(t *testing.T) {
	for name, c := range map[string]struct {
		schedule []drying.Hold
		end      []float64
	}{
		"mebak":       {mebak, []float64{0.0816, 0.0773, 0.0706, 0.0377}},
		"research":    {research, []float64{0.1006, 0.0852, 0.0724, 0.0620, 0.0386}},
		"small scale": {[]drying.Hold{hours(37, 14), hours(48, 9), hours(85, 4)}, []float64{0.1107, 0.0851, 0.0430}},
	} {
		assert.InDeltaSlice(t, c.end, after(t, c.schedule...), 0.0005, name)
	}
}

// A maltings' published note; seen: green malt held at 60 °C slows at about 10
// to 12 %, a plateau of the rate, not of sorption. From 12 % it takes more
// than 1.5 h to 10 %; here 2.8 h, while from 20 to 18 % it takes 11 min.
func TestGreenMaltHeldAtSixtyDegreesSlowsNearTenPerCent(t *testing.T) {
	assert.Greater(t, hoursFromTo(t, 0.12, 0.10, 60), 1.5)
	assert.Less(t, hoursFromTo(t, 0.20, 0.18, 60), 0.6)
	end, err := drying.Equilibrium(house, barn(t)/air.Saturation(60), 60)
	require.NoError(t, err)
	assert.Less(t, wet(end), 0.04, "sorption would let it go on")
}

func hoursFromTo(t *testing.T, from, to, temperature float64) float64 {
	t.Helper()
	const minute = 60.0
	x, at := dry(from), 0.0
	for wet(x) > to {
		var err error
		x, err = drying.ThinLayer(house, x, barn(t), drying.Hold{T: temperature, Seconds: minute})
		require.NoError(t, err)
		at += minute
	}
	return at / 3600
}

// Sasaki & Kanzaki 1972, J. Jap. Soc. Agric. Mach. 34:252, barley grains, not malt,
// in a thin layer; seen: k = 0.0727·exp[0.0788(T−Tw) − 0.00417·M0] 1/h, Me = 12.39 −
// 0.224(T−Tw) % dry basis. Two laboratories' constants for one cereal differ
// by a third, hence ±35 %. Measured: −34, −25, −10, +13 % at 40 to 70 °C.
func TestHalfTimesAgreeWithSasakiAndKanzaki(t *testing.T) {
	for _, temperature := range []float64{40, 50, 60, 70} {
		s, err := air.FromRH(15, 0.60, air.StandardPressure)
		require.NoError(t, err)
		s.T = temperature
		bulb, err := s.WetBulb()
		require.NoError(t, err)
		k := 0.0727 * math.Exp(0.0788*(temperature-bulb)-0.00417*82)
		half := (0.82 + (12.39-0.224*(temperature-bulb))/100) / 2
		ours := hoursFromTo(t, wet(0.82), wet(half), temperature)
		assert.InEpsilon(t, math.Ln2/k, ours, 0.35, "at %g °C", temperature)
		t.Logf("%g °C: theirs %.2f h, ours %.2f h", temperature, math.Ln2/k, ours)
	}
}

func TestHouseFactorShortensTimeInProportion(t *testing.T) {
	slow, err := drying.ThinLayer(house, dry(0.45), barn(t), hours(60, 6))
	require.NoError(t, err)
	quick, err := drying.ThinLayer(drying.Malt{Factor: new(2.0)}, dry(0.45), barn(t), hours(60, 3))
	require.NoError(t, err)
	assert.InDelta(t, slow, quick, 10*drying.LayerTolerance*100)
}
