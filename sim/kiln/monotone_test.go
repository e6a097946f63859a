package kiln_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/lang/source/golden"
	"maltwright/sim/air"
	"maltwright/sim/drying"
	"maltwright/sim/kiln"
)

// draught is malt under air of its own: how a bed dries by what stands in front of it.
type draught struct {
	load     float64 // dry matter, kg/m²
	moisture float64 // kg/kg
	speed    float64 // m/s at air-on
	on       float64 // °C
	ratio    float64 // water in the air, kg/kg
	drawn    float64 // °C of the air that is drawn in, and of the malt at first
}

func (d draught) charge() kiln.Charge {
	return kiln.Charge{DryMass: d.load, Moisture: d.moisture, Temperature: d.drawn, BulkDensity: 480}
}

func (d draught) humidity() float64 {
	return air.State{T: d.drawn, W: d.ratio, P: air.StandardPressure}.RH()
}

func (d draught) layers() int {
	return kiln.LayersFor(d.charge(), kiln.Ambient{T: d.drawn, RH: d.humidity()}, drying.Malt{}, kiln.Draught{T: d.on, Airflow: d.speed})
}

func (d draught) malted(t require.TestingT, layers int) *kiln.Bed {
	b, err := kiln.New(d.charge(), kiln.Equipment{Area: 1, Airflow: d.speed, Layers: layers}, kiln.Ambient{T: d.drawn, RH: d.humidity()}, drying.Malt{})
	require.NoError(t, err)
	return b
}

func anyDraught(t *rapid.T) draught {
	in := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	return draught{
		load: math.Pow(10, in("lg load", 0, 2.5)), moisture: in("moisture", 0.05, 1),
		speed: math.Pow(10, in("lg speed", -2, 0)), on: in("air-on", 30, 90), ratio: in("ratio", 0.002, 0.008), drawn: in("drawn in", 11, 25),
	}
}

// outdone gives the same with more of what dries.
func (d draught) outdone(t *rapid.T) draught {
	factor := rapid.Float64Range(1.01, 3).Draw(t, "by")
	switch rapid.SampledFrom([]string{"more air", "drier air", "warmer air", "less malt"}).Draw(t, "better") {
	case "more air":
		d.speed *= factor
	case "drier air":
		d.ratio /= factor
	case "warmer air":
		d.on += 10 * (factor - 1)
	case "less malt":
		d.load /= factor
	}
	return d
}

// No bed dries slower under more air, drier air or warmer air, nor where less of it lies on the
// m². The malt begins as warm as the air that is drawn in, so that nothing dries by warmth that
// it brought, and is no drier than the cool air would make it. Steps err by up to 0.04 points;
// and what comes under warmer air must first take up the heat by which wet malt sits warmer there.
func TestMoreDrierWarmerAirAndAThinnerBedNeverDrySlower(t *testing.T) {
	ran := 0
	check := func(t *rapid.T) {
		ran++
		d := anyDraught(t)
		if d.moisture < (drying.Malt{}).Equilibrium(min(d.humidity(), drying.WetSurface), d.drawn) {
			t.Skip("it takes up water: more of that air wets it sooner")
		}
		better := d.outdone(t)
		layers := max(d.layers(), better.layers())
		one, other := d.malted(t, layers), better.malted(t, layers)
		for range 16 {
			v, w := run(t, one, 1, kiln.Hold(kiln.AirOn, d.on)), run(t, other, 1, kiln.Hold(kiln.AirOn, better.on))
			step := 4e-4 * (1 + v.X) * (1 + v.X)
			stored := drying.SpecificHeat(drying.Malt{}, d.moisture) * max(0, w.WetBulb-v.WetBulb) / 2.4e6
			require.LessOrEqual(t, w.X, v.X+step+stored, "after %.1f h: %+v, better %+v", v.Hours, d, better)
		}
	}
	for ran < 200 || golden.Long() && ran < 20_000 {
		rapid.Check(t, check)
	}
}

// What finer layers and shorter steps change lies within what docs/model.md states, wherever air
// of 0.6 m³/h and more for each kg of green malt dries it.
func TestFinerLayersAndStepsChangeNoMoreThanStated(t *testing.T) {
	ran, most := 0, 25
	if golden.Long() {
		most = 1000
	}
	check := func(t *rapid.T) {
		if ran >= most {
			return
		}
		d := anyDraught(t)
		if green := 1.818 * d.load; 3600*d.speed < 0.6*green || d.on > 75 {
			t.Skip("outside the range of the bounds")
		}
		ran++
		n := d.layers()
		coarse, layered, stepped := d.malted(t, n), d.malted(t, 3*n+6), d.malted(t, n)
		for range 12 {
			v, w := run(t, coarse, 1, kiln.Hold(kiln.AirOn, d.on)), run(t, layered, 1, kiln.Hold(kiln.AirOn, d.on))
			for range 60 {
				_, err := stepped.Advance(60, kiln.Hold(kiln.AirOn, d.on))
				require.NoError(t, err)
			}
			require.InDelta(t, w.WetBasis, v.WetBasis, bounds.moisture/100, "%+v in %d layers after %.0f h", d, n, v.Hours)
			require.InDelta(t, stepped.View().WetBasis, v.WetBasis, 4e-4, "%+v after %.0f h", d, v.Hours)
		}
	}
	for ran < most {
		rapid.Check(t, check)
	}
}
