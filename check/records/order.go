package records

import (
	"fmt"
	"math"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

// How far a batch must have come for a line to be true.
const (
	anywhere = vocabulary.Anywhere
	steeping = vocabulary.Steeping
	growing  = vocabulary.Growing
	drying   = vocabulary.Drying
)

// shows tells how far the batch had come, by what was read.
func (r *record) shows(x model.Reading) vocabulary.Phase {
	switch {
	case model.After(x) != nil:
		return vocabulary.PhaseAfter(model.After(x).Kind.Text)
	case model.Clean(x):
		return drying
	case model.Is[*model.Felt](x), model.Is[*model.Turned](x), model.CountOf(x, model.Acrospire) != nil:
		return growing
	case model.Thermometer(x) != nil && r.batch.Process.BlownBed() && slices.Contains(aroundBed, model.Thermometer(x).Where):
		return vocabulary.Growing // or of the kiln
	case model.Thermometer(x) != nil:
		return vocabulary.PhaseAt(model.Thermometer(x).Where)
	}
	return anywhere
}

// aroundBed are the places of the kiln that a bed with air blown through it has too.
var aroundBed = []string{vocabulary.PlaceAirOn, vocabulary.PlaceAirOff}

// shownWords say what a line shows.
var shownWords = map[vocabulary.Phase]string{growing: "the growing piece", drying: "the kiln"}

// overlap is how long two stages may be written of together, s: a kiln is warmed up while
// the piece still withers.
const overlap = 3 * hour

const hour, day = 3600.0, 24 * 3600.0

// order finds what is not in the order of the work: a step that ends behind one that
// follows it, and a stage before the one that it comes from.
func (r *record) order() {
	list := r.batch.Readings
	r.offTheFloor()
	r.lateSteps()
	latest := -1 // the reading of the latest step so far
	for i, x := range list {
		if k := r.stageBefore(i); k >= 0 && !r.aside[i] {
			if r.shows(list[k]) == steeping && r.steepIsOver(k) && !r.aside[k] {
				f := recordOutOfOrder.At(list[k].Place(), fmt.Sprintf("this line shows the batch %s, and the steep was already over", r.still(list[k])))
				f.Related = []finding.Related{{Place: x.Place(), Message: "a line of " + shownWords[r.shows(x)]}}
				r.slip(k, f)
				continue
			}
			f := recordOutOfOrder.At(x.Place(), fmt.Sprintf("this line is of %s, and a later line shows the batch still %s", shownWords[r.shows(x)], r.still(list[k])))
			f.Related = []finding.Related{{Place: list[k].Place(), Message: "the later line"}}
			r.slip(i, f)
			continue
		}
		if model.After(x) == nil || r.aside[i] {
			continue
		}
		switch k := r.endedBefore(i); {
		case k >= 0:
			r.endsTwice(k, i)
		case latest >= 0 && r.before(model.After(x), model.After(list[latest])):
			f := recordOutOfOrder.At(model.After(x).Place, fmt.Sprintf("%s ends here after %s, which comes later in the process", stepWords(model.After(x)), stepWords(model.After(list[latest]))))
			f.Related = []finding.Related{{Place: list[latest].Place(), Message: "the step that follows it"}}
			r.slip(i, f)
			r.aside[latest] = true // either may be the wrong one
		default:
			latest = i
		}
	}
	r.earlyGrowth()
}

// weighedAgain is how long behind its end a step may be weighed once more, s.
const weighedAgain = 2 * hour

// endedBefore gives an earlier line by which the step of this one ended long before, or -1.
func (r *record) endedBefore(i int) int {
	x := r.batch.Readings[i]
	for k := range i {
		y := r.batch.Readings[k]
		after := model.After(y)
		if after == nil || r.aside[k] || x.When().IsZero() || y.When().IsZero() || !sameStep(after, model.After(x)) {
			continue
		}
		if x.When().Sub(y.When().Time).Seconds() > weighedAgain {
			return k
		}
	}
	return -1
}

// endsTwice tells of a step that ended at two times, at the one that is farther from the
// plan.
func (r *record) endsTwice(first, again int) {
	list := r.batch.Readings
	gap, wrong, other, way := list[again].When().Sub(list[first].When().Time).Seconds(), again, first, "before"
	if k := r.at(model.After(list[first])); k >= 0 {
		if due := r.steps[k].end; math.Abs(r.since(list[first].When())-due) > math.Abs(r.since(list[again].When())-due) {
			wrong, other, way = first, again, "after"
		}
	}
	f := recordOutOfOrder.At(model.After(list[wrong]).Place, fmt.Sprintf("another line says that %s ended %s %s this", stepWords(model.After(list[wrong])), hours(gap), way))
	f.Related = []finding.Related{{Place: list[other].Place(), Message: "the other line"}}
	if name := model.After(list[wrong]); name.Number == 0 && r.several(name.Kind.Text) {
		f.Hint = fmt.Sprintf("the process has several: write which one, such as after %s 2", name.Kind.Text)
	}
	r.slip(wrong, f)
}

// several tells whether the process has more than one stage or step of a kind.
func (r *record) several(kind string) bool {
	if r.batch.Process.Count(model.StageKind(kind)) > 1 {
		return true
	}
	return slices.ContainsFunc(r.steps, func(s planned) bool { return s.kind == kind && s.number > 1 })
}

// lateSteps finds a line of an earlier stage behind several of a later one: it is the
// odd one out.
func (r *record) lateSteps() {
	for k, y := range r.batch.Readings {
		first, n := -1, 0
		for i := range k {
			if r.contradicts(i, k) {
				if n++; first < 0 {
					first = i
				}
			}
		}
		if n < 2 {
			continue
		}
		f := recordOutOfOrder.At(y.Place(), fmt.Sprintf("this line shows the batch %s, and %d lines above it are of %s", r.still(y), n, shownWords[r.shows(r.batch.Readings[first])]))
		f.Related = []finding.Related{{Place: r.batch.Readings[first].Place(), Message: "the first of them"}}
		r.slip(k, f)
	}
}

// contradicts tells whether a line is of a later stage than one below it. The end of a
// step is judged by the order of the steps.
func (r *record) contradicts(i, k int) bool {
	x, y := r.batch.Readings[i], r.batch.Readings[k]
	if x.When().IsZero() || y.When().IsZero() || model.After(x) != nil || r.aside[i] || r.aside[k] || r.shows(x) < growing || r.shows(y) == anywhere || r.shows(y) >= r.shows(x) {
		return false
	}
	if model.Is[*model.Turned](y) && r.shows(x) == drying && r.stirred() {
		return false
	}
	if r.shows(y) == steeping && r.shows(x) == growing && r.batch.Process.Count(model.SteepStage) > 1 {
		return false // it is steeped again
	}
	return r.shows(x) == growing || y.When().Sub(x.When().Time).Seconds() > overlap
}

// still says what a line shows the batch to be at.
func (r *record) still(x model.Reading) string {
	if r.shows(x) == steeping {
		return "in the steep"
	}
	return "on the floor"
}

// stageBefore gives a later line of an earlier stage, or -1.
func (r *record) stageBefore(i int) int {
	for k := i + 1; k < len(r.batch.Readings); k++ {
		if r.contradicts(i, k) {
			return k
		}
	}
	return -1
}

// shownBy is how far a batch has come when a step is over.
func shownBy(name *model.StepName) vocabulary.Phase { return vocabulary.PhaseAfter(name.Kind.Text) }

// earlyShare is the share of the planned steep before which nothing grows yet, and
// repeatShare the same of one whose repeat may end sooner.
const earlyShare, repeatShare = 0.6, 0.4

// earlyGrowth finds what is read of the growing piece while the plan still steeps it by
// far, where the record has no end of a soak before it.
func (r *record) earlyGrowth() {
	steep := model.First[*model.Steep](r.batch.Process)
	if r.plan == nil || steep == nil {
		return
	}
	cast := r.castFirst(steep)
	early := earlyShare * cast
	if slices.ContainsFunc(steep.Steps, func(s model.Step) bool { return s.Kind() == model.RepeatStep }) {
		early = repeatShare * cast
	}
	for i, x := range r.batch.Readings {
		if x.When().IsZero() || model.After(x) != nil && r.shows(x) == steeping {
			continue
		}
		most := early
		if r.shows(x) == drying { // days of growing lie between
			most = cast
		}
		if r.shows(x) < growing || r.since(x.When()) >= most {
			continue
		}
		r.slip(i, recordOutOfOrder.At(x.Place(), fmt.Sprintf("this line is of %s, but it is %s after the beginning, and the steep takes %s",
			shownWords[r.shows(x)], hours(r.since(x.When())), hours(cast))))
	}
}

// castFirst is when by the plan the first steep is over, s from its beginning.
func (r *record) castFirst(steep *model.Steep) float64 {
	for _, s := range slices.Backward(r.steps) {
		if s.whole == model.Stage(steep) {
			return s.end
		}
	}
	return r.plan.Totals.SteepOut
}

// before tells whether a step comes before another in the process.
func (r *record) before(a, b *model.StepName) bool {
	if a.Kind.Text == b.Kind.Text && a.Number > 0 && b.Number > 0 {
		return a.Number < b.Number
	}
	if i, k := r.at(a), r.at(b); i >= 0 && k >= 0 {
		return i < k
	}
	if p := r.batch.Process; p.Count(model.SteepStage) > 1 && shownBy(a) <= growing && shownBy(b) <= growing {
		return false // either may be of the later one
	}
	return vocabulary.StageRank(a.Kind.Text) < vocabulary.StageRank(b.Kind.Text)
}
