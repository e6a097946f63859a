package folder

import (
	"context"
	"slices"
	"strings"
	"time"

	"maltwright/cmd/answer/noted"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/journal"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/work"
)

const (
	doubtful = "reading-doubtful" // the rule that doubts a reading
	alarming = "remark-alarms"    // the rule that tells of the danger that a remark tells of
)

// asks are the rules that doubt a reading itself, so that it is asked about before it is written;
// others tell of the batch.
var asks = []string{doubtful, "record-out-of-order", "written-twice", "time-doubtful", "change-doubtful", "sample-doubtful"}

func doubtOf(f finding.Finding) Doubt {
	return Doubt{f.Rule, f.Severity, f.Message, f.Hint, slices.Contains(asks, f.Rule), f.Rule == alarming}
}

// judging is a reading in its record, with what is found of it.
type judging struct {
	journal.Entry
	fix    bool
	batch  *model.Batch
	line   model.Dated
	news   []model.Dated // the new lines that are doubted
	at     time.Time     // as of when it is judged
	result noted.Result
	house  words.House
	doubts []finding.Finding
}

// answer says what the last new line comes to, with what is doubtful of all of them.
func (c Clerk) answer(ctx context.Context, e journal.Entry, x Reading, doubts []finding.Finding) Answer {
	j := judging{Entry: e, fix: x.Fix != 0, doubts: doubts}
	var a Answer
	if j.batch, j.line = e.Model(); j.batch != nil && j.batch.Process != nil && !j.batch.Broken && !j.batch.Began.IsZero() {
		now := c.now()
		j.at, _ = progress.When(j.batch, now)
		if !c.day {
			now = j.at
		}
		a.Says, a.Offer = j.forecast(ctx, now)
	}
	for _, f := range j.doubts {
		a.Doubts = append(a.Doubts, doubtOf(f))
	}
	a.stands(e)
	return a
}

// forecast holds the new lines beside the forecast: what the last of them comes to, and what it may have been
// meant for. Seen is the time from which its times are told.
func (j *judging) forecast(ctx context.Context, seen time.Time) (says, offer string) {
	accepted := j.Accepts(doubtful)
	if !accepted {
		j.news = j.News(j.batch)
	}
	var why []*noted.Doubt
	j.result, why = noted.Judge(ctx, j.batch, j.line, j.news, j.at, work.NewPool(work.Records))
	j.house = words.OfBatch(j.batch.Process, j.batch)
	if seen.After(j.result.At) {
		j.result.At = seen
	}
	if says = j.house.Noted(j.result); accepted {
		return says, ""
	}
	return says, j.doubt(ctx, why)
}

// stands puts the lines into the answer as they stand in the file.
func (a *Answer) stands(e journal.Entry) {
	a.Batch, a.Was, a.Lines = e.Batch, e.Was, nil
	for _, line := range e.All() {
		a.Lines = append(a.Lines, words.OneLine(line))
	}
}

// doubt says of each new weight why it may not be right, and offers what it may have been meant for.
func (j *judging) doubt(ctx context.Context, why []*noted.Doubt) (offer string) {
	late := j.late(ctx)
	for i, d := range why {
		if x, ok := j.news[i].(*model.Weighed); ok && d != nil {
			d.Late = late
			j.doubts = inFront(j.doubts, j.house, x, d)
		}
	}
	x, ok := j.line.(*model.Weighed)
	switch d := j.result.Doubt; {
	case late != nil:
		offer = words.OneLine(withInstead(j.Entry, x.When().Place, late.Ended.Format("2006-01-02 15:04")))
	case ok && len(j.news) == 1 && !j.fix && d != nil && d.Meant != nil:
		offer = meantLine(j.Entry, x, *d.Meant)
	default:
		return ""
	}
	j.doubts[0].Hint += "; that is: " + offer
	return offer
}

// late tells of one new weight in doubt whether it is that of the end of its step, taken long before.
func (j *judging) late(ctx context.Context) *noted.Late {
	x, ok := j.line.(*model.Weighed)
	asked := j.result.Doubt != nil || slices.ContainsFunc(j.doubts, func(f finding.Finding) bool { return slices.Contains(asks, f.Rule) })
	if !ok || !asked || len(j.news) != 1 || j.fix || !x.When().Place.Known() {
		return nil
	}
	return noted.LateOf(ctx, j.batch, x, j.at, work.NewPool(work.Records))
}

// inFront puts why a weight may not be right in the place of what the rule tells of it, in front of the rest.
func inFront(doubts []finding.Finding, house words.House, x *model.Weighed, d *noted.Doubt) []finding.Finding {
	f := finding.Finding{Rule: doubtful, Severity: finding.Caution, Place: x.Weight.Place}
	f.Message, f.Hint = house.DoubtOf(*d, x.Weight.String())
	rest := slices.DeleteFunc(doubts, func(g finding.Finding) bool { return g.Rule == f.Rule && g.Place == f.Place })
	return append([]finding.Finding{f}, rest...)
}

// withInstead is the new line with other words at a place of it.
func withInstead(e journal.Entry, at source.Place, with string) string {
	line := e.Words()
	return line[:at.Start-e.Line.Start] + with + line[at.End-e.Line.Start:]
}

// meantLine is the line as it may have been meant.
func meantLine(e journal.Entry, x *model.Weighed, m noted.Meant) string {
	line, weight := e.Words(), x.Weight.Place
	to := weight.End - e.Line.Start
	switch m.Kind {
	case noted.Gross:
		return words.OneLine(line[:to] + " " + words.Holding(m.Holder.Name) + line[to:])
	case noted.Net:
		return words.OneLine(strings.Replace(line, " "+words.Holding(m.Holder.Name), "", 1))
	}
	return words.OneLine(withInstead(e, weight, m.Text))
}
