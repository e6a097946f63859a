package merge

import (
	"time"

	"maltwright/lang/layout"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// timesOf gives the times of the readings of both sides; of anything but a batch none.
func timesOf(in vocabulary.Block, o, t []*syntax.Statement) map[*syntax.Statement]time.Time {
	if in != vocabulary.Batch {
		return nil
	}
	all := value.Times(o)
	for s, at := range value.Times(t) {
		all[s] = at
	}
	return all
}

// timed puts two runs of readings in the order of their times. A line without one stays
// behind that above it. It is false where some line has none above it, so that its
// place cannot be told.
func (a *alignment) timed(x, y []*item) (out []*item, ok bool) {
	if a.in != vocabulary.Batch || !a.begins(x) || !a.begins(y) {
		return nil, false
	}
	for len(x) > 0 && len(y) > 0 {
		if a.before(y[0], x[0]) {
			x, y = y, x
		}
		out, x = append(out, x[0]), x[1:]
		for len(x) > 0 && a.when(x[0]).IsZero() {
			out, x = append(out, x[0]), x[1:]
		}
	}
	return append(append(out, x...), y...), true
}

func (a *alignment) begins(run []*item) bool { return !a.when(run[0]).IsZero() }

func (a *alignment) when(it *item) time.Time { return a.times[version(it)] }

// before orders two readings of one time by what they say, so that it does not depend on
// whose is which.
func (a *alignment) before(x, y *item) bool {
	if s, t := a.when(x), a.when(y); !s.Equal(t) {
		return s.Before(t)
	}
	return layout.Statement(version(x), a.in) < layout.Statement(version(y), a.in)
}
