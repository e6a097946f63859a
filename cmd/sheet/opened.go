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
// section on that page. Lines for remarks and initials go before the line that begins the batch, and what
// can hurt somebody is the last to go; all of that stands on the last page then.
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
		slices.Concat(closer(opening), briefly(begin), m.hazardsInBrief(), rest),
		slices.Concat(closer(opening), m.hazardsInBrief(), rest),
	}
	for _, try := range []struct {
		first       int
		thin, whole bool
	}{{0, false, true}, {1, false, true}, {2, false, true}, {2, true, true}, {2, false, false}, {2, true, false}, {5, true, false}, {3, false, false}, {3, true, false}, {6, true, false}, {4, false, false}, {4, true, false}} {
		some := s
		if try.thin {
			some = thinned(s)
		}
		if some.first = tries[try.first]; onOnePage(some, m.size(), try.whole) {
			m.begun = (try.first < 3 || try.first == 5) && len(begin) > 0
			return some
		}
	}
	s.first, m.begun = tries[0], len(begin) > 0
	return s
}

// closer is an opening whose sums do not repeat the target: its weights have it.
func closer(opening []Block) []Block {
	out := slices.Clone(opening)
	for i, b := range out {
		if s, is := b.(Sums); is && len(s.Rows) > 3 {
			out[i] = Sums{slices.DeleteFunc(slices.Clone(s.Rows), func(r Sum) bool { return r.Label == aimLabel })}
		}
	}
	return out
}

// briefly is a line to type without what it is for.
func briefly(list []Block) (out []Block) {
	for _, b := range list {
		if c, is := b.(Code); is {
			b = Code{Line: c.Line}
		}
		out = append(out, b)
	}
	return out
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
