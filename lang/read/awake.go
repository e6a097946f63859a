package read

import (
	"fmt"
	"slices"
	"strings"

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

// shiftSense notes hours of being awake that are out of the ordinary. Whoever works at
// night is right, so it is no more than a note.
func (b *builder) shiftSense(s *model.Site) {
	if len(s.Awake) == 0 {
		return
	}
	b.idleShifts(s.Awake)
	hours, byDay := s.Waking()/3600, 0.0
	for second := dayBegins * 3600; second < dayEnds*3600; second += 60 {
		if s.Up(second) {
			byDay += 1.0 / 60
		}
	}
	texts := make([]string, len(s.Awake))
	for i, shift := range s.Awake {
		texts[i] = shift.Place.Text()
	}
	said, text := "", strings.Join(texts, " and ")
	switch {
	case hours == 0:
		said = fmt.Sprintf("%s leaves no time when somebody is awake", text)
	case hours < leastAwake:
		said = fmt.Sprintf("%s is only %s of the day, and nearly every visit falls due when nobody is awake", text, quantity.Lasting(hours*3600))
	case byDay < 1:
		said = fmt.Sprintf("%s is the night, and every visit by day falls due when nobody is awake", text)
	default:
		return
	}
	f := unusualFigure.At(s.Awake[0].Place, said)
	f.Severity = finding.Note
	f.Hint = "write when somebody can look after the grain; the first time is when the day begins"
	b.note(f)
}

// idleShifts reports each shift in which somebody is up anyway, and that brings no hands.
func (b *builder) idleShifts(list []model.Shift) {
	for i, shift := range list {
		others := model.Hours{Awake: slices.Delete(slices.Clone(list), i, i+1)}
		if len(others.Awake) == 0 || shift.Hands != nil || addsTo(others, shift.Clock) {
			continue
		}
		f := unusualFigure.At(shift.Place, fmt.Sprintf("another line already has somebody awake from %s, and this one brings no hands", shift.Place.Text()))
		f.Hint = "take the line out, or write with how many hands"
		b.note(f)
		return
	}
}

// addsTo tells whether somebody is up at a time at which nobody else is.
func addsTo(others model.Hours, c model.Clock) bool {
	for second := 0; second < 24*3600; second += 60 {
		if c.Awake(second) && !others.Up(second) {
			return true
		}
	}
	return false
}
