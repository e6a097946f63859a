package fingerprint

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A kiln that is given the exhaust of another one is not the same where that one is otherwise.
func TestAKilnThatAnotherOneHasItsAirFromIsUsed(t *testing.T) {
	in := example(t, "pale.malt")
	in["loft.malt"] = strings.Replace(in["loft.malt"], "kiln \"tray kiln\" {", "kiln \"cellar\" { area 1 m2; heater 3 kW }\nkiln \"below\" { area 1 m2; heater 3 kW; air from \"cellar\" }\nkiln \"beside\" { area 1 m2 }\nkiln \"tray kiln\" {\n  air from \"below\"", 1)
	was := print(t, in, "pale.malt")
	for what, with := range map[string]files{
		"the heater below":         changed(in, "loft.malt", "below\" { area 1 m2; heater 3 kW", "below\" { area 1 m2; heater 4 kW"),
		"the heater in the cellar": changed(in, "loft.malt", "cellar\" { area 1 m2; heater 3 kW", "cellar\" { area 1 m2; heater 4 kW"),
		"no air from below":        changed(in, "loft.malt", "air from \"below\"", "draught fan"),
	} {
		assert.NotEqual(t, was, print(t, with, "pale.malt"), what)
	}
	assert.Equal(t, was, print(t, changed(in, "loft.malt", "beside\" { area 1 m2", "beside\" { area 2 m2"), "pale.malt"), "another kiln is none of its business")
}
