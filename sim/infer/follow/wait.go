package follow

import (
	"cmp"
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/sorted"
	"maltwright/lang/source"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
)

// Wait is a condition that the batch waits for, or will.
type Wait struct {
	Stage model.StageKind
	Of    model.Stage // the stage
	Text  string      // as written
	Place source.Place
	Hold  bool            // a gate statement
	Left  ensemble.Spread // s from now; negative where it held by then; Never and more where it does not come about
	Share float64         // of the members that come to it
	Open  bool            // waited for now
}

// Never is the time after which a condition is taken not to come about, s.
const Never = 60 * 86400.0

// waits gives the conditions that are open, in the order of the process.
func (f *Following) waits() []Wait {
	type key struct {
		stage model.StageKind
		at    int
		hold  bool
	}
	var order []key
	left, first := map[key][]float64{}, map[key]*gate{}
	for i := range f.members {
		for _, w := range f.members[i].waits {
			g := w.gate
			k := key{g.stage, g.place.Start, g.hold}
			if left[k] == nil {
				left[k] = nans(len(f.members))
				first[k], order = g, append(order, k)
			}
			if math.IsNaN(left[k][i]) { // a condition of a repeat is looked at again and again
				left[k][i] = w.at - f.Now
			}
		}
	}
	var out []Wait
	for _, k := range order {
		g, s := first[k], ensemble.SpreadOf(left[k])
		out = append(out, Wait{Stage: g.stage, Of: g.of, Text: g.text, Place: g.place, Hold: g.hold, Left: s, Share: s.Share})
	}
	return f.inOrder(out)
}

func nans(n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = math.NaN()
	}
	return out
}

// reached is when a condition came about, or would have, had it been waited for.
func reached(g forecast.Gate) float64 {
	if at := g.Came(); !math.IsInf(at, 1) {
		return at
	}
	return g.Ended + Never + 1
}

// rare is the share of members below which a wait, or a step to come, is left out: it is
// a matter of the far tails, such as a fourth soak.
const rare = 0.1

// inOrder sorts waits by where they stand in the process, and marks the one that is
// waited for now.
func (f *Following) inOrder(list []Wait) []Wait {
	var out []Wait
	for _, st := range f.Trial.Process.Stages {
		of := slices.DeleteFunc(slices.Clone(list), func(w Wait) bool { return w.Of != st || w.Share < rare })
		sorted.Stable(of, func(a, b Wait) int { return cmp.Compare(a.Place.Start, b.Place.Start) })
		out = append(out, of...)
	}
	for i := range out {
		out[i].Open = out[i].Of == f.Stand.Sight.Of && f.next(out[i])
	}
	return out
}

// next tells whether no other condition comes before this one.
func (f *Following) next(w Wait) bool {
	for _, g := range f.Centre.Gates {
		if g.Ended >= f.Now-1 {
			return g.Place == w.Place
		}
	}
	return false
}
