package forecast

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// thinly forecasts so much grain that withers on 20 m², still or under a fan, and is dried on a
// kiln of 2 m² with the air of a large one.
func thinly(t *testing.T, charge, loft string) *Forecast {
	t.Helper()
	text := strings.ReplaceAll(house, "area 0.5 m2; airflow 120 m3/h; reaches 20 to 110 °C; heater 5 kW", "area 2 m2; airflow 3000 m3/h; reaches 20 to 110 °C; heater 90 kW") + "floor \"loft\" { area 20 m2" + loft + " }\n"
	text += "process \"p\" {\n make pale malt\n from " + charge + " of \"lot\"\n at \"room\"\n" + steepText + growText +
		`wither on "loft" { turn every 8 h; for 24 h }` + "\n" + kilnText + "}\n"
	f, err := Run(load(t, text), Options{})
	require.NoError(t, err)
	return f
}

func TestGrainStrewnThinlyIsForecastAndNotRefused(t *testing.T) {
	for _, loft := range []string{"", "; airflow 3000 m3/h"} {
		last := 0.0
		for _, charge := range []string{"10 kg", "0.3 kg", "0.01 kg"} {
			f := thinly(t, charge, loft)
			require.False(t, f.BrokenOff(), "%s %s: %v", charge, loft, f.Trouble)
			assert.InDelta(t, 0.045, f.Totals.FinalMoisture, 0.01)
			withered := f.Stages[2].Steps[0].MoistureEnd
			assert.Less(t, withered, 0.25, "single kernels wither in a day")
			assert.Greater(t, withered, 0.12, "no further than the air of the room lets them")
			assert.Less(t, f.Totals.KilnWater, float64(f.Process.Charge.SI), "%s", charge)
			if last > 0 {
				assert.InDelta(t, last, f.Totals.FinalMoisture, 0.003, "single kernels all dry alike")
			}
			last = f.Totals.FinalMoisture
		}
	}
}
