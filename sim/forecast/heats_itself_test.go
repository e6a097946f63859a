package forecast

import (
	"maltwright/sim/air"
	"maltwright/sim/grain"
	"maltwright/sim/kiln"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// By hand: malt that is grown breathes 1.5 to 2.5 W for each kg of raw grain; of so much that is 0.86 kg of dry
// matter and 0.66 of water a day's breath is 130 to 215 kJ over 4.1 kJ/K, some 30 to 50 K, at 15 °C.
func TestWetMaltWithoutAirHeatsItself(t *testing.T) {
	const kilning = "kiln in \"kiln\" { dry at air-on 40 °C until moisture at most 20 % allow 0 to 48 h; cool to malt 30 °C }\n"
	f := inKiln(t, "area 0.05 m2; airflow 0.2 m3/h; reaches 20 to 110 °C; fired electric", kilning)
	list := Troubles[HeatsItself](f)
	require.Len(t, list, 1)
	h := list[0]
	assert.Greater(t, h.Time, day)
	assert.LessOrEqual(t, h.Time, 48.1*hour)
	assert.Greater(t, h.Moisture, 0.25)
	assert.Greater(t, h.Rise, 20.0)
	assert.Less(t, h.Rise, 60.0)
	assert.Len(t, takenOf[KilnBreath](f), 1)

	// a kiln that dries, one that comes slowly to its heat, and a stewed pan do not
	for name, kiln := range map[string]string{
		"usual":  "dry at air-on 50 °C until moisture at most 20 % allow 0 to 24 h; cool to malt 30 °C",
		"cool":   "dry at air-on 25 °C until moisture at most 20 % allow 0 to 90 h; cool to malt 25 °C",
		"slowly": "dry from air-on 25 to 50 °C over 12 h until moisture at most 20 % allow 0 to 24 h; cool to malt 30 °C",
		"stewed": "stew at malt 65 °C for 2 h; dry at air-on 80 °C until moisture at most 20 % allow 0 to 24 h; cool to malt 30 °C",
	} {
		f := inKiln(t, kilnFacts, "kiln in \"kiln\" { "+kiln+" }\n")
		assert.Empty(t, Troubles[HeatsItself](f), name)
		assert.Empty(t, takenOf[KilnBreath](f), name)
	}
}

// By hand: saturated air holds 64 kJ/kg at 22 °C and 85 at 27 °C (tables of moist air, from memory), so that 500 m3/h,
// 0.16 kg/s of dry air, carry 3.3 kW off malt that is 5 K warmer; 400 kg of green malt breathe 1 kW at the most. 1 m3/h carries nothing off.
func TestAirThatEvaporatesNothingStillCools(t *testing.T) {
	barley, err := grain.Of("barley")
	require.NoError(t, err)
	lot := grain.LotOf(barley, 228, 0.15)
	wet := air.State{T: 22, P: 101325}
	wet.W = air.HumidityRatio(air.Saturation(22), wet.P)
	v := kiln.View{MaltT: 22, WetBasis: 0.43, OffRH: 1, On: wet, Off: wet}
	assert.InEpsilon(t, (85-64)*1e3*500/3600/0.86, carries(v, 500.0/3600), 0.03)
	for flow, told := range map[float64]bool{500: false, 1: true} {
		b := breath{lot: &lot, clock: 1500, dry: 228}
		for range 400 {
			v.Airflow = flow / 3600
			b.watch(v, 360)
		}
		assert.Equal(t, told, b.longest.Time > 0, "%g m3/h", flow)
	}
}
