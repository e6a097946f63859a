package forecast

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/source"
)

// Left is a condition that did not hold when the record says that what waits for it had ended.
type Left struct {
	Of       model.Stage // the stage
	Text     string      // as written
	Place    source.Place
	Hold     bool    // a gate statement; otherwise an until
	At       float64 // s from the first soak
	Moisture float64 // of the grain or malt then, wet basis, 0 to 1
	Tests    []Came
}

// Came is what one test of a condition came to.
type Came struct {
	Test  *model.Test
	SI    float64 // NaN of a word, and of what the stage does not tell
	Word  string
	Holds bool
}

// leave writes down that a condition did not hold when the record left it.
func (r *run) leave(st model.Stage, m physics, c *model.Condition, began float64, hold bool) {
	l := Left{Of: st, Text: c.Place.Text(), Place: c.Place, Hold: hold, At: r.clock, Moisture: m.moisture()}
	for i := range c.Tests {
		t := &c.Tests[i]
		si, word, ok := timed(m, r.clock-began)(t.Measure)
		if !ok || t.Word != "" {
			si = math.NaN()
		}
		l.Tests = append(l.Tests, Came{t, si, word, failing(timed(m, r.clock-began), &model.Condition{Tests: c.Tests[i : i+1]}) == nil})
	}
	r.f.Left = append(r.f.Left, l)
}
