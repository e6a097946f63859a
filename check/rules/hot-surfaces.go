package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var hotSurfaces = Rule{
	Rule: finding.Rule{Name: "hot-surfaces", Severity: finding.Note,
		Title: "somebody has to reach into a kiln that burns the skin",
		Why:   "bare metal at 60 °C burns the skin within seconds (ISO 13732-1, from memory), and the air of a roast scalds on opening the door",
		Do:    "let it cool, or work with long gloves, covered arms and a tool with a long handle; keep children away" + localCodes,
		Bad:   "stir every 2 h\ncure at air-on 82 °C for 5 h",
		Good:  "cure at air-on 82 °C for 5 h",
		Limits: "every kiln is hot: it reports only malt that is stirred at more than 60 °C, or heated above 100 °C, " +
			"and does not know of a stirrer worked from outside"},
	Judge: eachKilning(func(r finding.Rule, c *Case, st *model.Kilning, _ *model.Kiln) {
		s, hot := c.hottestOf(st.Steps)
		switch {
		case hot > roasting:
			c.Note(r.At(s.Place(), fmt.Sprintf("the kiln is at %s when somebody opens it to look or to take the malt out", c.Degrees(hot))))
		case hot > burning && st.Stir != nil:
			f := r.At(st.Stir.Place, fmt.Sprintf("the malt is stirred every %s while the kiln is up to %s hot", st.Stir, c.Degrees(hot)))
			f.Related = []finding.Related{{Place: s.Place(), Message: "the hottest step"}}
			c.Note(f)
		}
	}),
}

const (
	burning  = 60.0  // °C of metal that burns within seconds
	roasting = 100.0 // °C above which opening the door scalds
)

// hottestOf gives the first of the hottest steps, and how hot it is, °C.
func (c *Case) hottestOf(steps []model.Step) (which model.Step, hot float64) {
	for _, s := range steps {
		if t, _, _, ok := c.given(s); ok && (which == nil || t.SI-zeroC > hot) {
			which, hot = s, t.SI-zeroC
		}
	}
	return which, hot
}
