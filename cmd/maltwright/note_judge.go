package main

import (
	"bufio"
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
var asks = []string{"reading-doubtful", "record-out-of-order", "written-twice", "time-doubtful", "change-doubtful", "sample-doubtful"}

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
	if c.Sure || c.DryRun || !slices.ContainsFunc(a.doubts, func(f finding.Finding) bool { return slices.Contains(asks, f.Rule) }) {
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
	if x, ok := line.(*model.Weighed); ok && r.Doubt != nil && !accepted(e) {
		f := finding.Finding{Rule: "reading-doubtful", Severity: finding.Caution}
		f.Message, f.Hint = house.DoubtOf(*r.Doubt, x.Weight.String())
		a.doubts = slices.DeleteFunc(a.doubts, func(g finding.Finding) bool { return g.Rule == f.Rule && e.Last(g.Place) })
		a.doubts = append([]finding.Finding{f}, a.doubts...)
		if m := r.Doubt.Meant; m != nil && c.Fix == 0 && len(e.All()) == 1 {
			a.offer = meantLine(e, x, *m)
			a.doubts[0].Hint += "; that is: " + a.offer
		}
	}
	return a
}

// accepted tells whether the batch says that its doubtful readings are right.
func accepted(e journal.Entry) bool { return e.Accepts("reading-doubtful") }

// meantLine is the line as it may have been meant.
func meantLine(e journal.Entry, x *model.Weighed, m noted.Meant) string {
	line, weight := e.Words(), x.Weight.Place
	from, to := weight.Start-e.Line.Start, weight.End-e.Line.Start
	switch m.Kind {
	case noted.Gross:
		return words.OneLine(line[:to] + " " + words.Holding(m.Holder.Name) + line[to:])
	case noted.Net:
		return words.OneLine(strings.Replace(line, " "+words.Holding(m.Holder.Name), "", 1))
	}
	return words.OneLine(line[:from] + m.Text + line[to:])
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
	question := "write it as it is? y or n: "
	if a.offer != "" {
		question = "write it as it is (y), as it fits (f), or not (n)? "
	}
	fmt.Fprint(w.Err, question)
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
