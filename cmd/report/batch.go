package report

import (
	"fmt"
	"slices"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/fingerprint"
	"maltwright/lang/model"
	"maltwright/sim/infer/follow"
)

// Batch is what the page of a batch is made of.
type Batch struct {
	House    words.House
	Batch    *model.Batch
	Ledger   ledger.Batch     // what its record comes to
	Progress *progress.Result // how it stands by its readings; nil where it could not be followed
	Course   outlook.Result   // its forecast by those readings
	Found    []finding.Finding

	Conditions  []progress.Condition  // that it has come past
	MaltWeighed *progress.MaltWeighed // nil where it is not over

	Charts  []Drawing
	At      time.Time // as of when
	LeftOut int       // lines of the record that are later
	Why     string    // why there is no more, where it could not be followed
}

// Page is the page of the batch.
func (b Batch) Page() Page {
	p := Page{Title: "Batch " + words.Safe(b.Batch.Name), Sub: words.Safe(b.Batch.Process.Name)}
	why := ""
	if r := b.Progress; r != nil {
		why = whyThen[r.AsOf]
	}
	p.AsOf = asOf(b.At, why)
	if n := b.LeftOut; n > 0 {
		p.AsOf += "; " + words.Many(n, "later line is left out", "later lines are left out")
	}
	if b.Astray() {
		p.Doubt = words.Astray
	}
	b.made(&p)
	b.dangers(&p)
	b.figures(&p)
	b.maltMoisture(&p)
	b.course(&p)
	b.asked(&p)
	for _, c := range b.Charts {
		p.add(Figure{c})
	}
	b.readings(&p)
	b.deviations(&p)
	b.doubts(&p)
	b.analyses(&p)
	b.remarks(&p)
	b.learnt(&p)
	b.care(&p)
	return p
}

// whyThen says why a page is as of a time.
var whyThen = map[progress.AsOf]string{progress.LastReading: "the last line of the record", progress.ClockBehind: "the last line of the record", progress.Clock: "when it was written", progress.Asked: "as asked"}

// made says what was made of what, when and by whom.
func (b Batch) made(p *Page) {
	x := b.Batch
	f := Facts{Head: "What was made of what"}
	f.tell("malt", words.Safe(x.Process.Make.Text), "")
	if c := x.Process.Charge; c != nil {
		f.tell("charge", c.String(), "as written")
	}
	grainFacts(&f, x.Process)
	f.tell("process", words.Safe(x.Process.Name), "")
	pinFacts(&f, b.Ledger.Pinned, fingerprint.Of(x.Process))
	gearFacts(&f, x.Process)
	if !x.Began.IsZero() {
		f.tell("begun", x.Began.Format(dayAndTime), "as written")
	}
	if b.Progress != nil && b.Progress.Over {
		f.tell("over", b.Progress.At.Format(dayAndTime), "as written")
	}
	if t := b.Ledger.Total; t.Plain().Known() {
		f.tell("took", words.Lasting(t.Value), string(t.Standing))
	}
	if list := workers(x); len(list) > 0 {
		f.tell("written down by", words.List(list), "")
	}
	p.add(f)
}

// dangers come before all figures.
func (b Batch) dangers(p *Page) {
	if b.Progress == nil || len(b.Progress.Dangers) == 0 {
		return
	}
	f := Found{Head: "Danger told in remarks"}
	for _, x := range b.Progress.Dangers {
		f.List = append(f.List, findingOf(x))
	}
	p.add(f)
}

func findingOf(f finding.Finding) Finding {
	return Finding{f.Severity.String(), words.Safe(f.Message), words.Safe(f.Hint), f.Rule}
}

// figures are those that batches are compared by.
func (b Batch) figures(p *Page) {
	t := Table{Head: "Figures and yields", Columns: []Column{{"", false}, {"", true}, {"", false}}}
	group, doubtful := "", b.Doubtful()
	for _, r := range b.House.LedgerRows(b.Ledger) {
		if r.Group != group {
			group = r.Group
			t.Rows = append(t.Rows, []string{group})
		}
		t.Rows = append(t.Rows, []string{r.Label, r.Value, b.standing(r, doubtful)})
	}
	if b.Astray() {
		t.Rows = append(t.Rows, []string{"forecasts", "hardly any", "agrees with all of the readings"})
	}
	for _, d := range b.Ledger.Doubtful {
		t.Notes = append(t.Notes, b.House.Doubt(d))
	}
	if b.Why != "" {
		t.Notes = append(t.Notes, b.Why)
	}
	p.add(t)
}

// course is the steps as they went or are foretold.
func (b Batch) course(p *Page) {
	if b.Progress == nil {
		return
	}
	t := stepTable(b.House, b.Course, b.Progress.At, b.noted)
	t.Head = "Steps"
	t.Notes = append(t.Notes, "Times by the record are those of a line that says that the step had ended; the other times, and all moistures and weights, are the middle of the forecasts that agree with the readings. Not noted is what the record does not say.")
	p.add(t)
	b.toCome(p)
}

// toCome is what will come of a batch that is not over.
func (b Batch) toCome(p *Page) {
	r, h := b.Progress, b.House
	if r.Over {
		return
	}
	t := Table{Head: "What is to come, by the forecasts that agree with the readings", Columns: []Column{{"", false}, {"middle", true}, {"8 in 10 between", true}}}
	t.likely("total time", spreadOf(r.Outcome.Total, words.Lasting))
	t.likely("moisture of the malt", spreadOf(r.Outcome.FinalMoisture, words.Percent))
	t.likely("malt", spreadOf(r.Outcome.Malt, func(kg answer.Kilograms) string { return words.Weighed(h, kg) }))
	t.likely("yield as is", spreadOf(r.Outcome.Yield, words.Percent))
	p.add(t)
}

// likely adds a row of a figure that most of the forecasts have.
func (t *Table) likely(name string, cells []string) {
	if cells != nil {
		t.Rows = append(t.Rows, append([]string{name}, cells...))
	}
}

// spreadOf is the middle of a spread and where eight in ten lie, nil where fewer than half of the forecasts have it.
func spreadOf[T answer.Figure](x answer.Spread[T], write func(T) string) []string {
	if x.Share < 0.5 {
		return nil
	}
	middle, between := spread(&x, write)
	return []string{middle, between}
}

// deviations are what was done otherwise than the process says.
func (b Batch) deviations(p *Page) {
	text := Text{Head: "Done otherwise than the process says", List: true}
	say := func(format string, args ...any) { text.Lines = append(text.Lines, fmt.Sprintf(format, args...)) }
	if x := b.Batch; x.OwnCharge() && x.From.Other != nil {
		say("a charge of %s in the place of %s", x.From.Weight, x.From.Other)
	}
	for _, c := range b.Ledger.Changes {
		say("%s to %s, because %s", c.Label, words.Safe(c.To), words.Safe(c.Because))
	}
	if pin := b.Ledger.Pinned; pin != nil {
		for _, s := range pin.Since {
			say("since the batch was begun its process has changed: %s", words.Safe(s))
		}
	}
	if b.Progress != nil {
		for _, l := range b.Progress.Late {
			since := fmt.Sprintf("%s, %s ago", l.Since.Format(shortTime), words.Ago(l.Late))
			say("late, %s: %s", l.Stage, words.Late(follow.LateKind(l.Kind), since, oneLine(l.Text)))
		}
		for _, l := range b.leftBefore() {
			say("%s", l)
		}
	}
	if len(text.Lines) == 0 {
		text.Lines, text.List = []string{"Nothing that the record tells of."}, false
	}
	p.add(text)
}

// noted tells whether the record has a line that says when a step ended.
func (b Batch) noted(x outlook.Step) bool {
	return slices.ContainsFunc(b.Batch.Readings, func(r model.Reading) bool {
		after := model.After(r)
		return model.Clean(r) && x.Kind == string(model.DeculmStage) ||
			after != nil && after.Kind.Text == x.Kind && (after.Number == 0 || after.Number == x.Number)
	})
}
