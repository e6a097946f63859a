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
// evaporate in one half-time. It supposes one drying constant; ours falls
// towards dryness, so our front has the same place and a longer tail: worst
// difference 0.13, mean 0.06, over twelve half-times.
func TestDryingFrontHasTheShapeOfHukillsSolution(t *testing.T) {
	const (
		x0, warm, depths, flux, half = 0.22, 32.0, 10.0, 0.1, 8 * 3600.0
	)
	outside, err := air.FromRH(20, 0.60, air.StandardPressure)
	require.NoError(t, err)
	on := air.State{T: warm, W: outside.W, P: outside.P}
	end, err := drying.Equilibrium(drying.Malt{}, on.RH(), warm)
	require.NoError(t, err)
	exposed, err := drying.ThinLayer(drying.Malt{}, x0, on.VapourPressure(), drying.Hold{T: warm, Seconds: half})
	require.NoError(t, err)
	require.InDelta(t, 0.5, (exposed-end)/(x0-end), 0.01, "eight hours are the half-time")

	leaves := restWith(t, x0, on)
	latent, err := drying.LatentHeat(drying.Malt{}, (x0+end)/2, (warm+leaves)/2)
	require.NoError(t, err)
	unit := flux * (on.Enthalpy() - air.State{T: leaves, W: on.W, P: on.P}.Enthalpy()) * half / ((x0 - end) * latent)
	b := bed(t,
		kiln.Charge{DryMass: unit * depths, Moisture: x0, Temperature: leaves, BulkDensity: 650},
		kiln.Equipment{Area: 1, Airflow: flux * on.Volume(), Layers: 40},
		kiln.Ambient{T: 20, RH: 0.60})
	worst, sum := 0.0, 0.0
	for y := 1.0; y <= 12; y++ {
		run(t, b, half/3600, kiln.Hold(kiln.AirOn, warm))
		for i, l := range b.Layers(nil) {
			d := (float64(i) + 0.5) / 40 * depths
			miss := math.Abs((l.X-end)/(x0-end) - math.Exp2(d)/(math.Exp2(d)+math.Exp2(y)-1))
			worst, sum = max(worst, miss), sum+miss
		}
	}
	assert.Less(t, worst, 0.15)
	assert.Less(t, sum/(12*40), 0.08)
	t.Logf("worst difference %.3f, mean %.3f", worst, sum/(12*40))
}

// restWith gives the temperature that air reaches by evaporation from malt of
// moisture x until it is at rest with it, °C.
func restWith(t *testing.T, x float64, on air.State) float64 {
	low, high := 0.0, on.T
	for range 60 {
		mid := (low + high) / 2
		w := (on.Enthalpy() - air.DryAirHeat*mid) / (air.VapourEnthalpy(mid))
		rest, err := drying.Humidity(drying.Malt{}, x, mid)
		require.NoError(t, err)
		if (air.State{T: mid, W: w, P: on.P}).RH() > rest {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}
