package forecast

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/quantity"
	"maltwright/sim/air"
)

// kilnSaying forecasts a batch on a kiln of 0.5 m² and 120 m³/h of which more is said.
func kilnSaying(t *testing.T, facts, steps string) *Forecast {
	t.Helper()
	text := strings.Replace(house, "heater 5 kW; fired electric", facts, 1)
	f, err := Run(load(t, text+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steepText+growText+"kiln in \"kiln\" { "+steps+"; cool to malt 30 °C }\n}\n"), Options{})
	require.NoError(t, err)
	require.False(t, f.BrokenOff(), "%v", f.Trouble)
	return f
}

const (
	electric = "heater 5 kW; fired electric"
	dried    = "dry at air-on 50 °C for 14 h; cure at air-on 80 °C for 5 h"
	kWh      = quantity.KilowattHour
)

// A burner takes the fuel, and the air has its share of it: heater 4 kW at 80 % is as strong as
// one of 3.2 kW, and takes a quarter more than it gives.
func TestABurnerTakesMoreThanItGives(t *testing.T) {
	whole := kilnSaying(t, "heater 3.2 kW; fired gas by indirect", dried)
	burner := kilnSaying(t, "heater 4 kW at 80 %; fired gas by indirect", dried)
	assert.InEpsilon(t, whole.Totals.KilnEnergy, burner.Totals.KilnEnergy, 1e-9)
	assert.Equal(t, whole.Totals.FinalMoisture, burner.Totals.FinalMoisture)
	kiln := func(f *Forecast) Energy { return f.Spent[len(f.Spent)-1].Energy }
	assert.InEpsilon(t, whole.Totals.KilnEnergy, kiln(whole).Fuel, 1e-9)
	assert.InEpsilon(t, whole.Totals.KilnEnergy/0.8, kiln(burner).Fuel, 1e-9)
	assert.Equal(t, kiln(burner).Fans, kiln(burner).Power)
	weak := kilnSaying(t, "heater 1.6 kW at 50 %; fired gas by indirect", dried)
	assert.NotEmpty(t, Troubles[KilnShort](weak), "800 W do not warm 120 m³/h to 80 °C")
}

// What is paid as what: electricity, fuel, neither of the sun, and heat where nothing is said.
func TestHeatIsPaidAsWhatTheKilnIsFiredWith(t *testing.T) {
	for fired, want := range map[string]struct{ power, fuel, unsaid bool }{
		"; fired electric": {power: true}, "; fired gas by indirect": {fuel: true}, "; fired solar": {}, "": {fuel: true, unsaid: true},
	} {
		f := kilnSaying(t, "heater 5 kW"+fired, dried)
		e := f.Spent[len(f.Spent)-1].Energy
		assert.InEpsilon(t, f.Totals.KilnEnergy, e.Heat, 1e-9, fired)
		for _, c := range []struct {
			took float64
			has  bool
		}{{e.Power - e.Fans, want.power}, {e.Fuel, want.fuel}, {e.Unsaid, want.unsaid}} {
			if c.has {
				assert.InEpsilon(t, e.Heat, c.took, 1e-9, fired)
			} else {
				assert.Zero(t, c.took, fired)
			}
		}
	}
}

// 40 W for all the hours on the kiln. Where it is not said, by hand: 300 Pa of ducts and some 4 Pa of
// a bed of 3 cm take 10 W of 120 m³/h, and the fan draws twice that.
func TestTheFanOfAKilnDrawsWhileItRuns(t *testing.T) {
	f := kilnSaying(t, electric+"; fan 40 W", dried)
	st := f.Stages[len(f.Stages)-1]
	hours := (st.Steps[len(st.Steps)-1].End - st.Steps[0].Start) / hour
	e := f.Totals.Energy
	assert.InDelta(t, 0.040*hours, e.Fans/kWh, 1e-6)
	assert.InEpsilon(t, f.Totals.KilnEnergy+e.Fans, e.Power, 1e-9)
	reckoned := kilnSaying(t, electric, dried)
	assert.InDelta(t, 20.3, reckoned.Totals.Energy.Fans/(hours*3600), 0.3)
	assert.Len(t, assumed[KilnFan](reckoned), 1)
	assert.Empty(t, assumed[KilnFan](f))
	assert.Zero(t, kilnSaying(t, electric+"; draught natural", dried).Totals.Energy.Fans)
}

// assumed lists the assumptions of a kind.
func assumed[T Assumption](f *Forecast) (list []T) {
	for _, a := range f.Assumed {
		if one, ok := a.(T); ok {
			list = append(list, one)
		}
	}
	return list
}

// By hand: at the same air-on the malt dries the same, and the heat that comes back is what the
// heater saves.
func TestWhatAKilnRecoversItsHeaterSaves(t *testing.T) {
	plain := kilnSaying(t, electric, dried)
	saving := kilnSaying(t, electric+"; recovers 70 %", dried)
	assert.InDelta(t, plain.Totals.FinalMoisture, saving.Totals.FinalMoisture, 1e-9)
	assert.Zero(t, plain.Totals.Energy.Recovered)
	assert.InEpsilon(t, plain.Totals.KilnEnergy, saving.Totals.KilnEnergy+saving.Totals.Energy.Recovered, 1e-9)
	assert.InEpsilon(t, plain.Totals.KilnWater, saving.Totals.KilnWater, 1e-9)
}

// A step may say what is led back in it: so air of the kiln is as damp as that share of the
// exhaust makes it, and the next step has the kiln's own again.
func TestAStepLeadsItsOwnShareBack(t *testing.T) {
	looks := func(steps string) []Sight {
		text := house + "process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n" + steepText + growText + "kiln in \"kiln\" { " + steps + "; cool to malt 30 °C }\n}\n"
		f := forecastOf(t, load(t, text), Options{Course: &Course{AtEnds: true}})
		return f.Seen
	}
	share := func(s Sight) float64 {
		return s.Balance.Returned / (s.Balance.Returned + s.Balance.Exhaust + s.Balance.Evaporated)
	}
	last := func(list []Sight, step string) Sight {
		var at Sight
		for _, s := range list {
			if s.OnKiln && s.Step == step {
				at = s
			}
		}
		require.NotZero(t, at.At)
		return at
	}
	plain, half := looks("dry at air-on 50 °C for 5 h; cure at air-on 60 °C for 1 h"), looks("dry at air-on 50 °C for 5 h with airflow 120 m3/h and returns 50 %; cure at air-on 60 °C for 1 h")
	assert.Zero(t, share(last(plain, "dry")))
	assert.InDelta(t, 0.5, share(last(half, "dry")), 0.03, "the warmth of the malt itself is not led round")
	assert.Equal(t, last(half, "dry").Balance.Returned, last(half, "cure").Balance.Returned, "the next step leads none back")
	assert.Greater(t, last(half, "dry").Humidity, last(plain, "dry").Humidity)
	assert.Less(t, last(half, "dry").Heat, 0.75*last(plain, "dry").Heat)
}

// The flaps are shut while malt is stewed, unless the step says how far.
func TestStewingKeepsItsFlapsShutUnlessItSaysOtherwise(t *testing.T) {
	water := func(with string) float64 {
		f := kilnSaying(t, electric, "stew at air-on 45 °C for 4 h"+with)
		return f.Totals.KilnWater
	}
	shut := water("")
	assert.InEpsilon(t, shut, water(" with returns 98 %"), 1e-6)
	assert.Greater(t, water(" with returns 60 %"), 3*shut)
	assert.Greater(t, water(" with returns 0 %"), water(" with returns 60 %"), "what air there is carries nearly as much")
}

// First law by hand: what dries off takes the heat between air-on and outside of the air that
// passed: 120 m³/h at 50 °C are 131 kg/h of dry air.
func TestHeatOfDryingIsThatOfItsAir(t *testing.T) {
	f := kilnSaying(t, electric, "dry at air-on 50 °C for 10 h")
	out, err := air.FromRH(14, 0.7, air.StandardPressure)
	require.NoError(t, err)
	on := air.State{T: 50, W: out.W, P: out.P}
	want := 10 * 120 / on.Volume() * (on.Enthalpy() - out.Enthalpy())
	assert.InEpsilon(t, want, f.Totals.KilnEnergy, 1e-6)
	assert.InEpsilon(t, f.Totals.KilnEnergy, f.Totals.Energy.Heat-f.Spent[0].Heat, 1e-9)
}

// The exhaust of a lower floor goes to the floor above: it cannot warm the fresh air as well.
func TestALowerFloorRecoversNothingAndSaysSo(t *testing.T) {
	saving := strings.Replace(tower, "fired gas by indirect }", "fired gas by indirect; recovers 60 % }", 1)
	require.NotEqual(t, tower, saving)
	plain, f := runText(t, onFloors(tower, "dry for 18 h", below), Options{}), runText(t, onFloors(saving, "dry for 18 h", below), Options{})
	assert.Empty(t, assumed[NothingRecovered](plain))
	assert.Len(t, assumed[NothingRecovered](f), 1)
	assert.Equal(t, plain.Totals.Energy, f.Totals.Energy)
	assert.Zero(t, f.Totals.Energy.Recovered)
}
