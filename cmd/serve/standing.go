package serve

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/folder"
	"maltwright/cmd/words"
)

// followed is what is said of a batch by all of its readings, with the band of each figure.
func (b *batchView) followed(v seen) {
	if v.on == nil {
		return
	}
	f := v.on.Followed
	if f == nil {
		if v.on.Unsound == "" && len(v.on.Readings) > 0 {
			b.Notes = append(b.Notes, "How sure this is, is being reckoned from all readings; it takes a minute.")
		}
		return
	}
	r, h := f.Result, v.on.House
	head := []string{"figure", "middle", "8 cases in 10"}
	b.Stage, b.Now = words.Where(r), table{Class: "spread", Head: head}
	for _, x := range h.Standing(r) {
		b.Now.add(cellOf(x.What), figure(x.Middle), figure(x.Within()))
	}
	b.asOf(r.At, words.AsOf[r.AsOf], len(v.told.Readings) > 0, v.now)
	if b.NowAsOf == "" {
		b.NowAsOf = "By all readings."
	}
	if f.Stale {
		b.NowAsOf += " The record is another since; it is being reckoned anew."
	}
	b.Longer, b.Further = table{Class: "spread", Head: head}, table{Class: "spread", Head: head}
	for i, w := range r.Waits {
		to := &b.Further
		if i == 0 {
			to = &b.Longer
		}
		to.add(b.wait(r, w, v.now)...)
		if said := words.NotComing(w); i == 0 && r.Posterior.Trusted && said != "" {
			b.Notes = append(b.Notes, said)
		}
	}
	if said := words.Agree(r); said != "" {
		b.Notes = append(b.Notes, "Readings: "+said+"."+warned(v))
	}
	if !r.Posterior.Trusted {
		b.Notes = append(b.Notes, "Do not trust these figures: "+words.FewAgree(r.Posterior)+". Weigh and count once more: this batch may go as no forecast does.")
	}
	for _, x := range r.Readings {
		if said := h.Suspect(x); said != "" {
			b.Doubts = append(b.Doubts, mark{"in doubt", said})
		}
	}
}

// asOf says as of when the figures are, and why where that is not now. Any tells that something was read.
func (b *batchView) asOf(at time.Time, why string, any bool, now time.Time) {
	b.At, b.NowHead, b.NowAsOf = at, "Now", ""
	if why, _, _ = strings.Cut(why, ";"); why != "" { // what comes behind is of a command line
		if b.At = (time.Time{}); !any {
			why = "when it began, because nothing was read since"
		}
		b.NowHead, b.NowAsOf = words.Clock(at, now), fmt.Sprintf("As of %s: that is %s.", words.Clock(at, now), why)
	}
}

// warned says beside readings that agree that a remark tells of what no figure shows.
func warned(v seen) string {
	if !slices.ContainsFunc(v.told.Remarks, func(n folder.Noted) bool { return n.Danger != "" }) {
		return ""
	}
	return " That is of the figures alone: a remark tells of a danger, and no figure shows it."
}

// wait is how much longer a condition takes, and when that will be.
func (b *batchView) wait(r progress.Result, w progress.Wait, now time.Time) []cell {
	at := func(left answer.Seconds) string {
		if math.IsInf(float64(left), 0) || !r.Posterior.Trusted {
			return ""
		}
		return words.Clock(outlook.ClockAt(r.Began, r.Elapsed+left), now)
	}
	middle, within := figure(words.Until(w.Left.P50)), figure(words.UntilWithin(w.Left))
	middle.Below = at(w.Left.P50)
	switch from, to := at(w.Left.P10), at(w.Left.P90); {
	case to != "":
		within.Below = words.SpreadRow{Low: from, High: to}.Within()
	case from != "":
		within.Below = "not before " + from
	}
	return []cell{cellOf(words.Awaited(w)), middle, within}
}
