package outside

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/optimize"

	"maltwright/sim/air"
	"maltwright/sim/drying"
	"maltwright/sim/kiln"
)

// cold and mild are the air that two kilns draw in.
var (
	cold = kiln.Ambient{T: 10, RH: 0.80}
	mild = kiln.Ambient{T: 20, RH: 0.60}
)

// tonne is green malt that makes a tonne at 4 %; loft is its kiln, 4500 m³/h.
var (
	tonne = kiln.Charge{DryMass: 960, Moisture: 0.45 / 0.55, Temperature: 15, BulkDensity: 550}
	loft  = kiln.Equipment{Area: 3, Airflow: 1.25, Layers: 40}
)

func bed(t testing.TB, charge kiln.Charge, kit kiln.Equipment, ambient kiln.Ambient) *kiln.Bed {
	t.Helper()
	b, err := kiln.New(charge, kit, ambient, drying.Malt{})
	require.NoError(t, err)
	return b
}

func advance(t testing.TB, b *kiln.Bed, seconds float64, set kiln.Setting) {
	t.Helper()
	_, err := b.Advance(seconds, set)
	require.NoError(t, err)
}

// until goes on in parts until the bed has come there, and gives the hours.
func until(t testing.TB, b *kiln.Bed, part float64, set kiln.Setting, there func(kiln.View) bool) float64 {
	t.Helper()
	for range 20000 {
		v := b.View()
		if there(v) {
			return v.Hours
		}
		advance(t, b, part, set)
	}
	require.Fail(t, "the bed never comes there")
	return math.NaN()
}

func deepBeds() []row {
	list := []row{
		principle("its water", "kg/kg", 5, 0.00609, 0.00001, cold, 60, func(v kiln.View) float64 { return v.On.W }),
		principle("its wet bulb", "°C", 1, 25.4, 0.1, cold, 60, wetBulb),
		principle("it can take up", "kg/kg", 5, 0.01443, 0.00007, cold, 60, roomFor),
		principle("heat for each kg of that", "MJ", 2, 3.52, 0.02, cold, 60, heatToTakeUp),
		principle("its wet bulb", "°C", 1, 22.7, 0.1, cold, 50, wetBulb),
		principle("it can take up", "kg/kg", 5, 0.01134, 0.00007, cold, 50, roomFor),
		principle("its wet bulb", "°C", 1, 26.9, 0.1, mild, 60, wetBulb),
		principle("it can take up", "kg/kg", 5, 0.01386, 0.00007, mild, 60, roomFor),
		inTheBed("wet malt sits at", "°C", 1, 25.4, 0.5, wetEnd),
		inTheBed("the air takes up", "kg/kg", 5, 0.01443, 0.04*0.01443, takenUp),
		inTheBed("heat for a kg of water", "MJ", 2, 3.52, 0.04*3.52, heatForAKilogram),
		{what: "1 t of malt, 4500 m³/h of 60 °C, 45 → 12 %", unit: "h", digits: 1, says: "never under 9.6", accepted: atLeast(9.6),
			standing: "first principles", model: hoursToTwelve(cold, 60)},
		{what: "the same at 50 °C", unit: "h", digits: 1, says: "never under 11.9", accepted: atLeast(11.9),
			standing: "first principles", model: hoursToTwelve(cold, 50)},
		{what: "1 t of malt, 45 → 4 %: water given to the air", unit: "kg", digits: 0, source: 745, accepted: about(745, 1),
			standing: "balance", model: waterDriven},
	}
	for _, c := range [][2]float64{{0.05, 106}, {0.10, 254}, {0.20, 663}} {
		list = append(list, row{what: fmt.Sprintf("resistance of dry barley at %.2f m/s", c[0]), unit: "Pa/m", digits: 0, source: c[1], accepted: about(c[1], 1),
			key: "asabe-d272", standing: "formula, from memory", model: func(t testing.TB) float64 {
				p, err := drying.Malt{}.Packing().Resistance(c[0])
				require.NoError(t, err)
				return p
			}})
	}
	return append(list, naturalAir()...)
}

// principle is a figure of the air alone, met to what the figures given were rounded
// to: 0.1 K, and half a per cent of the water.
func principle(what, unit string, digits int, v, by float64, ambient kiln.Ambient, on float64, figure func(kiln.View) float64) row {
	return row{what: fmt.Sprintf("air of %g °C, %g %% warmed to %g °C: %s", ambient.T, 100*ambient.RH, on, what), unit: unit, digits: digits,
		source: v, accepted: about(v, by), standing: "first principles", model: func(t testing.TB) float64 {
			b := bed(t, tonne, loft, ambient)
			advance(t, b, hour, kiln.Hold(kiln.AirOn, on))
			return figure(b.View())
		}}
}

// inTheBed is the same in the bed while its front is on the way. The principle
// leaves out that the malt behind the front is warmed, some 3 % of the heat: hence
// 4 %, and half a kelvin.
func inTheBed(what, unit string, digits int, v, by float64, figure func(testing.TB, *kiln.Bed) float64) row {
	return row{what: "the first of them in a bed of 1 t: " + what, unit: unit, digits: digits, source: v, accepted: about(v, by),
		standing: "first principles", model: func(t testing.TB) float64 {
			b := bed(t, tonne, loft, cold)
			advance(t, b, 3*hour, kiln.Hold(kiln.AirOn, 60))
			return figure(t, b)
		}}
}

func wetBulb(v kiln.View) float64 { return v.WetBulb }

// roomFor is what the air lacks to saturation at its wet bulb, kg/kg.
func roomFor(v kiln.View) float64 {
	return air.HumidityRatio(air.Saturation(v.WetBulb), v.On.P) - v.On.W
}

// heatToTakeUp is the heat of warming the air over what it can take up, MJ/kg.
func heatToTakeUp(v kiln.View) float64 {
	fresh := air.State{T: cold.T, W: v.On.W, P: v.On.P}
	return (v.On.Enthalpy() - fresh.Enthalpy()) / roomFor(v) / 1e6
}

func wetEnd(_ testing.TB, b *kiln.Bed) float64 {
	layers := b.Layers(nil)
	return layers[len(layers)-1].T
}

func takenUp(_ testing.TB, b *kiln.Bed) float64 { v := b.View(); return v.Off.W - v.On.W }

// heatForAKilogram counts over the next half hour.
func heatForAKilogram(t testing.TB, b *kiln.Bed) float64 {
	before := b.View()
	advance(t, b, hour/2, kiln.Hold(kiln.AirOn, before.On.T))
	after := b.View()
	return (after.Ledger.Heater - before.Ledger.Heater) / (after.Ledger.WaterToAir - before.Ledger.WaterToAir) / 1e6
}

func hoursToTwelve(ambient kiln.Ambient, on float64) func(testing.TB) float64 {
	return func(t testing.TB) float64 {
		b := bed(t, tonne, loft, ambient)
		return until(t, b, 60, kiln.Hold(kiln.AirOn, on), func(v kiln.View) bool { return v.WetBasis <= 0.12 })
	}
}

func waterDriven(t testing.TB) float64 {
	b := bed(t, tonne, loft, cold)
	advance(t, b, 16*hour, kiln.Hold(kiln.AirOn, 60))
	until(t, b, 60, kiln.Hold(kiln.AirOn, 82), func(v kiln.View) bool { return v.WetBasis <= 0.04 })
	return b.View().Ledger.WaterToAir
}

// bushel is the US bushel, m³, and cfm a cubic foot a minute, m³/s; both by
// definition. testWeight is 48 lb of barley to the bushel, kg/m³.
const (
	bushel     = 0.03523907
	cfm        = 0.3048 * 0.3048 * 0.3048 / 60
	testWeight = 48 * 0.45359237 / bushel
	binDepth   = 3.0 // m; the days hang on the air for a bushel, hardly on the depth
)

// bin is barley of the moisture w in a bin on a square metre with so many cfm a bushel.
func bin(t testing.TB, w, perBushel float64) *kiln.Bed {
	charge := kiln.Charge{DryMass: testWeight * binDepth * (1 - w), Moisture: dry(w), Temperature: 20, Depth: new(binDepth)}
	kit := kiln.Equipment{Area: 1, Airflow: perBushel * cfm / bushel * binDepth, Layers: 40}
	return bed(t, charge, kit, kiln.Ambient{T: 20, RH: 0.65})
}

func naturalAir() []row {
	var list []row
	for _, c := range [][3]float64{{1.25, 18, 16}, {1.0, 17, 19}, {0.75, 16, 23}} {
		list = append(list, row{what: fmt.Sprintf("natural air of 20 °C, 65 %%, %g cfm a bushel: %g → 13 %%", c[0], c[1]), unit: "days", digits: 1,
			source: c[2], accepted: about(c[2], 0.25*c[2]), key: "ndsu-drying", standing: "seen; ±25 %",
			model: func(t testing.TB) float64 {
				b := bin(t, c[1]/100, c[0])
				return until(t, b, hour, kiln.Setting{Target: kiln.Fresh}, func(v kiln.View) bool { return v.WetBasis <= 0.13 }) / 24
			}})
	}
	return append(list, row{what: "front through a bin against 2^D/(2^D + 2^Y − 1), D and Y fitted: largest gap of the moisture ratio", unit: "", digits: 2,
		source: 0, accepted: about(0, 0.1), key: "hukill-1954", standing: "form, from memory; the bound is ours", model: hukillGap})
}

// hukillGap fits the form to the moisture ratio through a bin that is half dry, so
// that the largest gap is as small as can be.
func hukillGap(t testing.TB) float64 {
	b := bin(t, 0.18, 1.25)
	rest, err := drying.Equilibrium(malt, 0.65, 20)
	require.NoError(t, err)
	whole := dry(0.18) - rest
	until(t, b, hour, kiln.Setting{Target: kiln.Fresh}, func(v kiln.View) bool { return v.X-rest <= whole/2 })
	layers := b.Layers(nil)
	gap := func(p []float64) float64 {
		worst := 0.0
		for i, l := range layers {
			depth := float64(i) / float64(len(layers))
			worst = math.Max(worst, math.Abs((l.X-rest)/whole-1/(1+math.Exp2(p[0]-p[1]*depth))))
		}
		return worst
	}
	best, err := optimize.Minimize(optimize.Problem{Func: gap}, []float64{5, 10}, nil, &optimize.NelderMead{})
	require.NoError(t, err)
	return best.F
}
