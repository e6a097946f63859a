package kiln_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
	drives "maltwright/sim/draught"
	"maltwright/sim/drying"
	"maltwright/sim/grain"
	"maltwright/sim/kiln"
)

// How long malt takes to cool can be bounded without any model of a bed: no air takes more heat than
// what leaves as warm as the malt was, and no malt cools more slowly than a plate that
// loses heat by its faces alone. All the tests of this file cool malt of 4 % from 80 to 30 °C in a
// room of 15 °C.

const (
	hot, cool, room = 80.0, 30.0, 15.0
	kilned          = 0.04 // moisture, wet basis
)

// loads are dry matter, kg/m²: from single kernels on a sieve to a bed of a metre.
var loads = []float64{1, 3, 10, 30, 100, 300}

// cured is such malt as deep as it lies when it has shrunk, grown to an acrospire of three quarters.
func cured(t *testing.T, load float64, kit kiln.Equipment) kiln.Charge {
	t.Helper()
	barley, err := grain.Of("barley")
	require.NoError(t, err)
	malt, err := grain.Grown(grain.LotOf(barley, load*kit.Area, dry(0.12)), dry(kilned), 0.75)
	require.NoError(t, err)
	depth, settled := malt.BedVolume()/kit.Area, malt.Lot.SwollenVolume()/kit.Area
	return kiln.Charge{DryMass: load * kit.Area, Moisture: dry(kilned), Temperature: hot, Depth: &depth, Settled: &settled}
}

// cools gives the seconds that a charge takes to cool, at most so many.
func cools(t *testing.T, b *kiln.Bed, most float64) float64 {
	t.Helper()
	for b.View().Hours*3600 < most {
		if b.Cooled() <= cool {
			return b.View().Hours * 3600
		}
		at := b.View().Hours * 3600
		_, err := b.Advance(min(max(at/200, 1), 600), still)
		require.NoError(t, err)
		l := b.View().Ledger
		require.Less(t, l.KilnError(), 1e-9)
		require.Less(t, l.WaterError(), 1e-9)
		balanced(t, b, "")
	}
	return math.Inf(1)
}

// heat is what a kg of dry matter of the malt holds for each kelvin, J.
func heat() float64 {
	return drying.Enthalpy(drying.Malt{}, dry(kilned), 51) - drying.Enthalpy(drying.Malt{}, dry(kilned), 50)
}

// plate gives the seconds in which the mean of a plate with h on both its faces, W/(m² K), cools:
// Carslaw and Jaeger, section 3.11, with the roots of β·tan β = Bi [carslaw-jaeger-1959].
func plate(load, depth, h, conductivity float64) float64 {
	half := depth / 2
	bi := h * half / conductivity
	var beta, part [40]float64
	for i := range beta {
		low, high := float64(i)*math.Pi, (float64(i)+0.5)*math.Pi
		for range 80 {
			if mid := (low + high) / 2; mid*math.Sin(mid) < bi*math.Cos(mid)*1 == (i%2 == 0) {
				low = mid
			} else {
				high = mid
			}
		}
		beta[i] = low
		part[i] = 2 * bi * bi / (low * low * (low*low + bi*bi + bi))
	}
	mean := func(seconds float64) float64 {
		sum := 0.0
		for i, b := range beta {
			sum += part[i] * math.Exp(-b*b*conductivity*seconds/(load*heat()*depth/4))
		}
		return sum
	}
	low, high := 0.0, 1e9
	for range 100 {
		if mid := (low + high) / 2; mean(mid) > (cool-room)/(hot-room) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// newton is the same of malt that is as warm all through.
func newton(load, h float64) float64 {
	return load * heat() / (2 * h) * math.Log((hot-room)/(cool-room))
}

// The plate of the tests is Newton's where its faces are what holds it, and at the other end the
// plate whose faces are cold, with 8/π² for its slowest mode.
func TestPlateOfTheTestsMeetsItsTwoEnds(t *testing.T) {
	assert.InEpsilon(t, newton(1, 9), plate(1, 1e-5, 9, 0.15), 1e-3)
	depth := 0.5
	slow := 100 * heat() * depth / 4 / 0.15 / (math.Pi * math.Pi / 4) * math.Log(8/math.Pi/math.Pi*(hot-room)/(cool-room))
	assert.InEpsilon(t, slow, plate(100, depth, 1e7, 0.15), 1e-3)
}

// nothing drives air once the fire is out.
var nothing = &drives.Way{Above: 1e-9, Opening: 1e-3}

// In still air malt cools no faster than Newton's law has it, with 10 W/(m² K) on either face, and
// no slower than a plate with 8 and 0.1 W/(m K).
func TestMaltInStillAirCoolsAsAPlateDoes(t *testing.T) {
	for name, kit := range map[string]kiln.Equipment{
		"oven":         {Area: 0.5, Airflow: kiln.StillVent, Still: true},
		"fire is out":  {Area: 4, Airflow: 0.5, Cools: nothing},
		"by one layer": {Area: 4, Airflow: 0.5, Cools: nothing, Layers: 1},
	} {
		for _, load := range loads {
			charge := cured(t, load, kit)
			got := cools(t, bed(t, charge, kit, kiln.Ambient{T: room, RH: 0.6}), 60*86400)
			fast, slow := newton(load, 10), plate(load, *charge.Depth, 8, 0.1)
			middle := plate(load, *charge.Depth, 9, 0.15)
			t.Logf("%s, %g kg/m²: %.2f h, between %.2f and %.2f; a plate of 9 and 0.15 %.2f", name, load, got/3600, fast/3600, slow/3600, middle/3600)
			assert.Greater(t, got, fast, fmt.Sprint(name, load))
			assert.Less(t, got, slow, fmt.Sprint(name, load))
			assert.InEpsilon(t, middle, got, 0.10, fmt.Sprint(name, load))
		}
	}
}

// Under a fan no malt cools faster than its air can carry off the heat of it if all of it leaves
// as warm as the malt was, nor than Newton's law has it where the air of the fan is less than what
// rises from it by itself; nor more slowly than a plate in still air, or than twice
// what the air could do.
func TestMaltUnderAFanCoolsNoFasterThanItsAirCarries(t *testing.T) {
	outside, err := air.FromRH(room, 0.6, air.StandardPressure)
	require.NoError(t, err)
	for _, each := range []float64{0.3, 1, 4, 8, 20} { // m³/h for each kg of green malt
		for _, load := range loads {
			kit := kiln.Equipment{Area: 1, Airflow: load * (1 + dry(0.45)) * each / 3600}
			if kit.Airflow > 3 {
				continue // that would blow the kernels away
			}
			charge := cured(t, load, kit)
			got := cools(t, bed(t, charge, kit, kiln.Ambient{T: room, RH: 0.6}), 60*86400)
			carried := kit.Airflow / outside.Volume() * (air.DryAirHeat + air.VapourHeat*outside.W) * (hot - room)
			least, slow := load*heat()*(hot-cool)/carried, plate(load, *charge.Depth, 8, 0.1)
			t.Logf("%g m³/h·kg, %g kg/m²: %.3f h, between %.3f and %.2f", each, load, got/3600, least/3600, slow/3600)
			assert.Greater(t, got, min(least, newton(load, 10)), fmt.Sprint(each, load))
			assert.Less(t, got, min(slow, 2*least), fmt.Sprint(each, load))
		}
	}
}

// By a chimney malt cools no faster than the most that its warmth can draw carries off: the air that
// all the height of the chimney, full of air as warm as the malt was, pulls through ducts and
// bed; nor more slowly than in still air. What draws fades as the malt cools.
func TestMaltUnderAChimneyCoolsByWhatItDraws(t *testing.T) {
	outside, err := air.FromRH(room, 0.6, air.StandardPressure)
	require.NoError(t, err)
	warm := air.State{T: hot, W: outside.W, P: outside.P}
	for _, load := range loads {
		kit := kiln.Equipment{Area: 4, Airflow: 12, Cools: &drives.Way{Above: 6, Opening: 0.2}}
		charge := cured(t, load, kit)
		pull := 9.81 * 6 * (outside.Density() - warm.Density())
		most := 0.2 * math.Sqrt(2*pull/2.5/outside.Density())
		got := cools(t, bed(t, charge, kit, kiln.Ambient{T: room, RH: 0.6}), 60*86400)
		least := load * heat() * (hot - cool) * 4 / (most / outside.Volume() * (air.DryAirHeat + air.VapourHeat*outside.W) * (hot - room))
		slow := plate(load, *charge.Depth, 8, 0.1)
		t.Logf("%g kg/m²: %.3f h, between %.3f and %.2f", load, got/3600, least/3600, slow/3600)
		assert.Greater(t, got, min(least, newton(load, 10)))
		assert.Less(t, got, slow)
	}
}

// Damp malt that cools in still air dries a little by its own warmth, and the balance holds what
// went: heat of the malt against that of air and radiation, water against water.
func TestWhatEvaporatesWhileMaltCoolsIsInTheBalance(t *testing.T) {
	kit := kiln.Equipment{Area: 0.5, Airflow: kiln.StillVent, Still: true}
	charge := cured(t, 10, kit)
	charge.Moisture = dry(0.14)
	b := bed(t, charge, kit, kiln.Ambient{T: room, RH: 0.6})
	cools(t, b, 86400)
	w, l := b.Balance(), b.View().Ledger
	assert.Greater(t, w.On-w.Left, 0.001*w.On)
	assert.InEpsilon(t, l.HeatShed, w.Shed, 1e-12)
	assert.InEpsilon(t, -w.Warmed, w.Evaporated+w.Exhaust+w.Shed, 1e-9)
	assert.InEpsilon(t, 2, w.Shed/w.Exhaust, 0.2, "radiation takes two thirds of the dry heat")
	assert.Zero(t, w.Heater)
}

// As much goes whatever the steps are.
func TestCoolingDoesNotDependOnTheStep(t *testing.T) {
	for _, kit := range []kiln.Equipment{{Area: 0.5, Airflow: kiln.StillVent, Still: true}, {Area: 4, Airflow: 0.5, Cools: nothing}, {Area: 4, Airflow: 0.5}} {
		for _, load := range []float64{3, 30} {
			coarse, small := bed(t, cured(t, load, kit), kit, spring), bed(t, cured(t, load, kit), kit, spring)
			_, err := coarse.Advance(600, still)
			require.NoError(t, err)
			for range 600 {
				_, err := small.Advance(1, still)
				require.NoError(t, err)
			}
			assert.InDelta(t, small.View().MaltT, coarse.View().MaltT, 0.2)
			assert.InDelta(t, small.View().WetBasis, coarse.View().WetBasis, 1e-4)
		}
	}
}

// What is cool by its mean is not cool on top: a bed through which air climbs is done when that air, which
// has met all of it, leaves cool too. Of an ideal front, which takes the heat of all malt from 80 to 15 °C, that is
// 65/50 as long as until the mean is at 30 °C; the front is not ideal.
func TestABedIsCoolWhenItsTopIs(t *testing.T) {
	kit := kiln.Equipment{Area: 4, Airflow: 1.2}
	b := bed(t, cured(t, 100, kit), kit, kiln.Ambient{T: room, RH: 0.6})
	mean := 0.0
	for b.Cooled() > cool {
		_, err := b.Advance(10, still)
		require.NoError(t, err)
		if v := b.View(); mean == 0 && v.MaltT <= cool {
			mean = v.Hours
			assert.Greater(t, v.Off.T, cool+15, "a thermometer on top of the malt")
		}
	}
	v := b.View()
	assert.InDelta(t, cool, v.Off.T, 2, "the air leaves as the top is")
	assert.Greater(t, v.Hours/mean, 1.3)
	assert.Less(t, v.Hours/mean, 2.0)
}
