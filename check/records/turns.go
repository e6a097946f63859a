package records

import (
	"cmp"
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/sorted"
	"maltwright/lang/vocabulary"
)

const (
	unturnedTimes = 2.5       // as long as from one turn to the next
	unturnedLeast = 20 * hour // and at the least
	fewTurns      = 4         // a record with fewer of them does not note them
)

// unturned finds a piece that nothing says was turned, in a record that notes turns.
func (r *record) unturned() {
	for i, st := range model.Every[*model.Germination](r.batch.Process) {
		if st.Turn != nil {
			r.unturnedIn(st, r.linesOf(i+1))
		}
	}
}

// linesOf gives the places of the lines up to the end of the growth of a number, behind that
// of the one before it.
func (r *record) linesOf(number int) (list []int) {
	grown := 1
	for i, x := range r.batch.Readings {
		if grown == number {
			list = append(list, i)
		}
		if after := model.After(x); after != nil && endsGrowth(after.Kind.Text) {
			grown = max(grown+1, after.Number+1)
		}
	}
	return list
}

// unturnedIn looks at the lines of one floor.
func (r *record) unturnedIn(st *model.Germination, lines []int) {
	most := max(unturnedTimes*st.Turn.SI, unturnedLeast)
	turns := r.turns(lines)
	if !slices.ContainsFunc(r.batch.Readings, func(x model.Reading) bool { return model.Is[*model.Turned](x) }) {
		r.neverTurned(st.Turn, lines)
		return
	}
	if len(turns) < fewTurns || middleGap(turns) > 1.6*st.Turn.SI {
		return
	}
	for k := 1; k < len(turns); k++ {
		gap := turns[k].When().Sub(turns[k-1].When().Time).Seconds()
		if gap <= most {
			continue
		}
		f := pieceUnturned.At(turns[k].Place(), fmt.Sprintf("no line says that the piece was turned in the %s before this, and the process turns it every %s", hours(gap), st.Turn))
		f.Related = []finding.Related{{Place: turns[k-1].Place(), Message: "the last line before this that shows it turned"}}
		r.note(f)
		return
	}
}

const (
	neverLooks = 8       // lines of the growing piece from which on its turns would be among them
	neverSpan  = 2 * day // that they must be apart
)

// neverTurned finds a growing piece that is looked at for days and of which no line says
// that it was turned, where the process asks for turns.
func (r *record) neverTurned(every *model.Quantity, lines []int) {
	var looks []model.Reading
	for _, i := range lines {
		x := r.batch.Readings[i]
		if model.After(x) != nil && endsGrowth(model.After(x).Kind.Text) {
			break
		}
		if !x.When().IsZero() && !r.aside[i] && ofPiece(x) {
			looks = append(looks, x)
		}
	}
	if len(looks) < neverLooks {
		return
	}
	first, last := looks[0], looks[len(looks)-1]
	over := last.When().Sub(first.When().Time).Seconds()
	if over < max(neverSpan, unturnedTimes*every.SI) {
		return
	}
	f := pieceUnturned.At(r.batch.Place, fmt.Sprintf("the growing piece was looked at %d times in %s, and no line says that it was turned; the process turns it every %s", len(looks), hours(over), every))
	f.Related = []finding.Related{{Place: first.Place(), Message: "the first look at it"}, {Place: last.Place(), Message: "the last"}}
	f.Hint = "write each turn, such as: turned at 06:30; if you do not note turns, accept it and say so"
	r.note(f)
}

// ofPiece tells whether a line was written beside the growing piece.
func ofPiece(x model.Reading) bool {
	return model.Is[*model.Felt](x) || model.Is[*model.Counted](x) || model.Thermometer(x) != nil && model.Thermometer(x).Where == vocabulary.PlaceBed
}

// turns lists the turns while the piece grew, and the end of the growing behind them.
func (r *record) turns(lines []int) []model.Reading {
	var list []model.Reading
	for _, i := range lines {
		x := r.batch.Readings[i]
		if x.When().IsZero() || r.aside[i] {
			continue
		}
		ends := model.After(x) != nil && endsGrowth(model.After(x).Kind.Text)
		if model.Is[*model.Turned](x) || ends && len(list) > 0 {
			list = append(list, x)
		}
		if ends {
			break
		}
	}
	return list
}

// endsGrowth tells whether the piece no longer grows on its floor at the end of a step.
func endsGrowth(step string) bool {
	return step == vocabulary.VerbGerminate || vocabulary.StageRank(step) > vocabulary.StageRank(vocabulary.VerbGerminate)
}

func middleGap(turns []model.Reading) float64 {
	var gaps []float64
	for k := 1; k < len(turns); k++ {
		gaps = append(gaps, turns[k].When().Sub(turns[k-1].When().Time).Seconds())
	}
	sorted.Stable(gaps, cmp.Compare)
	return gaps[len(gaps)/2]
}
