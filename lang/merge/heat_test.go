package merge

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

const tower = "kiln \"k\" {\n  area 10 m2\n  fan 9000 m3/h at 0 Pa\n  fan 6000 m3/h at 400 Pa\n  fan 2.2 kW\n  walls brick 24 m2\n  heater 110 kW at 85 %\n}\n" +
	"process \"p\" {\n  kiln in \"k\" {\n    dry at air-on 45 °C with returns 30 % for 8 h\n    roast at malt 175 °C for 50 min\n    cool to malt 30 °C\n  }\n}\n"

func TestFactsOfAKilnAndWhatAStepIsWithMerge(t *testing.T) {
	for name, c := range map[string]struct{ ours, theirs []string }{
		"points of a curve":      {[]string{"9000 m3/h", "9500 m3/h"}, []string{"400 Pa", "450 Pa"}},
		"a point and the power":  {[]string{"  walls", "  fan 3000 m3/h at 500 Pa\n  walls"}, []string{"2.2 kW", "1.8 kW"}},
		"heater and efficiency":  {[]string{"110 kW", "120 kW"}, []string{"at 85 %", "at 90 %"}},
		"walls and what is over": {[]string{"24 m2", "26 m2"}, []string{"m2\n  heater", "m2 with insulation\n  heater"}},
		"returns and the time":   {[]string{"returns 30 %", "returns 50 % and smoke"}, []string{"for 8 h", "for 9 h"}},
		"a roast and its quench": {[]string{"for 50 min", "for 55 min"}, []string{"malt 30 °C", "malt 30 °C with water 2 l"}},
	} {
		want := edit(t, edit(t, tower, c.theirs...), c.ours...)
		if name == "walls and what is over" { // each was written for the text before
			want = edit(t, edit(t, tower, c.ours...), c.theirs...)
		}
		got, unsettled := merged(t, tower, edit(t, tower, c.ours...), edit(t, tower, c.theirs...))
		assert.Equal(t, tidy(t, want), got, name)
		assert.Zero(t, unsettled, name)
	}
	_, unsettled := merged(t, tower, edit(t, tower, "400 Pa", "450 Pa"), edit(t, tower, "400 Pa", "350 Pa"))
	assert.Equal(t, 1, unsettled)
	_, unsettled = merged(t, tower, edit(t, tower, "returns 30 %", "returns 50 %"), edit(t, tower, "returns 30 %", "returns 20 %"))
	assert.Equal(t, 1, unsettled)
}
