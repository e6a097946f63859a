package kiln_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/air"
	drives "maltwright/sim/draught"
	"maltwright/sim/drying"
	"maltwright/sim/kiln"
)

// anyBed draws a bed from all that New accepts within reason for a malt
// kiln: from a handful on a sieve to a tower, and to the ends of moisture,
// temperature and weather.
func anyBed(t *rapid.T) *kiln.Bed {
	in := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	return anyBedOf(t, drying.Malt{Factor: new(in("factor", 0.3, 3)), Shift: in("shift", -0.03, 0.03)})
}

// anyBedOf does so of one material.
func anyBedOf(t *rapid.T, material drying.Material) *kiln.Bed {
	in := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	area := math.Pow(10, in("lg area", -2, 2))
	charge := kiln.Charge{
		DryMass:     area * math.Pow(10, in("lg dry mass per area", -0.3, 2.7)),
		Moisture:    in("moisture", 0, 1.5),
		Temperature: in("malt", 0, 120),
		BulkDensity: in("bulk density", 200, 1000),
	}
	kit := kiln.Equipment{
		Area: area, Airflow: area * math.Pow(10, in("lg air speed", -4, 0.3)),
		Layers: rapid.IntRange(0, 25).Draw(t, "layers"),
	}
	if rapid.Bool().Draw(t, "still") {
		kit.Still = true
	} else if rapid.Bool().Draw(t, "returns air") {
		kit.Recirculation = in("recirculation", 0, 0.98)
	}
	if !kit.Still && rapid.Bool().Draw(t, "recovers heat") {
		kit.Recovers = in("recovers", 0, 0.98)
	}
	if rapid.Bool().Draw(t, "heater stated") {
		kit.Heater = new(area * math.Pow(10, in("lg heater per area", 1, 5)))
	}
	if rapid.Bool().Draw(t, "walled") {
		kit.Walls = &kiln.Walls{
			Of:   kiln.Fabric(rapid.IntRange(int(kiln.Brick), int(kiln.Stone)).Draw(t, "walls")),
			Area: area * math.Pow(10, in("lg walls per area", -1, 1.5)), Insulated: rapid.Bool().Draw(t, "insulated"),
		}
	}
	if kit.Still && rapid.Bool().Draw(t, "ajar") {
		kit.Door = &kiln.Door{Gap: in("gap", 1e-3, 0.2), Height: in("height", 0.1, 1)}
	}
	if !kit.Still && rapid.Bool().Draw(t, "natural") {
		kit.Cools = &drives.Way{Above: in("above", 0.1, 8), Opening: area / 20}
	}
	ambient := kiln.Ambient{T: in("ambient", -20, 50), RH: in("rh", 0, 1), Altitude: in("altitude", -400, 4000)}
	bed, err := kiln.New(charge, kit, ambient, material)
	require.NoError(t, err)
	return bed
}

func anySetting(t *rapid.T) kiln.Setting {
	in := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	target := kiln.Target(rapid.IntRange(int(kiln.AirOn), int(kiln.Fresh)).Draw(t, "target"))
	from := in("from", 0, 180)
	to := from
	if rapid.Bool().Draw(t, "ramp") {
		to = in("to", 0, 180)
	}
	return kiln.Setting{Target: target, From: from, To: to}
}

func finite(v kiln.View) bool {
	sum := v.X + v.MaltT + v.Hottest + v.HottestX + v.On.T + v.On.W + v.Off.T + v.Off.W + v.OffRH +
		v.WetBulb + v.Used + v.HeaterPower + v.Ledger.Heater + v.Ledger.HeatVented
	return !math.IsNaN(sum) && !math.IsInf(sum, 0)
}

func TestAnyBedUnderAnySettingRunsWithItsBalancesClosed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bed := anyBed(t)
		steamed := bed.View().Hottest > 75
		for range 4 {
			set := anySetting(t)
			_, err := bed.Advance(600, set)
			require.NoError(t, err)
			v := bed.View()
			require.True(t, finite(v), "%+v", v)
			require.Less(t, v.Ledger.WaterError(), 1e-9)
			require.Less(t, v.Ledger.HeatError(), 1e-9)
			require.Less(t, v.Ledger.KilnError(), 1e-9)
			// where steam fills the kiln, the search for its humidity may end at its bound
			if steamed = steamed || max(set.From, set.To) > 75; !steamed {
				balanced(t, bed, "")
			}
			require.GreaterOrEqual(t, v.Driest, -1e-9)
			require.GreaterOrEqual(t, v.Off.W, -1e-9)
		}
	})
}

func TestAnythingAtAllIsRunOrRefusedButNeverPanics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		any := func(name string) float64 { return rapid.Float64().Draw(t, name) }
		_, err := kiln.New(
			kiln.Charge{DryMass: any("dry"), Moisture: any("x"), Temperature: any("t"), Depth: new(any("depth")), BulkDensity: any("bulk")},
			kiln.Equipment{Area: any("area"), Airflow: any("flow"), Heater: new(any("heater")), ReachLow: new(any("low")), ReachHigh: new(any("high")),
				Recirculation: any("back"), Layers: rapid.Int().Draw(t, "layers"), Still: rapid.Bool().Draw(t, "still")},
			kiln.Ambient{T: any("ambient"), RH: any("rh"), Altitude: any("altitude")},
			drying.Malt{Factor: new(any("factor")), Shift: any("shift")},
		)
		if err != nil {
			var refused *air.RangeError
			require.True(t, errors.As(err, &refused))
		}
		bed := anyBed(t)
		back := any("set back")
		_, err = bed.Advance(any("dt"), kiln.Setting{Target: kiln.Target(rapid.Int().Draw(t, "target")), From: any("from"), To: any("to"),
			Airflow: new(any("set flow")), Recirculation: &back})
		if err != nil {
			require.Zero(t, bed.View().Hours, "a refused setting moves nothing")
		}
		require.True(t, finite(bed.View()))
	})
}

// Air-off is never hotter than the warmest that air-on or the malt has been, but for the heat
// that water sets free where the malt takes it up: at the most all of it, in the layer that took
// the most. Within a step that is led by malt or air-off, air-on may have been warmer than at both
// ends of it, up to what is asked and more. A step errs by up to a fifth of a kelvin, as its tolerance has it, and the air that leaves with it by as much again.
func TestAirOffIsNoHotterThanWhatWarmedIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bed := anyBed(t)
		layers := bed.Layers(nil)
		gained := make([]float64, len(layers))
		warmest := bed.View().Hottest
		for range 4 {
			set := anySetting(t)
			set.To = set.From
			if set.Target == kiln.Malt || set.Target == kiln.AirOff {
				warmest = max(warmest, set.From)
			}
			_, err := bed.AdvanceBy(600, set, stepped(func() {
				most := 0.0
				for i, l := range bed.Layers(nil) {
					gained[i] += max(0, l.X-layers[i].X)
					most, layers[i] = max(most, gained[i]), l
				}
				v := bed.View()
				warmest = max(warmest, v.On.T)
				wetting, _ := drying.Malt{}.Wetting(0)
				set := (air.EvaporationHeat + wetting*14.8) * most / drying.Malt{}.DryHeat()
				require.LessOrEqual(t, v.Off.T, warmest+set+0.4)
			}))
			require.NoError(t, err)
		}
	})
}

// stepped is called after every step of a bed.
type stepped func()

func (f stepped) Stepped(float64) error {
	f()
	return nil
}

// Cured malt that meets moist air warms it beyond air-on, and the balance shows by what: the
// malt gains water.
func TestHeatOfSorptionWarmsAirOffBeyondAirOn(t *testing.T) {
	charge := tonne
	charge.Moisture, charge.Temperature = dry(0.03), 20
	b := bed(t, charge, house, kiln.Ambient{T: 20, RH: 0.9})
	v := run(t, b, 0.5, still)
	w := b.Balance()
	require.Greater(t, v.Off.T, 21.0)
	require.Greater(t, w.Left, w.On)
	require.Negative(t, w.Evaporated)
	require.InEpsilon(t, -w.Evaporated, w.Warmed+w.Exhaust, 1e-9, "nothing else gives heat")
}
