package check

import (
	"fmt"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
	"maltwright/sim/grain"
)

var lies = regexp.MustCompile(`it would lie about ([\d.]+) (m|cm) deep`)

// Where grain is out of proportion to its area the language says how deep it would lie, by figures of its
// own: they are those of the law by which the forecast has every bed of barley lie.
func TestTheDepthOfAChargeOutOfProportionIsThatOfTheForecast(t *testing.T) {
	hinted := func(text string) (float64, Report) {
		r := File("deep.malt", []byte(text), ".", house{}, Options{NoForecast: true})
		for _, f := range r.Findings {
			if m := lies.FindStringSubmatch(f.Hint); m != nil {
				made, err := quantity.Make(quantity.Part{Number: m[1], Unit: m[2]})
				require.NoError(t, err)
				return made.SI, r
			}
		}
		require.Fail(t, "no depth is told", "%v", r.Findings)
		return 0, r
	}
	const house = "site \"s\" { air 14 °C; humidity 80 %%; water 12 °C; altitude 0 m }\ngrain \"lot\" { species barley; %s }\nkiln \"kiln\" { area 1 m2 }\nfloor \"floor\" { area 1 m2 }\nprocess \"p\" {\n make pale malt\n from 1000 kg of \"lot\"\n at \"s\"\n %s\n}\n"
	onKiln := `kiln in "kiln" { dry at air-on 50 °C for 20 h; cool to malt 30 °C }`
	for _, lot := range []string{"already green malt; moisture 44 %", "moisture 12 %; germination 97 % of 100 kernels"} {
		told, r := hinted(fmt.Sprintf(house, lot, onKiln))
		room, ok := forecast.GreenRoom(r.House.Processes[0])
		require.True(t, ok)
		assert.InEpsilon(t, room, told, 0.03, lot)
	}
	barley, err := grain.Of("barley")
	require.NoError(t, err)
	told, _ := hinted(fmt.Sprintf(house, "moisture 12 %; germination 97 % of 100 kernels", `germinate on "floor" { hold bed at 15 °C; turn every 8 h; for 5 days }`))
	lot := grain.LotOf(barley, 880, 0.12/0.88)
	assert.InEpsilon(t, lot.SwollenVolume(), told, 0.03)
}
