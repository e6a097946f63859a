package main

import (
	"bufio"
	"context"
	"fmt"
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

// noteAnswer is what a reading comes to.
type noteAnswer struct {
	says    string
	doubts  []finding.Finding
	offer   string // the line as it may have been meant; "" where there is none
	instead bool   // that one is to be noted
}

// asks are the rules that doubt a reading itself, so that it is asked about before it is written;
// others tell of the batch.
var asks = []string{doubtful, "record-out-of-order", "written-twice", "time-doubtful", "change-doubtful", "sample-doubtful"}

func asksAbout(f finding.Finding) bool { return slices.Contains(asks, f.Rule) }

// judged holds what is new beside the process and the rest of the record. What cannot be is
// refused; what is doubtful is asked about.
func (c Note) judged(w *World, in input, e journal.Entry) (noteAnswer, error) {
	ctx, release := w.interruptible()
	defer release()
	doubts, err := e.Judge(ctx)
	if ctx.Err() != nil {
		return noteAnswer{}, errInterrupted
	}
	if err != nil {
		return noteAnswer{}, notNoted(err)
	}
	a := c.answer(w, in, e, doubts)
	if c.Sure || c.DryRun || !slices.ContainsFunc(a.doubts, asksAbout) {
		return a, nil
	}
	return c.ask(w, e, a)
}

// answer says what the last new line comes to, with what is doubtful of all of them.
func (c Note) answer(w *World, in input, e journal.Entry, doubts []finding.Finding) noteAnswer {
	a := noteAnswer{doubts: doubts}
	b, line := e.Model()
	if b == nil || b.Process == nil || b.Broken || b.Began.IsZero() {
		return a
	}
	ctx, release := w.interruptible()
	defer release()
	at, _ := progress.When(b, w.now())
	r := noted.Of(ctx, b, line, at, work.NewPool(work.Records))
	house := words.OfBatch(b.Process, b)
	a.says = house.Noted(r)
	if e.Accepts(doubtful) {
		return a
	}
	news := e.News(b)
	late := c.late(ctx, e, b, line, a, r, at)
	for i, d := range noted.Doubts(ctx, b, news, at, work.NewPool(work.Records)) {
		if x, ok := news[i].(*model.Weighed); ok && d != nil {
			d.Late = late
			a.doubt(house, x, d)
		}
	}
	if late != nil {
		x := line.(*model.Weighed)
		a.offer = words.OneLine(withInstead(e, x.When().Place, late.Ended.Format("2006-01-02 15:04")))
		a.doubts[0].Hint += "; that is: " + a.offer
		return a
	}
	if x, ok := line.(*model.Weighed); ok && len(news) == 1 && c.Fix == 0 && r.Doubt != nil && r.Doubt.Meant != nil {
		a.offer = meantLine(e, x, *r.Doubt.Meant)
		a.doubts[0].Hint += "; that is: " + a.offer
	}
	return a
}

// late tells of one new weight in doubt whether it is that of the end of its step, taken long before.
func (c Note) late(ctx context.Context, e journal.Entry, b *model.Batch, line model.Dated, a noteAnswer, r noted.Result, at time.Time) *noted.Late {
	x, ok := line.(*model.Weighed)
	asked := r.Doubt != nil || slices.ContainsFunc(a.doubts, asksAbout)
	if !ok || !asked || len(e.News(b)) != 1 || c.Fix != 0 || !x.When().Place.Known() {
		return nil
	}
	return noted.LateOf(ctx, b, x, at, work.NewPool(work.Records))
}

// withInstead is the new line with other words at a place of it.
func withInstead(e journal.Entry, at source.Place, with string) string {
	line := e.Words()
	return line[:at.Start-e.Line.Start] + with + line[at.End-e.Line.Start:]
}

// doubtful is the rule that doubts a reading.
const doubtful = "reading-doubtful"

// alarming is the rule that tells of the danger that a remark tells of.
const alarming = "remark-alarms"

// doubt puts why a weight may not be right in the place of what the rule tells of it.
func (a *noteAnswer) doubt(house words.House, x *model.Weighed, d *noted.Doubt) {
	f := finding.Finding{Rule: doubtful, Severity: finding.Caution, Place: x.Weight.Place}
	f.Message, f.Hint = house.DoubtOf(*d, x.Weight.String())
	rest := slices.DeleteFunc(a.doubts, func(g finding.Finding) bool { return g.Rule == f.Rule && g.Place == f.Place })
	a.doubts = append([]finding.Finding{f}, rest...)
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

// ask asks on a terminal whether a doubtful reading is to be written, and refuses it elsewhere.
func (c Note) ask(w *World, e journal.Entry, a noteAnswer) (noteAnswer, error) {
	var told []string
	for _, f := range a.doubts {
		told = append(told, fmt.Sprintf("%s [%s]", words.Joined("; ", f.Message, f.Hint), f.Rule))
	}
	if !w.InTerm || !w.ErrTerm {
		return a, failure{ExitFindings, fmt.Errorf("not noted: %s; --sure writes it as it is", strings.Join(told, "; "))}
	}
	for _, f := range told {
		for _, line := range words.Wrap(words.Safe(f), max(w.Width, 40)) {
			fmt.Fprintln(w.Err, line)
		}
	}
	question := "write it as it is? y or n:"
	if a.offer != "" {
		question = "write it as it is (y), as it fits (f), or not (n)?"
	}
	fmt.Fprint(w.Err, strings.Join(words.Wrap(question, max(w.Width, 40)), "\n")+" ")
	said, _ := bufio.NewReader(w.In).ReadString('\n')
	switch answer := strings.ToLower(strings.TrimSpace(said)); {
	case strings.HasPrefix(answer, "y"):
		return noteAnswer{says: a.says}, nil
	case answer == "f" && a.offer != "":
		a.instead = true
		return a, nil
	}
	return a, failure{ExitFindings, fmt.Errorf("not noted: %s", words.OneLine(e.Words()))}
}

// asOffered notes the line as it may have been meant.
func asOffered(line string) func(journal.Record, time.Time) (journal.Entry, error) {
	return func(r journal.Record, now time.Time) (journal.Entry, error) {
		return r.With(journal.Reading{Words: []string{line}}, now)
	}
}
