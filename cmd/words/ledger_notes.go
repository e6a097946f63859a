package words

import (
	"fmt"
	"slices"

	"maltwright/cmd/answer/ledger"
	"maltwright/sim/seasons"
)

// LedgerNote is a paragraph below the table of batches, behind its label.
type LedgerNote struct{ Label, Text string }

// LedgerNotes say below the table what changed in each batch, which weights cannot be,
// and what the marks mean.
func (h House) LedgerNotes(list []ledger.Batch) (notes []LedgerNote) {
	say := func(label, format string, args ...any) {
		notes = append(notes, LedgerNote{label, fmt.Sprintf(format, args...)})
	}
	for i := range list {
		b := &list[i]
		name := Safe(b.Batch)
		for _, c := range b.Changes {
			say("changed", "%s: %s to %s, because %s", name, c.Label, c.To, Safe(c.Because))
		}
		for _, r := range b.Remarks {
			who := r.At.Format("2 Jan 15:04")
			if r.By != "" {
				who += ", " + Safe(r.By)
			}
			say("remark", "%s: %s (%s)", name, Safe(r.Text), who)
		}
		for _, d := range b.Doubtful {
			say("doubtful", "%s: %s", name, h.Doubt(d))
		}
		if b.NotForecast == ledger.Unsound {
			say("no forecast", "%s: its process cannot be forecast; see maltwright check", name)
		}
		if h.otherwise(b, &list[0]) {
			say("units", "%s: its process has others; all are shown in those of %s", name, Safe(list[0].Batch))
		}
	}
	for _, m := range []struct {
		standing seasons.Standing
		mark     string
		means    string
	}{
		{seasons.Reckoned, reckonedMark, "not measured directly: taken from the forecast that agrees best with the record, from the bag, or from what the lot says"},
		{seasons.Over, overMark, "more than that: not reached at the last reading"},
		{seasons.Under, underMark, "that or less: already reached at the first look"},
		{seasons.Impossible, impossibleMark, "impossible, and left out of the figures of all batches; see maltwright check"},
		{seasons.Missing, None, "the record does not say"},
	} {
		if h.standsIn(list, m.standing) {
			say(m.mark, "%s", m.means)
		}
	}
	return notes
}

// otherwise tells whether a batch is written in other units than those of the first, in
// which all are shown.
func (h House) otherwise(b, first *ledger.Batch) bool {
	own := Of(b.Written)
	return own.System != h.System || own.Weights(float64(b.Charge)).Unit != h.Weights(float64(first.Charge)).Unit
}

func (h House) standsIn(list []ledger.Batch, standing seasons.Standing) bool {
	lines := linesOf(h, list)
	return slices.ContainsFunc(list, func(b ledger.Batch) bool {
		return slices.ContainsFunc(lines, func(m measure) bool { return m.of(&b).Standing == standing }) ||
			standing == seasons.Missing && (b.Rub == "" || b.Began.IsZero())
	})
}
