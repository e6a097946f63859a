package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestATextIsRetoldInTheUnitsOfTheHouse(t *testing.T) {
	for metric, want := range map[string]string{
		"cure at 80 to 85 °C for 4 to 6 h":                  "cure at 176 to 185 °F for 4 to 6 h",
		"about 50 °C above 25 % moisture, 80 °C above 10 %": "about 122 °F above 25 % moisture, 176 °F above 10 %",
		"(near 0 °C) and no colder":                         "(near 32 °F) and no colder",
		"1000 kg some 39 m³ in five days":                   "2200 lb some 1400 ft3 in five days",
		"deep beds are 0.7 to 1 m, trays (3 cm)":            "deep beds are 2.3 to 3.3 ft, trays (1.2 in)",
		"the test in 4 ml, and a heater of 1.5 kW":          "the test in 4 ml, and a heater of 5100 Btu/h",
		"several kg of °C":                                  "several kg of °C",
	} {
		assert.Equal(t, want, System{Fahrenheit: true, British: true}.Retold(metric))
		assert.Equal(t, metric, System{}.Retold(metric))
	}
	assert.Equal(t, "9.9 gal-imp", System{British: true, Imperial: true}.Retold("45 l"))
	assert.Equal(t, "10 kg at 50 °F", System{Fahrenheit: true}.Retold("10 kg at 10 °C"))
	assert.Equal(t, "22 lb at 10 °C", System{British: true}.Retold("10 kg at 10 °C"))
}
