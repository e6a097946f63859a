package kiln_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
	"maltwright/sim/drying"
	"maltwright/sim/kiln"
)

// Hukill 1954, deep-bed analytic solution; handbook, from memory: the moisture
// ratio at depth D after the time Y is 2^D/(2^D + 2^Y − 1), Y in half-times of
// the fully exposed layer, D in depths whose whole water the air's heat could
// evaporate in one half-time. It supposes one drying constant: of a cereal that
// has but that of free water the worst difference over twelve half-times is
// 0.11, the mean 0.03. Barley's constant falls tenfold from the beginning to the end,
// so that its front has a longer tail: 0.28 and 0.14.
func TestDryingFrontHasTheShapeOfHukillsSolution(t *testing.T) {
	one := drying.Barley()
	one.BoundFall = one.FreeFall
	one.BoundRate = one.FreeRate * math.Exp(-one.FreeFall/(20+air.ZeroCelsius))
	worst, mean := fromHukill(t, drying.Malt{Cereal: &one})
	assert.Less(t, worst, 0.15)
	assert.Less(t, mean, 0.08)
	t.Logf("one constant: worst difference %.3f, mean %.3f", worst, mean)
	worst, mean = fromHukill(t, drying.Malt{})
	assert.Less(t, worst, 0.30)
	assert.Less(t, mean, 0.15)
	t.Logf("barley: worst difference %.3f, mean %.3f", worst, mean)
}

// fromHukill gives the worst and the mean difference of the moisture ratio.
func fromHukill(t *testing.T, malt drying.Malt) (worst, mean float64) {
	t.Helper()
	const (
		x0, warm, depths, flux, layers, times = 0.22, 32.0, 10.0, 0.1, 40, 12
	)
	outside, err := air.FromRH(20, 0.60, air.StandardPressure)
	require.NoError(t, err)
	on := air.State{T: warm, W: outside.W, P: outside.P}
	end, err := drying.Equilibrium(malt, on.RH(), warm)
	require.NoError(t, err)
	half := halfTime(t, malt, x0, end, on)
	leaves := restWith(t, malt, x0, on)
	latent, err := drying.LatentHeat(malt, (x0+end)/2, (warm+leaves)/2)
	require.NoError(t, err)
	unit := flux * (on.Enthalpy() - air.State{T: leaves, W: on.W, P: on.P}.Enthalpy()) * half / ((x0 - end) * latent)
	b, err := kiln.New(
		kiln.Charge{DryMass: unit * depths, Moisture: x0, Temperature: leaves, BulkDensity: 650},
		kiln.Equipment{Area: 1, Airflow: flux * on.Volume(), Layers: layers},
		kiln.Ambient{T: 20, RH: 0.60}, malt)
	require.NoError(t, err)
	for y := 1.0; y <= times; y++ {
		run(t, b, half/3600, kiln.Hold(kiln.AirOn, warm))
		for i, l := range b.Layers(nil) {
			d := (float64(i) + 0.5) / layers * depths
			miss := math.Abs((l.X-end)/(x0-end) - math.Exp2(d)/(math.Exp2(d)+math.Exp2(y)-1))
			worst, mean = max(worst, miss), mean+miss/(layers*times)
		}
	}
	return worst, mean
}

// halfTime gives the seconds in which a fully exposed layer is half way from x to
// end in the air.
func halfTime(t *testing.T, malt drying.Malt, x, end float64, on air.State) float64 {
	t.Helper()
	const part = 60.0
	seconds := 0.0
	for to := (x + end) / 2; x > to; seconds += part {
		var err error
		x, err = drying.ThinLayer(malt, x, on.VapourPressure(), drying.Hold{T: on.T, Seconds: part})
		require.NoError(t, err)
	}
	return seconds
}

// restWith gives the temperature that air reaches by evaporation from malt of
// moisture x until it is at rest with it, °C.
func restWith(t *testing.T, malt drying.Malt, x float64, on air.State) float64 {
	low, high := 0.0, on.T
	for range 60 {
		mid := (low + high) / 2
		w := (on.Enthalpy() - air.DryAirHeat*mid) / (air.VapourEnthalpy(mid))
		rest, err := drying.Humidity(malt, x, mid)
		require.NoError(t, err)
		if (air.State{T: mid, W: w, P: on.P}).RH() > rest {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}
