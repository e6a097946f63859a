package kiln_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
	"maltwright/sim/kiln"
)

func stateAt(t *testing.T, temperature, rh float64) air.State {
	t.Helper()
	s, err := air.FromRH(temperature, rh, air.StandardPressure)
	require.NoError(t, err)
	return s
}

// By hand, in dry air: 0.6/3 · 0.03 m · (0.4 m)^1.5 · √(9.81 m/s² · 45 K/310.65 K) = 1.81 l/s,
// 6.5 m³/h through 3 cm, at 60 °C in a kitchen of 15 °C.
func TestDoorAjarByHand(t *testing.T) {
	door := &kiln.Door{Gap: 0.03, Height: 0.4}
	got := door.Draws(stateAt(t, 60, 0), stateAt(t, 15, 0))
	assert.InEpsilon(t, 1.81e-3, got, 0.005)
	assert.InEpsilon(t, 6.5/3600, got, 0.01)
	assert.Zero(t, door.Draws(stateAt(t, 15, 0.5), stateAt(t, 15, 0.5)), "nothing is lighter")
	assert.Zero(t, (*kiln.Door)(nil).Draws(stateAt(t, 60, 0), stateAt(t, 15, 0)))
	assert.Greater(t, door.Draws(stateAt(t, 60, 0.5), stateAt(t, 15, 0.5)), got, "moist air is lighter still")
	twice := &kiln.Door{Gap: 0.06, Height: 0.4}
	assert.InEpsilon(t, 2*got, twice.Draws(stateAt(t, 60, 0), stateAt(t, 15, 0)), 1e-12)
	tall := &kiln.Door{Gap: 0.03, Height: 1.6}
	assert.InEpsilon(t, 8*got, tall.Draws(stateAt(t, 60, 0), stateAt(t, 15, 0)), 1e-12)
}

// A tray of 2.2 kg of green malt in an oven at 50 °C, by hand. As soon as it is warm the air in the oven is
// nearly as moist as the wet malt's surface, so that what leaves carries off W(oven) − W(kitchen) for each kg
// of dry air: shut 2 m³/h, ajar that and 1.6 l/s more. The air that the oven shows must, with the flow
// of the formula, give the water that the malt loses.
func TestTrayBehindADoorAjarDriesAsTheAirGoesThroughTheGap(t *testing.T) {
	charge := kiln.Charge{DryMass: 1.2, Moisture: dry(0.45), Temperature: 15, BulkDensity: 550}
	shut := kiln.Equipment{Area: 0.17, Airflow: kiln.StillVent, Still: true}
	ajar := shut
	ajar.Door = &kiln.Door{Gap: 0.03, Height: kiln.OvenDoor}
	hours := map[bool]float64{}
	for _, kit := range []kiln.Equipment{shut, ajar} {
		b := bed(t, charge, kit, spring)
		before := run(t, b, 2, kiln.Hold(kiln.Oven, 50))
		v := run(t, b, 0.5, kiln.Hold(kiln.Oven, 50))
		outside, err := air.FromRH(spring.T, spring.RH, v.On.P)
		require.NoError(t, err)
		inside := air.State{T: 50, W: (v.On.W + before.On.W) / 2, P: v.On.P}
		flow := kit.Airflow
		if kit.Door != nil {
			light, dense := (1+inside.W)/inside.Volume(), (1+outside.W)/outside.Volume()
			flow += 0.6 / 3 * 0.03 * math.Pow(0.4, 1.5) * math.Sqrt(9.81*2*(dense-light)/(dense+light))
		}
		want := flow / inside.Volume() * ((v.Off.W+before.Off.W)/2 - outside.W) * 1800
		got := v.Ledger.WaterVented - before.Ledger.WaterVented
		t.Logf("door %v: %.1f m³/h, %.0f g in half an hour, by hand %.0f; %.1f °C", kit.Door, 3600*flow, 1e3*got, 1e3*want, v.MaltT)
		assert.InEpsilon(t, want, got, 0.05)
		assert.InEpsilon(t, flow, v.Airflow, 0.02, "the air that it is told to have is what leaves")
		assert.InEpsilon(t, got, v.Ledger.WaterToAir-before.Ledger.WaterToAir, 1e-3)
		assert.Less(t, v.Ledger.KilnError(), 1e-9)
		hours[kit.Door != nil] = until(t, b, kiln.Hold(kiln.Oven, 50), 300, moistureAtMost(0.10)) + 2.5
		if kit.Door != nil {
			assert.Greater(t, v.HeaterPower, 0.0)
		}
	}
	t.Logf("10 %% after %.1f h shut, %.1f h ajar", hours[false], hours[true])
	assert.Less(t, hours[true], 0.85*hours[false])
}

// With an airflow of the setting the door says nothing, and no other kiln has one.
func TestDoorGivesWayToAnAirflow(t *testing.T) {
	kit := kiln.Equipment{Area: 0.5, Airflow: kiln.StillVent, Still: true}
	set := kiln.Setting{Target: kiln.Oven, From: 50, To: 50, Airflow: new(10.0 / 3600)}
	without := run(t, bed(t, tray, kit, spring), 1, kiln.Hold(kiln.Oven, 50))
	kit.Door = &kiln.Door{Gap: 0.03, Height: 0.4}
	b := bed(t, tray, kit, spring)
	ajar := run(t, b.Clone(), 1, kiln.Hold(kiln.Oven, 50))
	said := b.Clone()
	_, err := said.Advance(3600, set)
	require.NoError(t, err)
	kit.Door = nil
	bare := bed(t, tray, kit, spring)
	_, err = bare.Advance(3600, set)
	require.NoError(t, err)
	assert.Equal(t, bare.View().X, said.View().X)
	assert.Less(t, ajar.X, without.X)
	kit.Still, kit.Door = false, &kiln.Door{Gap: 0.03, Height: 0.4}
	_, err = kiln.New(tray, kit, spring, malt)
	assert.EqualError(t, err, "a door stands ajar on a still oven alone")
	kit.Still, kit.Door.Gap = true, 3
	_, err = kiln.New(tray, kit, spring, malt)
	assert.ErrorContains(t, err, "gap of the door")
}
