package serve

import (
	"context"
	"slices"
	"time"

	"maltwright/cmd/answer/noted"
	"maltwright/cmd/folder"
	"maltwright/cmd/founding"
	"maltwright/cmd/words"
	"maltwright/sim/work"
)

// readings lists the lines of the record, the newest first, under their days, each with what it comes to.
func (b *batchView) readings(v seen) {
	b.Readings = table{Class: "times", Head: []string{"At", "Line", "It comes to"}}
	told := map[int]folder.Noted{}
	for _, x := range v.notes() {
		told[x.Line] = x
	}
	day := ""
	for _, l := range slices.Backward(v.lines) {
		x := told[l.Number]
		if !x.At.IsZero() {
			if d := words.Day(x.At, v.now); d != day {
				b.Readings.Rows, day = append(b.Readings.Rows, row{Between: d}), d
			}
		}
		b.Readings.add(cellOf(clockOf(x.At, v.now)), cellOf(l.Words), comesTo(x))
	}
}

// clockOf is the time of the day, a dash where a line has none.
func clockOf(at, now time.Time) string {
	if at.IsZero() {
		return words.None
	}
	return at.In(now.Location()).Format("15:04")
}

// comesTo is what a line comes to, with why it may not be right.
func comesTo(x folder.Noted) cell {
	switch {
	case x.Danger != "":
		return cell{Text: x.Danger, Mark: dangerMark}
	case x.Doubt != "":
		return cell{Text: words.Joined("; ", x.Says, x.Doubt), Mark: "in doubt"}
	}
	return cellOf(x.Says)
}

// notes are what the lines of the record come to.
func (v seen) notes() []folder.Noted {
	return slices.Concat(v.told.Readings, v.told.Remarks)
}

// opening is what to have ready, and what to ask before the grain is wet, as long as nothing is noted.
func (b *batchView) opening(ctx context.Context, v seen) {
	if n := len(v.lines); v.on == nil || v.opened.Batch == nil || v.opened.Process == nil || n > 0 && !v.lines[n-1].Opens {
		return
	}
	o, ok := noted.Open(ctx, v.opened.Batch, work.NewPool(work.Records))
	if ok && o.Next != nil && o.Next.Time.Before(v.now) { // it has gone on since
		return
	}
	for _, lot := range v.opened.Process.Taken() {
		for _, line := range founding.BeforeItIsWet(lot.Grain) {
			b.Alarms = append(b.Alarms, mark{"before it is wet", words.Safe(line)})
		}
	}
	if o.Began = v.now; ok { // times are told as of now
		b.Notes = append(b.Notes, v.opened.Words.Opening(o)...)
	}
}
