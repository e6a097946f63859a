package forecast

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
)

// moment finds the moment, after before and within dt, at which the stop's
// condition begins to hold, and leaves the model there.
//
// What is measured mostly moves in nearly a straight line, so a try is made at either
// side of where that line meets the bound, which is often all that it takes. Every third
// try halves what is left.
func (e *effort) moment(m *physics, before physics, s *stop, at, dt float64) (float64, error) {
	low, high, spare := 0.0, dt, physics(nil)
	for n := 1; high-low > momentWidth; n++ {
		mid := (low + high) / 2
		if share, ok := crossing(timed(before, at+low), timed(*m, at+high), s.until); ok && n%3 != 0 {
			mid = beside(low, high, low+share*(high-low), n%3 == 1)
		}
		try := before.copy(spare)
		if err := e.advance(try, mid-low, source.Place{}); err != nil {
			return high, err
		}
		if at+mid >= s.earliest && holds(timed(try, at+mid), s.until) {
			high, *m, spare = mid, try, nil
			continue
		}
		low, before, spare = mid, try, before
	}
	return high, nil
}

// beside gives the point of the try beside an estimate, behind it or before, within low
// and high.
func beside(low, high, estimate float64, behind bool) float64 {
	const by = 0.4 * momentWidth
	if !behind {
		return min(max(estimate-by, low+by), high-by)
	}
	return min(max(estimate+by, low+by), high-by)
}

// crossing gives the share of the way from a state in which a condition does not hold to
// one in which it does at which its last test comes to its bound in a straight line. It is
// false where a test that fails has no number to go by.
func crossing(from, to func(string) (float64, string, bool), c *model.Condition) (share float64, ok bool) {
	for i := range c.Tests {
		t := &c.Tests[i]
		a, word, had := from(t.Measure)
		if had && testHolds(t, a, word) {
			continue
		}
		b, _, have := to(t.Measure)
		if !had || !have || t.Word != "" || t.Bound == nil {
			return 0, false
		}
		part := (edge(t.Bound, a) - a) / (b - a)
		if !(part >= 0 && part <= 1) {
			return 0, false
		}
		share, ok = max(share, part), true
	}
	return share, ok
}

// edge is the value at which a bound begins to hold of what comes from a value that it
// does not hold of.
func edge(b *model.Bound, from float64) float64 {
	switch {
	case b.Op == quantity.AtLeast || b.Op == quantity.Above, b.Op == quantity.Is && from < b.Range.Low.SI:
		return b.Range.Low.SI
	case b.Op == quantity.AtMost || b.Op == quantity.Below, b.Op == quantity.Is:
		return b.Range.High.SI
	}
	return math.NaN()
}
