package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var turnGapLong = Rule{
	Rule: finding.Rule{Name: "turn-gap-long", Severity: finding.Caution,
		Title:  "the growing piece lies too long between turns, or is never turned",
		Why:    "the rootlets mat, and the middle of the piece gets warm and short of air: every 8 to 12 h is usual, and no longer than 8 h where the bed is warm (common practice)",
		Do:     "turn it two or three times a day",
		Bad:    "turn every 18 h",
		Good:   "turn every 8 h",
		Limits: "it needs no turns while the piece withers; a piece no deeper than 3 cm may lie twice as long"},
	Judge: func(r finding.Rule, c *Case) {
		for _, st := range model.Every[*model.Germination](c.Process) {
			switch {
			case st.Floor.Blown() && st.Floor.Tumbles.Text == vocabulary.SaidYes: // a drum turns by itself
			case st.Turn == nil:
				c.neverTurned(r, st)
			default:
				c.turnGap(r, st)
			}
		}
	},
}

const (
	usualTurn = 12 * hour
	warmTurn  = 8 * hour
	thinBed   = 0.03 // m; so thin a piece does not warm itself, and lies loose
)

// neverTurned reports a piece that is left alone for longer than from one turn to the next.
func (c *Case) neverTurned(r finding.Rule, st *model.Germination) {
	if most, ok := latest(st); !ok || most > usualTurn {
		f := r.At(st.Place(), "the growing piece is never turned")
		f.Hint = "write how often it is turned, such as turn every 8 h"
		c.Note(f)
	}
}

// latest is the longest that a stage may take, s; ok is false where it does not say.
func latest(st *model.Germination) (seconds float64, ok bool) {
	switch {
	case st.For != nil:
		return st.For.SI, true
	case st.Allow != nil && st.Allow.Latest != nil:
		return st.Allow.Latest.SI, true
	}
	return 0, false
}

func (c *Case) turnGap(r finding.Rule, st *model.Germination) {
	most, bed := usualTurn, ""
	for _, s := range holdsOf(st.Steps) {
		if middle(s.At) > c.Profile.WarmBed() {
			most, bed = warmTurn, fmt.Sprintf(" in a bed at %s", s.At.Range.Range)
			break
		}
	}
	gap, said, thin := st.Turn.SI, st.Turn.String(), false
	if st.TurnAt != nil {
		gap = st.TurnAt.Longest()
		said = st.Turn.Like(gap)
	}
	if floor := c.onFloor(st); floor != nil {
		thin = floor.Deepest <= thinBed
	}
	if thin {
		most *= 2
	}
	moved := c.Limit(vocabulary.LimitTurnGap, most)
	switch {
	case gap <= moved:
	case c.Forecast == nil && moved == most && gap <= 2*most:
		c.NotJudged(r, "the depth of the piece is not known without a forecast")
	default:
		c.Note(r.At(st.Turn.Place, fmt.Sprintf("the piece lies %s from one turn to the next%s, and %s is the longest", said, bed, st.Turn.Lasting(moved))))
	}
}
