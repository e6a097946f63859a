package read

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

// A house in which nobody is up for so many hours of a day, or by day, is hardly meant.
const (
	leastAwake = 4
	dayBegins  = 6
	dayEnds    = 22
)

// awakeSense notes hours of being awake that are out of the ordinary. Whoever works at
// night is right, so it is no more than a note.
func (b *builder) awakeSense(c *model.Clock) {
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
	said := ""
	switch {
	case hours == 0:
		said = fmt.Sprintf("by %s nobody is ever awake", c.Place.Text())
	case hours < leastAwake:
		said = fmt.Sprintf("%s is only %s of the day, and nearly every visit falls due when nobody is awake", c.Place.Text(), quantity.Lasting(hours*3600))
	case byDay < 1:
		said = fmt.Sprintf("%s is the night, and every visit by day falls due when nobody is awake", c.Place.Text())
	default:
		return
	}
	f := unusualFigure.At(c.Place, said)
	f.Severity = finding.Note
	f.Hint = "write when somebody can look after the grain; the first time is when the day begins"
	b.note(f)
}
