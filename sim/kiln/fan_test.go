package kiln_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	drives "maltwright/sim/draught"
	"maltwright/sim/drying"
	"maltwright/sim/kiln"
)

const cubicMetres = 1.0 / 3600 // m³/s of a m³/h

// fan is a curve through pairs of m³/h and Pa.
func fan(t testing.TB, points ...float64) *drives.Curve {
	t.Helper()
	var list []drives.Point
	for i := 0; i < len(points); i += 2 {
		list = append(list, drives.Point{Flow: points[i] * cubicMetres, Pressure: points[i+1]})
	}
	c, err := drives.NewCurve(list...)
	require.NoError(t, err)
	return c
}

// deep is a charge of so many kg of dry matter that lies so deep, and does not shrink.
func deep(mass, depth float64) kiln.Charge {
	return kiln.Charge{DryMass: mass, Moisture: dry(0.45), Temperature: 20, Depth: &depth}
}

// air is what drives a bed after so many hours of a setting.
func airAfter(t testing.TB, charge kiln.Charge, kit kiln.Equipment, ambient kiln.Ambient, hours float64, set kiln.Setting) kiln.Moved {
	t.Helper()
	b := bed(t, charge, kit, ambient)
	run(t, b, hours, set)
	return b.Moved()
}

// By hand: 9000 m³/h at no pressure and 6000 at 400 Pa, a bed of 0.75 m on 4 m². In air of 20 °C
// and 1.2 kg/m³ the bed takes 0.75·0.8·21400·q²/ln(1 + 13.2·q) and the ducts 600·q² Pa: at
// 2780 m³/h, 0.193 m/s, 378 and 22, in all the 400 that the fan gives at so little. In air that is
// full of water, of malt as warm as the air around it, nothing dries, and all is as by hand.
func TestAFanMeetsItsBedWhereTheHandFindsIt(t *testing.T) {
	kit := kiln.Equipment{Area: 4, Way: &drives.Way{Fan: fan(t, 6000, 400, 9000, 0), Opening: 0.2}}
	m := airAfter(t, deep(1000, 0.75), kit, kiln.Ambient{T: 20, RH: 1}, 0.01, still)
	assert.InEpsilon(t, 2780*cubicMetres, m.Flow, 0.01)
	assert.InEpsilon(t, 378, m.Bed, 0.01)
	assert.InEpsilon(t, 22.3, m.Ducts, 0.02)
	assert.InEpsilon(t, m.Bed+m.Ducts, m.Fan, 1e-4)
	assert.InEpsilon(t, m.Flow*m.Fan/drives.Efficiency, m.Power, 1e-6)
	assert.False(t, m.Short, "nothing was set")
}

// Beds of a metre of a tonne, 2.15 m², have 60, 115 and 180 Pa at 300, 500 and 700 m³/h for a
// tonne (derived from the resistance of green malt): a fan that gives so much gives so much air.
func TestABoxFanGivesWhatItsBedLets(t *testing.T) {
	for _, c := range [][2]float64{{300, 60}, {500, 115}, {700, 180}} {
		kit := kiln.Equipment{Area: 2.15, Way: &drives.Way{Fan: fan(t, 0, 2*c[1], 2*c[0], 0)}}
		m := airAfter(t, deep(830, 1), kit, kiln.Ambient{T: 15, RH: 1}, 0.01, still)
		assert.InEpsilon(t, c[0]*cubicMetres, m.Flow, 0.03, "%g m³/h", c[0])
	}
}

// 4000 to 5000 m³/h for a tonne of malt through a bed of 0.75 m take a fan of 0.5 to 0.8 kPa, as
// kilns have (common practice): on the 4.7 m² over which green malt of a tonne of malt so lies.
func TestAKilnOfUsualAirTakesAUsualFan(t *testing.T) {
	for _, flow := range []float64{4000, 5000} {
		kit := kiln.Equipment{Area: 4.7, Airflow: flow * cubicMetres}
		m := airAfter(t, deep(980, 0.75), kit, winter, 1, kiln.Hold(kiln.AirOn, 60))
		assert.Greater(t, m.Fan, 450.0, "%g m³/h", flow)
		assert.Less(t, m.Fan, 850.0, "%g m³/h", flow)
		assert.InEpsilon(t, m.Flow*m.Fan/drives.Efficiency, m.Power, 1e-9, "what it draws")
	}
}

// By hand: air of 10 °C and 80 %, warmed to 50 °C, leaves at its wet bulb of 22.7 °C. It then
// weighs 0.061 kg/m³ less than outside, and 0.154 before the bed: 6 m and 1 m of them draw 5.1 Pa,
// which a bed of 0.2 m, 0.2·0.8·21400·q²/ln(1 + 13.2·q) and a twentieth more for warm air, takes
// with its ducts at 0.017 m/s.
func TestAChimneyDrawsThroughAThinBed(t *testing.T) {
	kit := kiln.Equipment{Area: 2, Way: &drives.Way{Above: 6, Below: 1, Opening: 0.1}}
	m := airAfter(t, deep(120, 0.2), kit, winter, 2, kiln.Hold(kiln.AirOn, 50))
	assert.InDelta(t, 5.1, m.Natural, 0.1)
	assert.InEpsilon(t, m.Bed+m.Ducts, m.Natural, 1e-4)
	assert.InDelta(t, 0.017, m.Flow/2, 0.001)
	assert.Zero(t, m.Power)
}

// The chimney warms as the malt dries, and draws more.
func TestTheDraughtGrowsAsTheMaltDries(t *testing.T) {
	kit := kiln.Equipment{Area: 2, Way: &drives.Way{Above: 6, Below: 1, Opening: 0.1}}
	b := bed(t, deep(60, 0.1), kit, winter)
	run(t, b, 1, kiln.Hold(kiln.AirOn, 60))
	wet := b.Moved()
	run(t, b, 60, kiln.Hold(kiln.AirOn, 60))
	dried := b.Moved()
	require.Less(t, b.View().WetBasis, 0.10)
	assert.Greater(t, dried.Natural, 1.8*wet.Natural)
	assert.Greater(t, dried.Flow, 1.5*wet.Flow)
	run(t, b, 2, still)
	assert.Less(t, b.Moved().Flow, dried.Flow/2, "cold malt draws less")
}

// 150 kg of raw barley, 125 kg of dry matter, on 0.3 m² lie 1.4 m deep, through which warm air
// of 3 m moves at under a centimetre a second: in four days it is not dry, as 40 kg on 4 m² are.
func TestAHeapUnderANaturalDraughtDoesNotDry(t *testing.T) {
	way := drives.Way{Above: 2, Below: 1, Opening: 0.3 / 20}
	heap := bed(t, deep(125, 1.4), kiln.Equipment{Area: 0.3, Way: &way}, winter)
	run(t, heap, 96, kiln.Hold(kiln.AirOn, 50))
	assert.Greater(t, heap.View().WetBasis, 0.40)
	assert.Less(t, heap.Moved().Flow/0.3, 0.01)
	way.Opening = 4.0 / 20
	thin := bed(t, deep(33, 0.03), kiln.Equipment{Area: 4, Way: &way}, winter)
	run(t, thin, 24, kiln.Hold(kiln.AirOn, 50))
	assert.Less(t, thin.View().WetBasis, 0.12)
}

func TestAHandBoundsTheAirAndIsBoundByTheFan(t *testing.T) {
	way := &drives.Way{Fan: fan(t, 0, 600, 2000, 400, 4000, 0), Opening: 0.1}
	flow := func(set float64) kiln.Moved {
		return airAfter(t, deep(250, 0.4), kiln.Equipment{Area: 2, Airflow: set * cubicMetres, Way: way}, winter, 1, kiln.Hold(kiln.AirOn, 50))
	}
	all := flow(0)
	some := flow(500)
	assert.InEpsilon(t, 500*cubicMetres, some.Flow, 1e-9)
	assert.False(t, some.Short)
	assert.Greater(t, some.Fan, some.Bed+some.Ducts, "the flap takes the rest")
	most := flow(3900)
	assert.InEpsilon(t, all.Flow, most.Flow, 1e-3)
	assert.Greater(t, all.Flow, some.Flow)
	assert.True(t, most.Short)
}

// A fan warms what it blows by Δp/(1230·η) K: 800 Pa by 1.3 K with half of it lost, and so cooling
// malt ends so much above the room.
func TestAFanWarmsItsAir(t *testing.T) {
	kit := kiln.Equipment{Area: 2, Way: &drives.Way{Fan: fan(t, 0, 900, 2000, 800, 4000, 0), Opening: 0.1}}
	b := bed(t, kiln.Charge{DryMass: 100, Moisture: dry(0.04), Temperature: 60, Depth: new(0.35)}, kit, kiln.Ambient{T: 15, RH: 0.3})
	run(t, b, 3, still)
	v := b.View()
	assert.InDelta(t, 15+b.Moved().Fan/(1230*drives.Efficiency), v.On.T, 0.05)
	assert.InDelta(t, 0, v.HeaterPower, 1e-3)
	assert.Positive(t, v.Ledger.FanHeat)
	assert.InEpsilon(t, v.Ledger.FanEnergy, v.Ledger.FanHeat, 1e-2, "all that it draws warms the air")
	power := &drives.Way{Power: new(2200.0)}
	b = bed(t, deep(100, 0.35), kiln.Equipment{Area: 2, Airflow: 0.5, Way: power}, winter)
	run(t, b, 1, kiln.Hold(kiln.AirOn, 50))
	assert.InEpsilon(t, 2200*3600, b.View().Ledger.FanEnergy, 1e-9, "a fan that says what it draws")
	assert.InEpsilon(t, 0.5, b.Moved().Flow, 1e-9)
}

// What limits the heater goes by the air that comes, which falls as it is warmed less.
func TestAWeakHeaterAndAFanAgree(t *testing.T) {
	kit := kiln.Equipment{Area: 2, Heater: new(8000.0), Way: &drives.Way{Fan: fan(t, 0, 600, 4000, 0), Opening: 0.1}}
	b := bed(t, deep(100, 0.2), kit, winter)
	run(t, b, 3, kiln.Hold(kiln.AirOn, 70))
	v := b.View()
	assert.Equal(t, kiln.ByHeater, v.Limit)
	assert.InEpsilon(t, 8000, v.HeaterPower, 1e-4)
	assert.Less(t, v.On.T, 60.0)
}

// anyWay draws what drives air.
func anyWay(t *rapid.T, area float64) *drives.Way {
	in := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	w := &drives.Way{Above: in("above", 0, 20), Below: in("below", 0, 5), Opening: area * in("opening", 0.01, 1)}
	if rapid.Bool().Draw(t, "fan") {
		most := area * in("most air", 0.05, 2)
		c, err := drives.NewCurve(drives.Point{Pressure: in("shut", 100, 2000)}, drives.Point{Flow: most / 2, Pressure: in("half", 20, 90)}, drives.Point{Flow: most})
		require.NoError(t, err)
		w.Fan = c
	}
	if rapid.Bool().Draw(t, "power said") {
		w.Power = new(in("power", 0, 5000))
	}
	return w
}

// Whatever drives the air: the balances close, pressures agree where nothing else bounds the
// air, and a heater never takes heat.
func TestDrivenAirKeepsItsBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		area := in("area", 0.1, 20)
		kit := kiln.Equipment{Area: area, Way: anyWay(t, area), Airflow: area * in("set", 0.005, 0.5), Layers: 5}
		if rapid.Bool().Draw(t, "returns") {
			kit.Recirculation = in("returns", 0, 0.9)
		}
		if rapid.Bool().Draw(t, "recovers") {
			kit.Recovers = in("recovers", 0, 0.9)
		}
		if rapid.Bool().Draw(t, "heater") {
			kit.Heater = new(area * in("heater", 100, 2e4))
		}
		depth := in("depth", 0.02, 1.5)
		charge := kiln.Charge{DryMass: area * depth * 290, Moisture: dry(0.44), Temperature: 18, Depth: &depth, DryDepth: new(0.6 * depth)}
		b, err := kiln.New(charge, kit, kiln.Ambient{T: in("outside", -10, 30), RH: in("rh", 0.2, 1)}, drying.Malt{})
		require.NoError(t, err)
		for range 3 {
			set := kiln.Hold(kiln.AirOn, in("air-on", 35, 85))
			set.Target = rapid.SampledFrom([]kiln.Target{kiln.AirOn, kiln.Malt, kiln.AirOff, kiln.Fresh, kiln.AsComes}).Draw(t, "target")
			_, err = b.Advance(in("hours", 0.1, 6)*3600, set)
			require.NoError(t, err)
			v := b.View()
			require.Less(t, v.Ledger.WaterError(), 1e-9)
			require.Less(t, v.Ledger.HeatError(), 1e-9)
			require.Less(t, v.Ledger.KilnError(), 1e-9)
			m := b.Moved()
			require.LessOrEqual(t, m.Flow, kit.Airflow*(1+1e-9))
			require.GreaterOrEqual(t, v.HeaterPower, -0.2*area, "a thousandth of a kelvin")
			if m.Short && m.Flow > 2e-5*area && m.Flow < kit.Airflow {
				most := m.Flow
				if f := kit.Way.Fan; f != nil {
					most = f.Most()
				}
				if m.Flow < most*0.999 {
					// The flow is found to some parts in a hundred thousand: what is left between the pressures is
					// what so much of it makes of them, the loss growing with no more than its square.
					const near = 1e-4
					answer := kit.Way.Blown(m.Flow*(1-near), v.On) - kit.Way.Blown(m.Flow*(1+near), v.On) + 2*near*(m.Bed+m.Ducts)
					require.InDelta(t, m.Bed+m.Ducts, m.Fan+m.Natural, answer)
				}
			}
		}
	})
}

func TestMoreDrivesMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		area := in("area", 0.1, 20)
		kit := kiln.Equipment{Area: area, Way: anyWay(t, area)}
		kit.Way.Power, kit.Way.Above = nil, kit.Way.Above+0.5
		depth := in("depth", 0.02, 1.5)
		gives := func(kit kiln.Equipment, depth float64) float64 {
			v, err := kit.Gives(deep(area*depth*290, depth), winter, drying.Malt{}, 50, 0)
			require.NoError(t, err)
			return v
		}
		of := gives(kit, depth)
		most := 3 * area
		if kit.Way.Fan != nil {
			most = kit.Way.Fan.Most()
		}
		deeper, higher := gives(kit, 1.2*depth), *kit.Way
		higher.Above += 2
		kit.Way = &higher
		taller := gives(kit, depth)
		if of < most*0.999 {
			require.Less(t, deeper, of)
			require.Greater(t, taller, of)
		}
	})
}

func TestGivesIsWhatPassesGreenMalt(t *testing.T) {
	kit := kiln.Equipment{Area: 2, Way: &drives.Way{Above: 6, Below: 1, Opening: 0.1}}
	v, err := kit.Gives(deep(120, 0.2), winter, drying.Malt{}, 50, 0)
	require.NoError(t, err)
	assert.InEpsilon(t, airAfter(t, deep(120, 0.2), kit, winter, 2, kiln.Hold(kiln.AirOn, 50)).Flow, v, 0.05)
	v, err = kit.Gives(deep(120, 0.2), winter, drying.Malt{}, 50, 0.01)
	require.NoError(t, err)
	assert.InEpsilon(t, 0.01, v, 1e-9)
}

// A bed that shrinks lets more air through.
func TestAShrunkBedLetsMoreThrough(t *testing.T) {
	kit := kiln.Equipment{Area: 2, Way: &drives.Way{Fan: fan(t, 0, 300, 4000, 0), Opening: 0.1}}
	charge := deep(100, 0.4)
	stiff, shrinks := bed(t, charge, kit, winter), deep(100, 0.4)
	shrinks.DryDepth = new(0.25)
	soft := bed(t, shrinks, kit, winter)
	run(t, stiff, 30, kiln.Hold(kiln.AirOn, 60))
	run(t, soft, 30, kiln.Hold(kiln.AirOn, 60))
	assert.Greater(t, soft.Moved().Flow, 1.15*stiff.Moved().Flow)
	assert.InDelta(t, 0.4, stiff.Depth(), 1e-12)
	x := soft.View().X
	assert.InDelta(t, 0.25+0.15*x/dry(0.45), soft.Depth(), 1e-9, "in a straight line")
}
