package check

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
)

const roastBook = `grain "Pale" { species barley; already kilned malt; moisture 4.5 % }
site "Shed" { air 12 °C; humidity 60 %; water 10 °C; altitude 0 m }
kiln "drum" { holds 20 l; tumbles yes; reaches 40 to 250 °C; heater 4 kW; fired electric }
process "Brown" {
  make brown malt
  from 5 kg of "Pale"
  at "Shed"
  kiln in "drum" { roast at malt 165 °C for 40 min; cool to malt 40 °C with water 0.2 l }
  store in "bin" for at least 2 weeks
}
batch "26-01" of "Brown" {
  began 2026-03-01 10:00
  changed cool to water `

// A change of the water of a quench is judged as the process itself would be.
func TestWaterThatARecordPoursOnARoastIsJudged(t *testing.T) {
	told := func(water string) bool {
		r := File("26-01.malt", []byte(roastBook+water+" because \"it glowed\"\n  read malt 164 °C at 10:39\n}\n"), ".", house{}, Options{})
		return slices.ContainsFunc(r.Findings, func(f finding.Finding) bool { return f.Rule == "change-doubtful" })
	}
	assert.True(t, told("200 l"))
	assert.True(t, told("2 l"))
	assert.False(t, told("0.3 l"))
}

func TestWaterOnMaltTooCoolToBoilItOffIsSaidToWetIt(t *testing.T) {
	dried := strings.Replace(roastBook, "roast at malt 165 °C for 40 min", "dry at malt 60 °C for 60 min", 1)
	r := File("26-01.malt", []byte(dried+"2 l because \"it glowed\"\n  read malt 58 °C at 10:39\n}\n"), ".", house{}, Options{})
	said := slices.IndexFunc(r.Findings, func(f finding.Finding) bool { return f.Rule == "change-doubtful" })
	require.GreaterOrEqual(t, said, 0)
	assert.Equal(t, "cool was changed to 2 l of water, and malt at 60 °C boils none of it off: the water wets the malt", r.Findings[said].Message)
}
