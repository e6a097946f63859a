package kiln_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
	"maltwright/sim/air"
	drives "maltwright/sim/draught"
	"maltwright/sim/kiln"
)

const (
	coolingBegin = "<!-- cooling: begin (made by go test ./sim/kiln with MALTWRIGHT_UPDATE=1) -->\n"
	coolingEnd   = "<!-- cooling: end -->\n"
)

// The document has a table of how long malt takes to cool, with what its sentences say of it.
func TestHowLongMaltTakesToCoolStandsInTheDocument(t *testing.T) {
	hours := func(load float64, kit kiln.Equipment) float64 {
		return cools(t, bed(t, cured(t, load, kit), kit, kiln.Ambient{T: room, RH: 0.6}), 60*86400) / 3600
	}
	row := func(what string, cell func(load float64) string) string {
		cells := []string{what}
		for _, load := range loads {
			cells = append(cells, cell(load))
		}
		return "| " + strings.Join(cells, " | ") + " |\n"
	}
	const each = 8.0 / 3600 // m³/s for each kg of green malt
	outside, err := air.FromRH(room, 0.6, air.StandardPressure)
	require.NoError(t, err)
	least := heat() / (1 + dry(0.45)) / (each / outside.Volume() * (air.DryAirHeat + air.VapourHeat*outside.W)) * (hot - cool) / (hot - room) / 3600
	standing, blown := map[float64]float64{}, map[float64]float64{}
	table := row("dry matter, kg/m²", func(load float64) string { return fmt.Sprintf("%.3g", load) }) +
		"|" + strings.Repeat("---|", len(loads)+1) + "\n" +
		row("depth, cm", func(load float64) string {
			return fmt.Sprintf("%.2g", 100**cured(t, load, kiln.Equipment{Area: 1}).Depth)
		}) +
		row("in still air, h", func(load float64) string {
			standing[load] = hours(load, kiln.Equipment{Area: 4, Airflow: 0.5, Cools: nothing})
			return fmt.Sprintf("%.2g", standing[load])
		}) +
		row("under 8 m³/h for each kg, h", func(load float64) string {
			blown[load] = hours(load, kiln.Equipment{Area: 1, Airflow: load * (1 + dry(0.45)) * each})
			if blown[load] < least {
				return fmt.Sprintf("%.2g, as in still air", blown[load])
			}
			return fmt.Sprintf("%.2g", blown[load])
		}) +
		row("by a chimney of 6 m over 4 m², h", func(load float64) string {
			return fmt.Sprintf("%.2g", hours(load, kiln.Equipment{Area: 4, Airflow: 12, Cools: &drives.Way{Above: 6, Opening: 0.2}}))
		})
	table = strings.ReplaceAll(table, "e+02 ", "00 ")
	golden.Between(t, "../../docs/model.md", coolingBegin, coolingEnd, "\n"+table+
		fmt.Sprintf("\nThe air of that fan alone takes %.2g h at the least.\n\n", least))
	assert.InEpsilon(t, standing[1], blown[1], 0.05, "a thin layer cools as in still air")
	assert.Less(t, blown[10], 7.0/60, "a tray under a fan is cool in less than seven minutes")
	assert.Less(t, standing[100], 12.0)
	assert.Greater(t, standing[300], 12.0, "a deep bed in still air is not cool within a cooling's 12 h")
}
