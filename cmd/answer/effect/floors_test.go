package effect

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/read"
	"maltwright/sim/air"
	"maltwright/sim/forecast"
)

// nowhere reads no files.
type nowhere struct{}

func (nowhere) Read(string) ([]byte, error) { return nil, os.ErrNotExist }

const tower = `
site "maltings" { air 10 °C; humidity 75 %; water 12 °C; altitude 100 m }
grain "lot" { species barley; already green malt; moisture 44 % }
kiln "lower floor" { area 9 m2; airflow 4200 m3/h; heater 120 kW; reaches 20 to 100 °C; fired gas by indirect }
kiln "upper floor" { area 9 m2; air from "lower floor" }
`

func dried(t *testing.T, stages string) *forecast.Forecast {
	t.Helper()
	h, found := read.Load("x.malt", []byte(tower+"process \"p\" {\n make pale malt\n from 1.5 t of \"lot\"\n at \"maltings\"\n"+stages+"}\n"), ".", nowhere{})
	require.Len(t, h.Processes, 1, "%v", found)
	f, err := forecast.Run(h.Processes[0], forecast.Options{})
	require.NoError(t, err)
	require.False(t, f.BrokenOff())
	return f
}

// The same steps on the lower floor, with green malt and with malt that the floor above has dried in their
// exhaust: what the second floor saves is seen in the heat and in the fuel for a tonne of malt. No kiln
// takes less than the heat that makes vapour of its water.
func TestASecondFloorIsSeenInTheFuelForATonne(t *testing.T) {
	const lower = ` kiln in "lower floor" {
  dry at air-on 55 °C until moisture at most 10 % allow 2 to 40 h
  cure from air-on 58 to 80 °C over 2 h
  cure at air-on 83 °C for 4 h
  cool to malt 30 °C
 }
`
	one, two := dried(t, lower), dried(t, ` kiln in "upper floor" { dry for 15 h }`+"\n"+lower)
	e := compared(one, two)
	assert.InDelta(t, float64(e.FinalMoisture.Old), float64(e.FinalMoisture.New), 0.005)
	assert.InEpsilon(t, float64(e.Malt.Old), float64(e.Malt.New), 0.005)
	t.Logf("fuel for a tonne of malt: %.0f kWh on one floor, %.0f kWh on two", float64(e.FuelPerTonne.Old)/3.6e6, float64(e.FuelPerTonne.New)/3.6e6)
	assert.Less(t, e.KilnHeat.New, 0.75*e.KilnHeat.Old)
	assert.Less(t, e.FuelPerTonne.New, 0.75*e.FuelPerTonne.Old)
	assert.Greater(t, float64(e.KilnHeat.New), air.EvaporationHeat*two.Totals.KilnWater)
	assert.InEpsilon(t, float64(e.KilnHeat.New)/two.Totals.Malt*1000, float64(e.FuelPerTonne.New), 1e-9, "all that its burner gives reaches the air")
}
