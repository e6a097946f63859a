package forecast

import (
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
