package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/noted"
	"maltwright/cmd/words"
	"maltwright/sim/forecast"
)

// opened is the first section with what page 1 begins with: as much of it as leaves the visits of the
// section on that page, with lines for remarks and initials if that can be. What hurts somebody is the
// last to go, and all of it stands on the last page then.
func (m *maker) opened(s section) section {
	head, rest := s.first[:min(1, len(s.first))], slices.Concat(s.first[min(1, len(s.first)):], m.lastRead())
	opening, hazards := slices.Concat(m.opening(), m.unmet(), m.past()), []Block{m.hazards()}
	ready, begin := m.ready(), m.beginning()
	tries := [][]Block{
		slices.Concat(opening, ready, begin, hazards, head, rest),
		slices.Concat(opening, ready, begin, hazards, rest),
		slices.Concat(opening, begin, hazards, rest),
		slices.Concat(opening, hazards, rest),
		slices.Concat(opening, rest),
	}
	best := -1
	for _, whole := range []bool{true, false} {
		for i, first := range tries {
			if s.first = first; best < 0 && onOnePage(s, m.size(), whole) {
				best = i
			}
		}
	}
	if best < 0 && onOnePage(thinned(s), m.size(), false) { // the last of the tries
		s, best = thinned(s), len(tries)-1
	}
	best = max(best, 0)
	m.begun = best < 3 && len(begin) > 0
	s.first = tries[best]
	return s
}

// thinned is a section whose visits have no lines to note but weights.
func thinned(s section) section {
	s.visits = slices.Clone(s.visits)
	for i, v := range s.visits {
		s.visits[i].Expect = slices.DeleteFunc(slices.Clone(v.Expect), func(e string) bool { return strings.HasPrefix(e, "note read ") })
	}
	return s
}

// onOnePage tells whether the visits of a section stand on one page, as a whole one with the lines for
// remarks and initials.
func onOnePage(s section, size Size, whole bool) bool {
	s.looks, s.may, s.last = nil, nil, nil
	pages := paged(s, size)
	if len(pages) != 1 {
		return false
	}
	return !whole || slices.ContainsFunc(pages[0].Blocks, func(b Block) bool { _, is := b.(Initials); return is })
}

// ready is what to have at hand before the first visit.
func (m *maker) ready() []Block {
	if m.batch != nil || len(m.f.Stages) == 0 {
		return nil
	}
	return []Block{Words{Small: true, Text: capital(short(m.h.Ready(noted.HaveFor(m.f)))) + "."}}
}

// beginning is the line that begins the batch: it is wanted before any reading.
func (m *maker) beginning() []Block {
	if m.o.Begin == "" {
		return nil
	}
	return []Block{Code{Say: sayBegin, Line: words.Safe(m.o.Begin)}}
}

// leastMiss is from which miss of a steep on a sheet tells of it: a forecast is no better.
const leastMiss = 0.005

// unmet says which aim of a steep the forecast does not reach.
func (m *maker) unmet() (list []Block) {
	for _, t := range forecast.Troubles[forecast.TargetMissed](m.f) {
		for i, st := range m.f.Stages {
			s := steepOf(st)
			if s == nil || s.Target == nil || s.Target.Place != t.Place || len(st.Steps) == 0 {
				continue
			}
			low, high := s.Target.Low.SI, s.Target.High.SI
			if math.Max(low-t.Moisture, t.Moisture-high) < leastMiss {
				continue
			}
			side, then := "below", "too light"
			if t.Moisture > high {
				side, then = "above", "too heavy"
			}
			list = append(list, Words{Text: fmt.Sprintf("By the forecast %s ends at %s moisture, %s its aim of %s. Weigh before it ends; what to do then stands on one of the last pages, under: %s at steep-out.",
				m.called(i), words.Percent(answer.Share(t.Moisture)), side, target(s), then)})
		}
	}
	return list
}

// past says of a record whose last line is long ago that its times are.
func (m *maker) past() []Block {
	if !m.o.Past {
		return nil
	}
	return []Block{Words{Text: "Nothing was written down since " + m.until.Format(onDay+" 2006 "+onClock) + ", and that is over three days ago: the times below are reckoned from then, and are not of today. " +
		"Note what was done since, and make this sheet anew."}}
}
