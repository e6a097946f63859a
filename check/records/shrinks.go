package records

import (
	"fmt"
	"math"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/infer/evidence"
)

// shrinksLeast is by how much of a kernel the mean acrospire must have become shorter to be
// told of beside a growth that is expected.
const shrinksLeast = 0.05

// shrinks finds acrospires that are shorter than at a count before, while the piece should
// have grown: chance alone explains a small step back, but not beside a day of growth.
func (r *record) shrinks(h *held, i int) {
	o := &h.trial.Observations[i]
	if !ofAcrospires(o) || r.aside[h.seats[i]] || math.IsNaN(h.off[i]) {
		return
	}
	for k := i - 1; k >= 0; k-- {
		x := &h.trial.Observations[k]
		if !ofAcrospires(x) || r.aside[h.seats[k]] || math.IsNaN(h.off[k]) || x.Value-o.Value < shrinksLeast {
			continue
		}
		if apart := (h.off[k]*x.Error - h.off[i]*o.Error) / math.Hypot(x.Error, o.Error); apart <= backwards {
			continue
		}
		wrong, other := i, k
		if math.Abs(h.off[k]) > math.Abs(h.off[i]) {
			wrong, other = k, i
		}
		r.slip(h.seats[wrong], r.shrunk(h, wrong, other))
		return
	}
}

func ofAcrospires(m *evidence.Observation) bool {
	c := model.CountOf(m.Reading, model.Acrospire)
	return c != nil && len(c.Kernels) > 0
}

// shrunk says that a count goes against another, and whether it fits the other way round.
func (r *record) shrunk(h *held, wrong, other int) finding.Finding {
	o := &h.trial.Observations[wrong]
	said, place := words(o.Reading)
	f := readingDoubtful.At(place, said+": growth never goes back")
	f.Hint = "look at the numbers, and count more kernels"
	if turned, length := turnedRound(o); fits(o, length, o.Expect(h.centre, h.offset)) {
		f.Hint = fmt.Sprintf("it would fit with the numbers in reverse order, from the shortest: %s", turned)
	}
	f.Related = []finding.Related{{Place: h.trial.Observations[other].Reading.Place(), Message: "it contradicts this"}}
	return f
}

// turnedRound gives a count with its numbers the other way round, and its mean length.
func turnedRound(m *evidence.Observation) (numbers string, length float64) {
	counts := slices.Clone(m.Reading.(*model.Counted).Kernels)
	slices.Reverse(counts)
	for i, c := range counts {
		if i > 0 {
			numbers += " "
		}
		numbers += fmt.Sprintf("%.0f", c.SI)
	}
	length, _ = evidence.MeanLength(counts)
	return numbers, length
}
