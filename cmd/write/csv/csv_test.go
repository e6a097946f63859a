package csv_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer"
	"maltwright/cmd/write/csv"
)

type row struct {
	Step        string
	Start       answer.Seconds
	Temperature *answer.Temperature
	Moisture    answer.Share `json:"moisture_wb"`
	Clock       string
}

func TestHeadsCarryTheirUnitsAndACellThatIsNotThereIsEmpty(t *testing.T) {
	var b strings.Builder
	rows := csv.New[row](&b, "clock")
	rows.Write(row{Step: "soak, 1", Start: 5400, Temperature: &answer.Temperature{Place: "water", From: 13, To: -0.04}, Moisture: 0.1240})
	rows.Write(row{Step: "=1+1", Moisture: answer.Share(math.NaN())})
	require.NoError(t, rows.Close())
	assert.Equal(t, `step,start_h,temperature_place,temperature_from_c,temperature_to_c,moisture_wb_pct
"soak, 1",1.500,water,13.0,0.0,12.40
'=1+1,0.000,,,,
`, b.String())
}

func TestNoCellActsInASpreadsheet(t *testing.T) {
	for _, text := range []string{"=2", "+2", "-2+3", "@a", "\tx", "＝1", "－1"} {
		var b strings.Builder
		rows := csv.New[struct{ Name string }](&b)
		rows.Write(struct{ Name string }{text})
		require.NoError(t, rows.Close())
		assert.Contains(t, b.String(), "\n'", text)
	}
}
