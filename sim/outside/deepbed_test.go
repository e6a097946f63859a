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
	"maltwright/sim/outside/figure"
)

// cold and mild are the air that two kilns draw in.
var (
	cold = figure.Cold
	mild = kiln.Ambient{T: 20, RH: 0.60}
)

// tonne is green malt that makes a tonne at 4 %; loft is its kiln, 4500 m³/h.
var tonne, loft = figure.Tonne, figure.Loft

func bed(t testing.TB, charge kiln.Charge, kit kiln.Equipment, ambient kiln.Ambient) *kiln.Bed {
	t.Helper()
	b, err := kiln.New(charge, kit, ambient, maltOf(t))
	require.NoError(t, err)
	return b
}

func advance(t testing.TB, b *kiln.Bed, seconds float64, set kiln.Setting) {
	t.Helper()
	_, err := b.Advance(seconds, set)
	require.NoError(t, err)
}

// until goes on in parts until the bed has come there, and gives the hours. A member's
// malt may keep more water than it is to come to: of that it is never.
func until(t testing.TB, b *kiln.Bed, part float64, set kiln.Setting, there func(kiln.View) bool) float64 {
	t.Helper()
	most := 20_000
	if isMember(t) {
		most = 1500
	}
	for range most {
		v := b.View()
		if there(v) {
			return v.Hours
		}
		advance(t, b, part, set)
	}
	require.True(t, isMember(t), "the bed never comes there")
	return math.Inf(1)
}

func deepBeds() []row {
	list := append(shared(figure.DeepBeds()), []row{
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
		{what: "1 t of malt, 45 → 4 %: water given to the air", unit: "kg", digits: 0, source: 745, accepted: about(745, 1),
			standing: "balance", model: waterDriven},
	}...)
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

func waterDriven(t testing.TB) float64 {
	b := bed(t, tonne, loft, cold)
	advance(t, b, 16*hour, kiln.Hold(kiln.AirOn, 60))
	until(t, b, 60, kiln.Hold(kiln.AirOn, 82), func(v kiln.View) bool { return v.WetBasis <= 0.04 })
	return b.View().Ledger.WaterToAir
}

func naturalAir() []row {
	return append(shared(figure.Bins()), row{what: "front through a bin against 2^D/(2^D + 2^Y − 1), D and Y fitted: largest gap of the moisture ratio", unit: "", digits: 2,
		source: 0, accepted: about(0, 0.1), key: "hukill-1954", standing: "form, from memory; the bound is ours", model: hukillGap})
}

// hukillGap fits the form to the moisture ratio through a bin that is half dry, so
// that the largest gap is as small as can be.
func hukillGap(t testing.TB) float64 {
	b, err := figure.Bin(maltOf(t), 0.18, 1.25)
	require.NoError(t, err)
	rest, err := drying.Equilibrium(maltOf(t), 0.65, 20)
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
