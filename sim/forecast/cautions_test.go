package forecast

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/model"
)

func TestCautionsOfHeatAreThoseOfWhatIsDone(t *testing.T) {
	const of = `grain "malt" { species barley; already kilned malt; moisture 4 % }
`
	for body, want := range map[string][]Caution{
		`kiln "k" { area 1 m2; fired electric }
process "p" { make pale malt; from 2 kg of "malt"; kiln in "k" { cure at air-on 82 °C for 4 h; cool to malt 30 °C } }`: nil,
		`kiln "k" { area 1 m2; fired gas by direct }
process "p" { make pale malt; from 2 kg of "malt"; kiln in "k" { cure at air-on 82 °C for 4 h; cool to malt 30 °C } }`: {FlueGas},
		`kiln "k" { area 1 m2; fired peat by direct }
process "p" { make smoked malt; from 2 kg of "malt"; kiln in "k" { dry at air-on 60 °C for 4 h } }`: {FlueGas, Smoke},
		`kiln "k" { area 1 m2; fired wood by indirect }
process "p" { make smoked malt; from 2 kg of "malt"; kiln in "k" { dry at air-on 60 °C for 4 h with smoke } }`: {Smoke},
		`kiln "k" { holds 20 l; tumbles yes; fired electric }
process "p" { make amber malt; from 2 kg of "malt"; kiln in "k" { roast at malt 110 °C for 1 h; cool to malt 30 °C } }`: {Roasting},
		`kiln "k" { holds 20 l; tumbles yes; fired electric }
process "p" { make black malt; from 2 kg of "malt"; kiln in "k" { cure at malt 215 °C for 1 h; cool to malt 30 °C with water 150 ml } }`: {Roasting, Steam},
	} {
		p := load(t, of+body)
		assert.Equal(t, want, ofHeat(model.Every[*model.Kilning](p)), body)
		assert.NotContains(t, Cautions(p), WetGrain, "it is bought dry")
		assert.Contains(t, Cautions(p), OldMalt)
		for _, c := range want {
			assert.Contains(t, Cautions(p), c, body)
		}
	}
}
