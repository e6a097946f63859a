package forecast

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// restedIn is a batch with long rests, in a vessel that says so much of its area.
func restedIn(t *testing.T, area string) *Forecast {
	t.Helper()
	const tub, steep = `vessel "tub" { holds 40 l }`, `steep in "tub" { soak 8 h in water at 15 °C; rest 20 h in air at 15 °C; soak 8 h in water at 15 °C; rest 20 h in air at 15 °C }`
	require.Contains(t, house, tub)
	text := strings.Replace(house, tub, `vessel "tub" { holds 40 l`+area+` }`, 1)
	return forecastOf(t, load(t, text+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steep+"\n"+growText+kilnText+"}\n"), Options{})
}

// In a deep vessel oxygen reaches less of the drained grain.
func TestTheAreaOfAVesselIsThatOfTheDrainedBed(t *testing.T) {
	depths := func(f *Forecast) (list []DrainedDepth) {
		for _, a := range f.Assumed {
			if d, ok := a.(DrainedDepth); ok {
				list = append(list, d)
			}
		}
		return list
	}
	usual, deep, shallow := restedIn(t, ""), restedIn(t, "; area 100 cm2"), restedIn(t, "; area 2000 cm2")
	assert.Equal(t, []DrainedDepth{{0.3}}, depths(usual), "it is taken for granted once")
	assert.Empty(t, depths(deep))
	grows := func(f *Forecast) float64 { return f.Totals.Total - f.Totals.SteepOut }
	t.Logf("%.1f h from the steep on in a deep tub, %.1f h at 30 cm, %.1f h in a flat one", grows(deep)/3600, grows(usual)/3600, grows(shallow)/3600)
	assert.Greater(t, grows(deep), grows(usual)+3600)
	assert.Less(t, shallow.Totals.SteepOutMoisture, usual.Totals.SteepOutMoisture, "a wide face dries more")
}
