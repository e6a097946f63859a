package forecast

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The page of the limits says how soon a small drum is at 150 °C, and that more is sooner.
func TestTheDocumentSaysHowSoonADrumIsHot(t *testing.T) {
	const drum = "grain \"pale\" { species barley; already kilned malt; moisture 4 % }\nsite \"room\" { air 15 °C }\n" +
		"kiln \"drum\" { holds 20 l; tumbles yes; heater 2 kW; reaches 60 to 250 °C; fired electric }\n"
	minutes := func(asked int) float64 {
		f, err := Run(load(t, drum+fmt.Sprintf("process \"p\" {\n make amber malt\n from 4 kg of \"pale\"\n at \"room\"\n"+
			" kiln in \"drum\" { roast at malt %d °C until malt at least 150 °C allow 0 to 2 h; cool to malt 30 °C }\n}\n", asked)), Options{})
		require.NoError(t, err)
		s := f.Stages[0].Steps[0]
		require.Equal(t, ByGate, s.EndedBy)
		return (s.End - s.Start) / 60
	}
	brisk, gentle := minutes(210), minutes(175)
	text, err := os.ReadFile("../../docs/limits.md")
	require.NoError(t, err)
	assert.Contains(t, strings.Join(strings.Fields(string(text)), " "),
		"4 kg in 20 l with 2 kW and the usual vent are at 150 °C in 11 to 13 min by the forecast, sooner where 210 °C are asked than where 175 are")
	assert.InDelta(t, 12, brisk, 1.5, "210 °C")
	assert.InDelta(t, 12, gentle, 1.5, "175 °C")
	assert.Less(t, brisk, gentle)
}
