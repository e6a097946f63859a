package forecast

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/vocabulary"
)

// trivial is what every measure comes to within hours.
var trivial = map[string]string{
	"moisture": "moisture at least 1 %", "weight": "weight at least 1 g", "chit": "chit at least 0 %", "acrospire": "acrospire at least 0",
	"rub": "rub is gummy", "air-off": "air-off at least 1 °C", "malt": "malt at least 1 °C", "bed": "bed at least 1 °C", "time": "time at least 1 h",
}

// A measure that the language allows and a model does not know would be waited for in
// vain, and the maltster would be told that his grain is not ready.
func TestEveryMeasureIsKnownToTheModelOfEachStage(t *testing.T) {
	for _, m := range vocabulary.Measures() {
		if m.Bare {
			continue // the break is of deep beds, and no drying front climbs through this one
		}
		for _, in := range m.In {
			t.Run(m.Word+" in "+string(in), func(t *testing.T) {
				test := trivial[m.Word]
				require.NotEmpty(t, test)
				g := written(t, run1(t, askedIn(in, test)), test)
				assert.True(t, g.Met, "%s", test)
			})
		}
	}
}

// askedIn is a process that waits for the test in a block.
func askedIn(in vocabulary.Block, test string) string {
	steep, grow, wither, kiln := steepText, growText, "", kilnText
	gate := "; gate " + test + " allow 0 to 3 h }"
	switch in {
	case vocabulary.Steep:
		steep = strings.Replace(steep, " }", gate, 1)
	case vocabulary.Repeat:
		steep = fmt.Sprintf("steep in \"tub\" { soak 7 h in water at 14 °C; repeat at most 3 times until %s { rest 9 h in air at 14 °C; soak 6 h in water at 14 °C } }\n", test)
	case vocabulary.Germinate:
		grow = strings.Replace(grow, " }", gate, 1)
	case vocabulary.Wither:
		wither = "wither on \"tray\" { air at 20 °C; for 6 h" + gate + "\n"
	case vocabulary.Kiln:
		kiln = strings.Replace(kiln, "; cool", "; gate "+test+" allow 0 to 3 h; cool", 1)
	}
	return steep + grow + wither + kiln
}
