package visits

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Malt that goes from kiln to kiln is taken off the one and loaded onto the next; a floor that
// takes the exhaust of another is set to no heat.
func TestMaltIsCarriedFromKilnToKiln(t *testing.T) {
	list := listed(t, house+"kiln \"low\" { area 0.5 m2; airflow 60 m3/h; fired electric }\nkiln \"high\" { area 0.5 m2; air from \"low\" }\n"+
		"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steepText+growText+
		`kiln in "high" { dry for 10 h }`+"\n"+`kiln in "low" { dry at air-on 55 °C for 5 h; cure at air-on 80 °C for 4 h; cool to malt 30 °C }`+"\n}\n")
	var kiln []Task
	for _, task := range list {
		if task.Kind == Load || task.Kind == Heat || task.Kind == Unload {
			kiln = append(kiln, task)
		}
	}
	require.Len(t, kiln, 5)
	for i, want := range []struct {
		kind   Kind
		where  string
		heated bool
	}{{Load, "high", false}, {Unload, "high", false}, {Load, "low", true}, {Heat, "low", true}, {Unload, "low", false}} {
		assert.Equal(t, want.kind, kiln[i].Kind, i)
		assert.Equal(t, want.where, kiln[i].Where, i)
		assert.Equal(t, want.heated, kiln[i].Temperature.Known, i)
	}
	assert.Equal(t, kiln[1].At, kiln[2].At, "in one go")
}
