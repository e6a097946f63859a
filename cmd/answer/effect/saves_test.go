package effect

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

// files are texts by their names, for a house that is changed.
type files map[string][]byte

func (f files) Read(path string) ([]byte, error) {
	if text, ok := f[path]; ok {
		return text, nil
	}
	return nil, os.ErrNotExist
}

// mill forecasts a process of the old mill, in its house with some words written otherwise.
func mill(t *testing.T, file string, words ...string) *forecast.Forecast {
	t.Helper()
	folder := filepath.Join("..", "..", "..", "examples", "mill")
	text, err := os.ReadFile(filepath.Join(folder, file))
	require.NoError(t, err)
	house, err := os.ReadFile(filepath.Join(folder, "mill.malt"))
	require.NoError(t, err)
	for i := 0; i < len(words); i += 2 {
		require.Contains(t, string(house), words[i])
	}
	house = []byte(strings.NewReplacer(words...).Replace(string(house)))
	h, found := read.Load(file, text, ".", files{"mill.malt": house})
	if worst, any := finding.Worst(found); any {
		require.Less(t, worst, finding.Fault, found)
	}
	f, err := forecast.Run(h.Processes[0], forecast.Options{})
	require.NoError(t, err)
	require.False(t, f.BrokenOff(), "%v", f.Trouble)
	return f
}

// A second floor is dried by the exhaust of the first: what it saves is no more than that exhaust
// brings above the air outside, and a good part of the whole.
func TestASecondFloorSavesOfWhatItsExhaustCarries(t *testing.T) {
	one, two := mill(t, "one-floor.malt"), mill(t, "two-floor.malt")
	e := compared(one, two)
	saved := float64(e.KilnHeat.Old - e.KilnHeat.New)
	require.NotNil(t, two.Kilns[0].Fed)
	assert.Less(t, saved, two.Kilns[0].Fed.Heat)
	assert.Greater(t, saved, 0.25*float64(e.KilnHeat.Old), "a quarter at the least (common practice)")
	assert.InDelta(t, float64(e.FinalMoisture.Old), float64(e.FinalMoisture.New), 0.002, "of the same malt")
	t.Logf("one floor %.0f kWh, two %.0f, the exhaust brought %.0f", float64(e.KilnHeat.Old)/3.6e6, float64(e.KilnHeat.New)/3.6e6, two.Kilns[0].Fed.Heat/3.6e6)
}

// What a heat exchanger gives back its heater need not give. The fan moves the same air: where its
// air is a little otherwise, so is the rest.
func TestAHeatExchangerSavesWhatItGives(t *testing.T) {
	without := mill(t, "craft.malt", "  recovers 55 %\n", "")
	with := mill(t, "craft.malt")
	e := compared(without, with)
	saved := float64(e.KilnHeat.Old - e.KilnHeat.New)
	assert.InEpsilon(t, with.Totals.Energy.Recovered, saved, 0.03)
	assert.Greater(t, saved, 0.1*float64(e.KilnHeat.Old))
	assert.InDelta(t, float64(e.Total.Old), float64(e.Total.New), 1800, "and takes no longer")
	t.Logf("without %.0f kWh, with %.0f, recovered %.0f", float64(e.KilnHeat.Old)/3.6e6, float64(e.KilnHeat.New)/3.6e6, with.Totals.Energy.Recovered/3.6e6)
}
