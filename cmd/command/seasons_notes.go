package command

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/seasons"
)

// seasonsNotes writes below the table what changed in each batch, which weights
// cannot be, and what the marks mean.
func (p *sheet) seasonsNotes(rows []recordRow, u seasonUnits) {
	for i := range rows {
		name := words.Safe(rows[i].Batch.Name)
		for _, c := range rows[i].Batch.Changes {
			step, to := saidOf(c)
			p.para("changed", "%s: %s to %s, because %s", name, step, to, words.Safe(c.Because))
		}
		for _, d := range rows[i].Doubts {
			p.para("doubtful", "%s: %s", name, p.doubt(d))
		}
		if rows[i].process.forecast == nil && !rows[i].costly {
			p.para("no forecast", "%s: its process cannot be forecast; see maltwright check", name)
		}
		if unitsOf(&rows[i]) != u {
			p.para("units", "%s: its process has others; all are shown in those of %s", name, words.Safe(rows[0].Batch.Name))
		}
	}
	for _, m := range []struct {
		standing seasons.Standing
		mark     string
		means    string
	}{
		{seasons.Reckoned, reckonedMark, "not measured outright: reckoned with the forecast that agrees best with the record, or from the bag"},
		{seasons.Over, overMark, "more than that: not yet so far at the last reading"},
		{seasons.Under, underMark, "that or less: so far already when it was first seen"},
		{seasons.Missing, noFigure, "the record does not tell"},
	} {
		if standsIn(rows, m.standing) {
			p.para(m.mark, "%s", m.means)
		}
	}
}

// saidOf gives the step of a change, and what was done instead.
func saidOf(c model.Change) (step, to string) {
	step = c.Step.Kind.Text
	if c.Step.Number > 0 {
		step = fmt.Sprintf("%s %d", step, c.Step.Number)
	}
	return step, strings.TrimSpace(c.To.Where + " " + c.To.Range.Range.String())
}

func (p *sheet) doubt(d seasons.Doubt) string {
	what := "batch at cast"
	if d.Clean {
		what = "clean malt"
	}
	return fmt.Sprintf("the %s of %s weighs less than the dry matter that the forecast leaves in it, %s; some was lost, or a weight or the sample is wrong", what, p.mass(d.Weight), p.mass(d.Dry))
}

func standsIn(rows []recordRow, s seasons.Standing) bool {
	return slices.ContainsFunc(rows, func(r recordRow) bool {
		return slices.ContainsFunc(seasonMeasures, func(m seasonMeasure) bool { return m.of(&r).Standing == s }) ||
			s == seasons.Missing && (r.Rub == "" || r.Batch.Began.IsZero())
	})
}
