package folder

import (
	"context"

	"maltwright/cmd/answer/noted"
	"maltwright/cmd/founding"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/work"
)

// BeforeItIsWet says what is not known of the lots of a batch, a line each: this is the last moment at
// which it can be asked.
func BeforeItIsWet(b *model.Batch) (lines []string) {
	if b.Process == nil {
		return nil
	}
	lots := []*model.Grain{b.Process.Grain}
	if len(b.Process.Lots) > 0 {
		lots = lots[:0]
		for _, lot := range b.Process.Lots {
			lots = append(lots, lot.Grain)
		}
	}
	for _, lot := range lots {
		lines = append(lines, founding.BeforeItIsWet(lot)...)
	}
	return lines
}

// First says what comes first in a batch that was begun.
type First struct {
	Says   []string // what to have ready, and what is due first
	Weight string   // that is forecast for the first line
	Line   string   // the first line to note; "" where nothing is weighed
}

// FirstOf says what comes first in a batch. It is empty where the batch cannot be forecast.
func FirstOf(ctx context.Context, b *model.Batch) (first First) {
	if b.Process == nil || b.Broken {
		return first
	}
	o, ok := noted.Open(ctx, b, work.NewPool(work.Records))
	if !ok {
		return first
	}
	h := words.OfBatch(b.Process, b)
	first.Says = h.Opening(o)
	if o.First != nil {
		first.Weight, first.Line = h.FirstWeight(*o.First), h.FirstLine(*o.First)
	}
	return first
}
