package contrast

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestWhatAKilnHasIsToldByMeaning(t *testing.T) {
	const old = `kiln "k" { fan 9000 m3/h at 0 Pa; fan 6000 m3/h at 400 Pa; fan 2.2 kW; chimney 6 m; walls brick 24 m2 with insulation; heater 110 kW at 85 %; tumbles yes; door ajar 3 cm; air from "l" }`
	assert.Empty(t, told(old, `kiln "k" { air from "l"; door ajar 30 mm; tumbles yes; heater 110000 W at 85 %; walls brick 24 m² with insulation; chimney 600 cm; fan 9000 m3/h at 0 mbar; fan 6000 m³/h at 4 mbar; fan 2200 W }`))
	for name, c := range map[string]struct{ new, want string }{
		"a point":      {`fan 9000 m3/h at 0 Pa; fan 6000 m3/h at 350 Pa`, "changed kiln \"k\": fan 6000 m3/h at 350 Pa {at 400 Pa -> 350 Pa}\n"},
		"a point more": {`fan 9000 m3/h at 0 Pa; fan 6000 m3/h at 400 Pa; fan 3000 m3/h at 500 Pa`, "new kiln \"k\": fan 3000 m3/h at 500 Pa\n"},
	} {
		assert.Equal(t, c.want, told(`kiln "k" { fan 9000 m3/h at 0 Pa; fan 6000 m3/h at 400 Pa }`, `kiln "k" { `+c.new+` }`), name)
	}
	for from, want := range map[string]struct{ to, told string }{
		"heater 110 kW at 85 %": {"heater 110 kW at 90 %", "heater 110 kW at 90 % {at 85 % -> 90 %}"},
		"chimney 6 m":           {"chimney 7 m", "chimney 7 m { 6 m -> 7 m}"},
		"walls brick 24 m2":     {"walls stone 24 m2", "walls stone 24 m2 { brick 24 m2 -> stone 24 m2}"},
		"door ajar 3 cm":        {"door ajar 5 cm", "door ajar 5 cm { ajar 3 cm -> ajar 5 cm}"},
		`air from "l"`:          {`air from "m"`, `air from "m" {from "l" -> "m"}`},
		"recovers 35 %":         {"recovers 40 %", "recovers 40 % { 35 % -> 40 %}"},
	} {
		assert.Equal(t, "changed kiln \"k\": "+want.told+"\n", told("kiln \"k\" { "+from+" }", "kiln \"k\" { "+want.to+" }"), from)
	}
}

func TestWhatAStepOnTheKilnIsWithIsToldByMeaning(t *testing.T) {
	on := func(step string) string { return "process \"p\" { kiln in \"k\" {\n" + step + "\n} }" }
	assert.Empty(t, told(on("dry at air-on 45 °C for 8 h with smoke and airflow 40 m3/h"), on("dry 8 h with smoke and airflow 40 m³/h at air-on 45 °C")))
	for old, c := range map[string]struct{ new, told string }{
		"dry at air-on 45 °C for 8 h":                   {"dry at air-on 45 °C for 8 h with smoke", "dry at air-on 45 °C for 8 h with smoke {with  -> smoke}"},
		"dry at air-on 45 °C for 8 h with returns 50 %": {"dry at air-on 45 °C for 8 h with returns 60 %", "dry at air-on 45 °C for 8 h with returns 60 % {with returns 50 % -> returns 60 %}"},
		"roast at malt 175 °C for 50 min":               {"roast at malt 180 °C for 50 min", "roast at malt 180 °C for 50 min {at malt 175 °C -> malt 180 °C}"},
		"cool to malt 30 °C":                            {"cool to malt 30 °C with water 2 l", "cool to malt 30 °C with water 2 l {with  -> water 2 l}"},
	} {
		assert.Equal(t, "changed process \"p\" / kiln: "+c.told+"\n", told(on(old), on(c.new)), old)
	}
}
