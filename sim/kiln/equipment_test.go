package kiln_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
	"maltwright/sim/drying"
	"maltwright/sim/kiln"
)

// 300 W on 60 m³/h at air-on: first law, V/v·(h on − h ambient) = Q.
func TestWeakHeaterLimitsAirOnByTheFirstLaw(t *testing.T) {
	kit := cabinet
	kit.Heater = new(300.0)
	b := bed(t, tray, kit, spring)
	v := run(t, b, 1, kiln.Hold(kiln.AirOn, 60))
	assert.Equal(t, kiln.ByHeater, v.Limit)
	assert.InDelta(t, 300, v.HeaterPower, 1e-6)
	outside, err := air.FromRH(spring.T, spring.RH, v.On.P)
	require.NoError(t, err)
	power := 60.0 / 3600 / v.On.Volume() * (v.On.Enthalpy() - outside.Enthalpy())
	assert.InDelta(t, 300, power, 1e-6)
	assert.InDelta(t, 3600*300, v.Ledger.Heater, 3600*300*0.01, "and books it, but for the first minute or so")
}

func TestStrongHeaterIsNotFullyUsed(t *testing.T) {
	kit := cabinet
	kit.Heater = new(1500.0)
	v := run(t, bed(t, tray, kit, spring), 1, kiln.Hold(kiln.AirOn, 60))
	assert.Equal(t, kiln.Unlimited, v.Limit)
	assert.Equal(t, 60.0, v.On.T)
	assert.Less(t, v.HeaterPower, 1500.0)
}

func TestReachBoundsAirOnAndSaysSo(t *testing.T) {
	kit := cabinet
	kit.ReachLow, kit.ReachHigh = new(70.0), new(95.0)
	b := bed(t, tray, kit, spring)
	v := run(t, b, 0.5, kiln.Hold(kiln.AirOn, 45))
	assert.Equal(t, kiln.ByReachLow, v.Limit)
	assert.Equal(t, 70.0, v.On.T)
	v = run(t, b, 0.5, kiln.Hold(kiln.AirOn, 105))
	assert.Equal(t, kiln.ByReachHigh, v.Limit)
	assert.Equal(t, 95.0, v.On.T)
}

func TestNothingCoolsTheIncomingAir(t *testing.T) {
	v := run(t, bed(t, tray, cabinet, spring), 0.5, kiln.Hold(kiln.AirOn, 5))
	assert.Equal(t, kiln.ByIncomingAir, v.Limit)
	assert.Equal(t, spring.T, v.On.T)
	assert.InDelta(t, 0, v.HeaterPower, 1e-9)
}

func TestAirOnFollowsAStraightRise(t *testing.T) {
	b := bed(t, tray, cabinet, spring)
	_, err := b.Advance(600, kiln.Setting{From: 40, To: 46})
	require.NoError(t, err)
	assert.Equal(t, 46.0, b.View().On.T)
}

// Exhaust led back makes the air damper, drying slower and heat cheaper.
func TestRecirculationSavesHeatAndCostsTime(t *testing.T) {
	kit := cabinet
	open := bed(t, tray, kit, spring)
	kit.Recirculation = 0.7
	shut := bed(t, tray, kit, spring)
	set := kiln.Hold(kiln.AirOn, 50)
	fast := until(t, open, set, 120, moistureAtMost(0.12))
	slow := until(t, shut, set, 120, moistureAtMost(0.12))
	assert.Greater(t, slow, fast)
	assert.Less(t, shut.View().Ledger.Heater, 0.75*open.View().Ledger.Heater)
	// What comes back to air-on is the share of exhaust and the rest fresh.
	v := run(t, shut, 1, set)
	outside, err := air.FromRH(spring.T, spring.RH, v.On.P)
	require.NoError(t, err)
	assert.InDelta(t, 0.3*outside.W+0.7*v.Off.W, v.On.W, 1e-7)
	l := v.Ledger
	assert.InEpsilon(t, l.WaterToAir, l.WaterVented, 1e-5, "all water leaves by the exhaust")
	assert.Less(t, l.KilnError(), 1e-9)
}

func TestWeakHeaterWithRecirculationGivesItsPower(t *testing.T) {
	kit := cabinet
	kit.Recirculation, kit.Heater = 0.6, new(250.0)
	v := run(t, bed(t, tray, kit, spring), 2, kiln.Hold(kiln.AirOn, 60))
	assert.Equal(t, kiln.ByHeater, v.Limit)
	assert.InDelta(t, 250, v.HeaterPower, 0.1, "the search stops at 1e-4 K of air-on")
	assert.Less(t, v.On.T, 60.0)
}

func TestSettingOverridesFlowAndReturn(t *testing.T) {
	none := 0.0
	kit := cabinet
	kit.Recirculation = 0.7
	b := bed(t, tray, kit, spring)
	run(t, b, 1, kiln.Hold(kiln.AirOn, 50))
	set := kiln.Setting{From: 50, To: 50, Airflow: new(2 * cabinet.Airflow), Recirculation: &none}
	before := b.View().Ledger.AirPassed
	v := run(t, b, 1, set)
	outside, err := air.FromRH(spring.T, spring.RH, v.On.P)
	require.NoError(t, err)
	assert.InDelta(t, outside.W, v.On.W, 1e-12)
	assert.InEpsilon(t, 2*60/v.On.Volume(), v.Ledger.AirPassed-before, 1e-3)
}

// Set by the malt, air-on runs ahead by at most Lead until the malt's mean is
// what was asked, and then holds it there.
func TestMaltIsHeldAtItsTemperature(t *testing.T) {
	b := bed(t, tray, cabinet, spring)
	v := run(t, b, 0.5, kiln.Hold(kiln.Malt, 45))
	assert.Equal(t, kiln.ByLead, v.Limit)
	assert.InDelta(t, 45+kiln.Lead, v.On.T, 1e-3)
	v = run(t, b, 4, kiln.Hold(kiln.Malt, 45))
	assert.Equal(t, kiln.Unlimited, v.Limit)
	assert.InDelta(t, 45, v.MaltT, 0.05)
	assert.Greater(t, v.On.T, 45.0)
}

func TestAirOffIsBroughtNearWhatIsAsked(t *testing.T) {
	b := bed(t, tray, cabinet, spring)
	v := run(t, b, 10, kiln.Hold(kiln.AirOff, 40))
	assert.InDelta(t, 40, v.Off.T, 1)
	assert.Greater(t, v.On.T, v.Off.T)
}

// In a still oven malt stands below the oven's air by what evaporates, the
// vent carries the water away, and a shut vent halves the drying at least.
func TestStillOvenDriesByItsVent(t *testing.T) {
	kit := kiln.Equipment{Area: 0.5, Airflow: 12.0 / 3600, Still: true, Heater: new(2000.0)}
	open := bed(t, tray, kit, spring)
	kit.Airflow = kiln.StillVent
	shut := bed(t, tray, kit, spring)
	v, w := run(t, open, 6, kiln.Hold(kiln.Oven, 50)), run(t, shut, 6, kiln.Hold(kiln.Oven, 50))
	assert.Equal(t, 50.0, v.On.T)
	assert.InDelta(t, v.On.T, v.Off.T, 3, "the air is well mixed")
	assert.Less(t, v.MaltT, v.On.T-5)
	assert.Greater(t, v.MaltT, v.WetBulb)
	assert.Less(t, w.Ledger.WaterToAir, v.Ledger.WaterToAir/2)
	assert.InEpsilon(t, v.Ledger.WaterToAir, v.Ledger.WaterVented, 1e-4)
	assert.Len(t, open.Layers(nil), 1)
}

func TestMaltOnAStillOvenComesToTheOvenWhenDry(t *testing.T) {
	kit := kiln.Equipment{Area: 0.5, Airflow: 12.0 / 3600, Still: true, Heater: new(2000.0)}
	v := run(t, bed(t, tray, kit, spring), 72, kiln.Hold(kiln.Oven, 60))
	assert.InDelta(t, 60, v.MaltT, 0.5)
	assert.Less(t, v.WetBasis, 0.06)
}

func TestRefusalsNameWhatIsWrong(t *testing.T) {
	for want, change := range map[string]func(*kiln.Charge, *kiln.Equipment, *kiln.Ambient, *drying.Malt){
		"dry matter on the kiln 0 g is outside 1 g to 1000 t": func(c *kiln.Charge, _ *kiln.Equipment, _ *kiln.Ambient, _ *drying.Malt) { c.DryMass = 0 },
		"moisture, dry basis 4500 % is outside 0 to 150 %":    func(c *kiln.Charge, _ *kiln.Equipment, _ *kiln.Ambient, _ *drying.Malt) { c.Moisture = 45 },
		"airflow 0 m3/h is outside 0.018 to 5400 m3/h":        func(_ *kiln.Charge, e *kiln.Equipment, _ *kiln.Ambient, _ *drying.Malt) { e.Airflow = 0 },
		"a still oven has no fan to lead exhaust back": func(_ *kiln.Charge, e *kiln.Equipment, _ *kiln.Ambient, _ *drying.Malt) {
			e.Still, e.Recirculation = true, 0.5
		},
		"relative humidity 6000 % is outside 0 to 100 %": func(_ *kiln.Charge, _ *kiln.Equipment, a *kiln.Ambient, _ *drying.Malt) { a.RH = 60 },
		"drying factor 100 is outside 0.05 to 20":        func(_ *kiln.Charge, _ *kiln.Equipment, _ *kiln.Ambient, m *drying.Malt) { m.Factor = new(100.0) },
	} {
		charge, kit, ambient, malt := tray, cabinet, spring, drying.Malt{}
		change(&charge, &kit, &ambient, &malt)
		_, err := kiln.New(charge, kit, ambient, malt)
		assert.EqualError(t, err, want)
	}
}

func TestRefusedSettingsNameWhatIsWrong(t *testing.T) {
	all := 1.0
	b := bed(t, tray, cabinet, spring)
	for want, set := range map[string]kiln.Setting{
		"temperature set 400 °C is outside 0 to 300 °C":        {From: 50, To: 400},
		"airflow 36000 m3/h is outside 0.018 to 5400 m3/h":     {From: 50, To: 50, Airflow: new(10.0)},
		"share of exhaust led back 100 % is outside 0 to 98 %": {From: 50, To: 50, Recirculation: &all},
		"target 9 is outside 0 to 5":                           {Target: 9, From: 50, To: 50},
	} {
		_, err := b.Advance(600, set)
		assert.EqualError(t, err, want)
	}
	_, err := b.Advance(-1, still)
	assert.EqualError(t, err, "duration -1 s is outside 0 to 7 days")
}

func TestZeroIsAValueAndNotALeftOutOne(t *testing.T) {
	kit := cabinet
	kit.Heater = new(0.0)
	v := run(t, bed(t, tray, kit, spring), 1, kiln.Hold(kiln.AirOn, 50))
	assert.Equal(t, kiln.ByHeater, v.Limit)
	assert.InDelta(t, spring.T, v.On.T, 1e-9, "a heater without power warms nothing")

	kit = cabinet
	kit.ReachLow = new(10.0)
	winter := kiln.Ambient{T: -10, RH: 0.5}
	assert.Equal(t, kiln.ByReachLow, run(t, bed(t, tray, kit, winter), 1, kiln.Hold(kiln.AirOn, 5)).Limit)
	kit.ReachLow = new(0.0)
	assert.Equal(t, kiln.Unlimited, run(t, bed(t, tray, kit, winter), 1, kiln.Hold(kiln.AirOn, 5)).Limit)
	kit.ReachHigh = new(0.0)
	v = run(t, bed(t, tray, kit, winter), 1, kiln.Hold(kiln.AirOn, 5))
	assert.Equal(t, kiln.ByReachHigh, v.Limit)
	assert.Equal(t, 0.0, v.On.T)
}
