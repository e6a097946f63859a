package process

import (
	"fmt"

	"maltwright/lang/finding"
)

// A house in which nobody is up for so many hours of a day, or by day, is hardly meant.
const (
	leastAwake = 4
	dayBegins  = 6
	dayEnds    = 22
)

// awakeSense notes hours of being awake that are out of the ordinary. Whoever works at
// night is right, so it is no more than a note.
func (b *builder) awakeSense(c *Clock) {
	hours, byDay := 0.0, 0.0
	for second := 0; second < 24*3600; second += 60 {
		if !c.Awake(second) {
			continue
		}
		hours += 1.0 / 60
		if second >= dayBegins*3600 && second < dayEnds*3600 {
			byDay += 1.0 / 60
		}
	}
	odd := ""
	switch {
	case hours < leastAwake:
		odd = fmt.Sprintf("nobody is awake for more than %.2g h of the day", hours)
	case byDay < 1:
		odd = "nobody is awake by day"
	default:
		return
	}
	f := unusualFigure.At(c.Place, fmt.Sprintf("by %s %s, and every visit falls into the night", c.Place.Text(), odd))
	f.Severity = finding.Note
	f.Hint = "write when somebody can look after the grain; the first time is when the day begins"
	b.note(f)
}
