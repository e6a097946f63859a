package visits

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Malt that waits above for the floor below to be free asks for nobody until it goes down.
func TestNobodyComesWhileMaltWaitsForTheFloorBelow(t *testing.T) {
	list := listed(t, `site "room" { air 12 °C; humidity 70 %; water 12 °C; altitude 100 m }
kiln "lower" { area 8 m2; airflow 2000 m3/h; heater 90 kW; reaches 20 to 100 °C; fired gas by indirect }
kiln "upper" { area 8 m2; air from "lower" }
grain "green" { species barley; already green malt; moisture 44 % }
process "p" {
 make pale malt
 from 800 kg of "green"
 at "room"
 kiln in "upper" { dry for 8 h }
 kiln in "lower" { dry at air-on 60 °C for 8 h; cure at air-on 83 °C for 4 h; cool to malt 35 °C }
}
`)
	type seen struct {
		Kind
		where string
	}
	var kinds []seen
	for _, task := range list {
		kinds = append(kinds, seen{task.Kind, task.Where})
	}
	assert.Equal(t, []seen{{Load, "upper"}, {Unload, "upper"}, {Load, "lower"}, {Heat, "lower"}, {Cool, "lower"}, {Unload, "lower"}}, kinds)
	assert.Equal(t, []string{"lower", "lower", ""}, []string{list[0].With, list[1].With, list[5].With})
	assert.InDelta(t, 12*3600, list[1].At, 1800, "when the batch before has been cooled")
}
