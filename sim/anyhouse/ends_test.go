package anyhouse

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

// led is a house whose box and kiln lead so much of their air round, per cent.
func led(t *testing.T, share string) (*model.Process, []finding.Finding) {
	t.Helper()
	h, found := read.Load("any.malt", []byte(fmt.Sprintf(`grain "lot" { species barley; moisture 12 %% }
site "site" { air 14 °C; humidity 70 %%; water 12 °C }
vessel "tub" { holds 400 l }
floor "box" { area 0.4 m2; airflow 60 m3/h; heater 1 kW; cooler 1 kW; returns %[1]s %% }
kiln "kiln" { area 0.6 m2; airflow 500 m3/h; returns %[1]s %% }
process "p" {
  make pale malt
  from 100 kg of "lot"
  at "site"
  steep in "tub" { soak 7 h in water; rest 9 h in air; soak 7 h in water }
  germinate on "box" { hold bed at 14 to 16 °C; for 4 days }
  kiln in "kiln" { dry at air-on 50 °C for 10 h; stew at malt 60 °C for 1 h }
}
`, share)), ".", nowhere{})
	require.NotEmpty(t, h.Processes)
	return h.Processes[0], found
}

// What the language lets a house lead round is what box and kiln can reckon with, and no
// less than shut flaps lead round in a stew.
func TestTheLanguageLetsAHouseLeadRoundWhatTheModelsTake(t *testing.T) {
	p, found := led(t, "98")
	for _, f := range found {
		assert.Less(t, f.Severity, finding.Fault, f.Message)
	}
	f, err := forecast.Run(p, forecast.Options{})
	require.NoError(t, err)
	assert.False(t, f.BrokenOff(), "%v", f.Trouble)
	_, found = led(t, "98.1")
	faults := 0
	for _, f := range found {
		if f.Severity == finding.Fault {
			assert.Contains(t, f.Message, "outside 0 to 98 %")
			faults++
		}
	}
	assert.Equal(t, 2, faults)
}
