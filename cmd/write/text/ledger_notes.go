package text

import (
	"slices"

	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/words"
	"maltwright/sim/seasons"
)

// ledgerNotes writes below the table what changed in each batch, which weights cannot be,
// and what the marks mean.
func (s *Sheet) ledgerNotes(list []ledger.Batch) {
	for i := range list {
		b := &list[i]
		name := words.Safe(b.Batch)
		for _, c := range b.Changes {
			s.para("changed", "%s: %s to %s, because %s", name, c.Label, c.To, words.Safe(c.Because))
		}
		for _, r := range b.Remarks {
			who := r.At.Format("2 Jan 15:04")
			if r.By != "" {
				who += ", " + words.Safe(r.By)
			}
			s.para("remark", "%s: %s (%s)", name, words.Safe(r.Text), who)
		}
		for _, d := range b.Doubtful {
			s.para("doubtful", "%s: %s", name, s.Doubt(d))
		}
		if b.NotForecast == ledger.Unsound {
			s.para("no forecast", "%s: its process cannot be forecast; see maltwright check", name)
		}
		if s.otherwise(b, &list[0]) {
			s.para("units", "%s: its process has others; all are shown in those of %s", name, words.Safe(list[0].Batch))
		}
	}
	for _, m := range []struct {
		standing seasons.Standing
		mark     string
		means    string
	}{
		{seasons.Reckoned, reckonedMark, "not measured directly: taken from the forecast that agrees best with the record, or from the bag"},
		{seasons.Over, overMark, "more than that: not reached at the last reading"},
		{seasons.Under, underMark, "that or less: already reached at the first look"},
		{seasons.Impossible, impossibleMark, "impossible, and left out of the figures of all batches; see maltwright check"},
		{seasons.Missing, words.None, "the record does not say"},
	} {
		if s.standsIn(list, m.standing) {
			s.para(m.mark, "%s", m.means)
		}
	}
}

// otherwise tells whether a batch is written in other units than those of the first, in
// which all are shown.
func (s *Sheet) otherwise(b, first *ledger.Batch) bool {
	h := words.Of(b.Written)
	return h.System != s.System || h.Weights(float64(b.Charge)).Unit != s.Weights(float64(first.Charge)).Unit
}

func (s *Sheet) standsIn(list []ledger.Batch, standing seasons.Standing) bool {
	lines := linesOf(s.House, list)
	return slices.ContainsFunc(list, func(b ledger.Batch) bool {
		return slices.ContainsFunc(lines, func(m measure) bool { return m.of(&b).Standing == standing }) ||
			standing == seasons.Missing && (b.Rub == "" || b.Began.IsZero())
	})
}
