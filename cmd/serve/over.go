package serve

import (
	"cmp"
	"context"
	"slices"
	"time"

	"maltwright/cmd/folder"
	"maltwright/cmd/words"
	"maltwright/lang/sorted"
)

// came is what came of a batch that is over. Where it cannot be had, its lines still stand.
func (b *batchView) came(s *server, ctx context.Context, v seen) {
	rows, err := s.keep.Came(ctx, v.brief.ID)
	rows = slices.Clone(rows) // they are kept
	if err != nil {
		return
	}
	b.Came = table{Class: "spread", Head: []string{"figure", "it came to", "known how"}}
	sorted.Stable(rows, func(a, b words.LedgerRow) int { return cmp.Compare(rank(a), rank(b)) })
	group := ""
	for _, r := range rows {
		if r.Group != group && r.Group != "" {
			b.Came.Rows, group = append(b.Came.Rows, row{Between: r.Group}), r.Group
		}
		b.Came.add(cellOf(r.Label), figure(r.Value), figure(r.Standing))
	}
}

// rank is 0 for what a maltster asks for first: what became of the malt.
func rank(r words.LedgerRow) int {
	if r.Group == "malt" {
		return 0
	}
	return 1
}

// missed says what should have left a line in the record by now, and what to do about it.
func (b *batchView) missed(list []folder.Due, now time.Time) {
	if len(list) == 0 {
		return
	}
	b.MissedSays = words.Many(len(list), "visit left", "visits left") + " no line in the record: write down what was done, each with its time; what was not done, say in a remark"
	b.Missed = table{Class: "times", Head: []string{"Was due", "To do", "Scale"}}
	for _, d := range list {
		b.Missed.add(cellOf(words.Clock(d.At, now)), cellOf(d.Says), figure(expected(d)))
	}
}
