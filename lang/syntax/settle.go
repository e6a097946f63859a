package syntax

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/calendar"
	"maltwright/lang/finding"
	"maltwright/lang/quantity"
)

// What some words mean hangs on the file that they stand in. "62 degrees" is of °F in a
// file whose other temperatures are; and where times say am or pm, "7:30" may be of the
// evening. Both are settled here, so that whoever reads the tree sees one meaning.

// degreeWords stand alone for the degree of the file. The sign alone does not: there it
// is likelier that a letter was left out.
var degreeWords = slices.DeleteFunc(quantity.Degrees(), func(w string) bool { return w == "°" || w == "º" })

// vague tells whether the meaning of a token hangs on the file, or what others mean on it.
func vague(token string) bool {
	return slices.ContainsFunc(degreeWords, func(w string) bool { return strings.HasSuffix(token, w) })
}

// settling is what a file says that its vague words hang on.
type settling struct {
	celsius, fahrenheit bool
	degrees             []*Part      // with a degree and no scale
	twelve              bool         // a time of day says am or pm
	ends                map[int]Word // by where a time of day begins, the other end of its span
	undecided           []Word       // times of day that may be of the morning or the evening
}

// settle gives the vague words of a tree their meaning, and notes what has none.
func (p *parser) settle(tree *Tree) {
	var s settling
	tree.Top.Walk(func(st *Statement) {
		s.terms(st.Terms)
		for _, c := range st.Clauses {
			s.terms(c.Terms)
		}
	})
	if s.celsius != s.fahrenheit {
		unit := "°C"
		if s.fahrenheit {
			unit = "°F"
		}
		for _, part := range s.degrees {
			part.Unit.Text = unit
		}
	}
	for _, w := range s.undecided {
		c, _ := calendar.ReadClock(w.Text)
		if c.Bare && len(c.Seconds) > 1 && s.of24(w) {
			c.Seconds = c.Seconds[:1]
		}
		if p.full() {
			return
		}
		if c.Bare || s.twelve && len(c.Seconds) > 0 {
			p.note(p.undecided(w, c, s.twelve))
		}
	}
}

// of24 tells whether the other end of the span that begins with an hour alone is of a clock of
// 24 hours: 6 to 22.
func (s *settling) of24(w Word) bool {
	to, ok := s.ends[w.Start]
	c, read := calendar.ReadClock(to.Text)
	return ok && read && c.Bare && len(c.Seconds) == 1
}

// halfDay is what the morning and the evening of a clock of twelve hours lie apart, s.
const halfDay = 12 * 3600

// undecided tells of a time of day that may be of the morning or the evening, or of an hour
// alone. One above 12 can be of one time only.
func (p *parser) undecided(w Word, c calendar.Clock, twelve bool) finding.Finding {
	place := p.place(w.Span)
	f := halfMissing.At(place, fmt.Sprintf("%s does not say am or pm, and other times here do", w.Text))
	switch {
	case c.Bare && len(c.Seconds) == 2:
		f.Message = fmt.Sprintf("%s does not say its minutes, or am or pm", w.Text)
	case c.Bare:
		f.Message = fmt.Sprintf("%s does not say its minutes", w.Text)
	}
	seconds, show := c.Seconds, calendar.Shown
	if twelve {
		show = calendar.ShownOfTwelve
	}
	if !c.Bare { // 7:30 is of one time by a clock of 24 hours, and of two beside others of twelve
		seconds = append(seconds, (seconds[0]+halfDay)%(2*halfDay))
	}
	texts := make([]string, len(seconds))
	for i, second := range seconds {
		texts[i] = show(second)
	}
	switch {
	case len(texts) > 1:
		f.Write(place, texts...)
	case len(texts) == 1:
		f.Repair(place, texts[0])
	}
	return f
}

func (s *settling) terms(list []Term) {
	for _, t := range list {
		switch t := t.(type) {
		case Bounded:
			s.terms([]Term{t.Value})
		case Amount:
			s.parts(t.Low.Parts)
			if t.High != nil {
				s.parts(t.High.Parts)
			}
		case Moment:
			s.clock(t.From.Clock)
			if t.To != nil {
				s.clock(t.To.Clock)
				if s.ends == nil {
					s.ends = map[int]Word{}
				}
				s.ends[t.From.Clock.Start] = t.To.Clock
			}
		}
	}
}

func (s *settling) parts(list []Part) {
	for i := range list {
		unit := list[i].Unit.Text
		if slices.Contains(degreeWords, unit) {
			s.degrees = append(s.degrees, &list[i])
			continue
		}
		if u, ok := quantity.Lookup(unit); ok {
			s.celsius = s.celsius || strings.HasPrefix(u.Name, "°C")
			s.fahrenheit = s.fahrenheit || strings.HasPrefix(u.Name, "°F")
		}
	}
}

// clock takes a time of day into account. 7 and 7:30 are undecided; 07:30 and 10:30 are
// written as by a clock of 24 hours.
func (s *settling) clock(w Word) {
	hour, _, timed := strings.Cut(w.Text, ":")
	switch {
	case w.Text == "":
	case ofTwelve(w.Text):
		s.twelve = true
	case !timed && bareHour(w.Text), len(hour) == 1 && hour != "0":
		s.undecided = append(s.undecided, w)
	}
}
