package kiln_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
	"maltwright/sim/drying"
	"maltwright/sim/kiln"
)

// outsideOf is the ambient air as the kiln has it.
func outsideOf(t testing.TB, a kiln.Ambient, p float64) air.State {
	t.Helper()
	s, err := air.FromRH(a.T, a.RH, p)
	require.NoError(t, err)
	return s
}

// At the same air-on the malt dries as it does without: what is recovered is what the heater
// saves, to the joule.
func TestHeaterSavesWhatIsRecovered(t *testing.T) {
	for name, back := range map[string]float64{"through": 0, "half led back": 0.5} {
		plain := house
		plain.Recirculation = back
		saving := plain
		saving.Recovers = 0.7
		a, b := bed(t, tonne, plain, winter), bed(t, tonne, saving, winter)
		va, vb := run(t, a, 20, kiln.Hold(kiln.AirOn, 65)), run(t, b, 20, kiln.Hold(kiln.AirOn, 65))
		assert.InDelta(t, va.WetBasis, vb.WetBasis, 1e-9, name)
		assert.InEpsilon(t, va.Ledger.Heater, vb.Ledger.Heater+vb.Ledger.Recovered, 1e-9, name)
		assert.Greater(t, vb.Ledger.Recovered, 0.1*va.Ledger.Heater, name)
		assert.Zero(t, va.Ledger.Recovered)
		w := b.Balance()
		assert.InEpsilon(t, w.Heater+w.Recovered, w.Warmed+w.Evaporated+w.Exhaust, 1e-9, name)
		assert.InEpsilon(t, a.Balance().Exhaust, w.Exhaust, 1e-9, "the exhaust is the same before the exchanger")
	}
}

// First law by hand: fresh air of 10 °C comes to T0 + r·(T − T0) behind the exchanger, with its own
// water, is mixed with what is led back, and the heater does the rest.
func TestHeaterWarmsWhatComesFromTheExchanger(t *testing.T) {
	kit := house
	kit.Recirculation, kit.Recovers = 0.3, 0.6
	v := run(t, bed(t, tonne, kit, winter), 5, kiln.Hold(kiln.AirOn, 60))
	fresh := outsideOf(t, winter, v.On.P)
	assert.Greater(t, v.Off.T, fresh.T+10)
	fresh.T += 0.6 * (v.Off.T - fresh.T)
	mixed := 0.7*fresh.Enthalpy() + 0.3*v.Off.Enthalpy()
	flow := kit.Airflow / v.On.Volume()
	assert.InEpsilon(t, flow*(v.On.Enthalpy()-mixed), v.HeaterPower, 1e-6)
}

// Saturated exhaust of 27 °C that gives its heat to air of 10 °C lets water go. By hand, for each kg
// of dry air: h = 85.4 kJ, of which r = 0.7 times 1.006 kJ/K times 17 K go; what is left, 73.3 kJ, is
// saturated air of 24.1 °C and its liquid, 22.7 g less 19.0 g (tables of moist air).
func TestExhaustThatIsCooledLetsItsWaterGo(t *testing.T) {
	kit := house
	kit.Recovers = 0.7
	b := bed(t, tonne, kit, winter)
	v := run(t, b, 4, kiln.Hold(kiln.AirOn, 65))
	require.InDelta(t, 27, v.Off.T, 2)
	require.Greater(t, v.OffRH, 0.97)
	before := v.Ledger
	v = run(t, b, 1, kiln.Hold(kiln.AirOn, 65))
	gone := (v.Ledger.Condensed - before.Condensed) / (v.Ledger.AirPassed - before.AirPassed)
	assert.InDelta(t, 0.0037, gone, 0.0006)
	assert.Less(t, v.Ledger.Condensed, v.Ledger.WaterVented)
}

// Exhaust far from saturation lets none go: what it gives is its sensible heat.
func TestDryExhaustLetsNoWaterGo(t *testing.T) {
	charge := tonne
	charge.Moisture, charge.Temperature = dry(0.05), 60
	kit := house
	kit.Recovers = 0.7
	v := run(t, bed(t, charge, kit, kiln.Ambient{T: 10, RH: 0.4}), 2, kiln.Hold(kiln.AirOn, 80))
	assert.Positive(t, v.Ledger.Recovered)
	assert.Zero(t, v.Ledger.Condensed)
}

// Hot malt makes hot exhaust: past the exchanger goes what would warm the air beyond what is asked.
func TestFlapLeadsPastTheExchangerWhatIsTooMuch(t *testing.T) {
	kit := house
	kit.Recovers = 0.9
	b := bed(t, tonne, kit, winter)
	run(t, b, 40, kiln.Hold(kiln.AirOn, 85))
	v := run(t, b, 0.1, kiln.Hold(kiln.AirOn, 40))
	fresh := outsideOf(t, winter, v.On.P)
	require.Greater(t, fresh.T+0.9*(v.Off.T-fresh.T), 45.0)
	assert.Equal(t, 40.0, v.On.T)
	assert.Equal(t, kiln.Unlimited, v.Limit)
	assert.Zero(t, v.HeaterPower)
	before := v.Ledger.Recovered
	v = run(t, b, 1, still)
	assert.Equal(t, before, v.Ledger.Recovered, "nor is cooling air warmed")
	assert.Less(t, v.Ledger.KilnError(), 1e-9)
}

func TestWeakHeaterComesFartherWithWhatIsRecovered(t *testing.T) {
	kit := cabinet
	kit.Heater = new(300.0)
	plain := run(t, bed(t, tray, kit, spring), 6, kiln.Hold(kiln.AirOn, 60))
	kit.Recovers = 0.7
	v := run(t, bed(t, tray, kit, spring), 6, kiln.Hold(kiln.AirOn, 60))
	assert.Equal(t, kiln.ByHeater, v.Limit)
	assert.InDelta(t, 300, v.HeaterPower, 0.1, "the search stops at 1e-4 K of air-on")
	assert.Greater(t, v.On.T, plain.On.T+2)
}

// A heater without power leaves what the exchanger can do with the heat of the malt alone.
func TestExchangerAloneWarmsNothing(t *testing.T) {
	kit := cabinet
	kit.Heater, kit.Recovers = new(0.0), 0.8
	v := run(t, bed(t, tray, kit, spring), 1, kiln.Hold(kiln.AirOn, 50))
	assert.Equal(t, kiln.ByHeater, v.Limit)
	assert.InDelta(t, spring.T, v.On.T, 0.1)
}

func TestRecoveryIsRefusedWhereItCannotBe(t *testing.T) {
	kit := cabinet
	kit.Recovers = 1.2
	_, err := kiln.New(tray, kit, spring, drying.Malt{})
	assert.EqualError(t, err, "share of the exhaust's heat recovered 120 % is outside 0 to 98 %")
	kit.Recovers, kit.Still = 0.5, true
	_, err = kiln.New(tray, kit, spring, drying.Malt{})
	assert.EqualError(t, err, "a still oven has no exhaust to recover heat from")
}
