package report

import (
	"fmt"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/words"
	"maltwright/lang/vocabulary"
	"maltwright/sim/seasons"
)

// asked is what the process asks for, and what the record and the forecast have of it.
func (b Batch) asked(p *Page) {
	if b.Progress == nil {
		return
	}
	t := Table{Head: "Gates and promises", Columns: []Column{{"where", false}, {"condition", false}, {"left", false}, {"last read before", false}, {"by the forecast then", false}}}
	for i := range b.Conditions {
		c := &b.Conditions[i]
		left := c.Time.Format(shortTime)
		if !c.Noted {
			left = "~" + left
		}
		t.Rows = append(t.Rows, []string{c.Awaits(), oneLine(c.Text), left, b.read(c), b.came(c)})
	}
	for _, e := range b.Course.Expects {
		t.Rows = append(t.Rows, []string{"promise", oneLine(e.Text), "", "", b.promised(e)})
	}
	t.Notes = []string{"Left is when what waits for a condition had ended: by the record, or by the forecast (~). A moisture by weight goes by the dry matter that the forecast has left."}
	p.add(t)
}

// read is what was read last of what a condition asks.
func (b Batch) read(c *progress.Condition) string {
	if len(c.Read) == 0 {
		return "not in the record"
	}
	var said []string
	for i := range c.Read {
		said = append(said, b.readOne(&c.Read[i]))
	}
	return strings.Join(said, "; ")
}

func (b Batch) readOne(r *progress.LastRead) string {
	value := r.Word
	if r.Value != nil {
		value = b.House.Say(*r.Value)
	}
	text := fmt.Sprintf("%s %s", r.Measure, value)
	if r.Weighed {
		text += " by its weight"
	}
	text += ", " + r.At.Format(shortTime)
	switch {
	case r.Doubted:
		text += ", in doubt"
	case r.Holds:
	case r.Close:
		text += ": misses by less than it may be wrong"
	default:
		text += missed
	}
	return text
}

const missed = ": does not hold"

// came is what a condition came to by the forecast.
func (b Batch) came(c *progress.Condition) string {
	switch {
	case c.Unjudged:
		return "not forecast"
	case c.Came:
		return "holds"
	}
	return words.Joined(": ", "does not hold", b.failed(c.Failed))
}

func (b Batch) failed(list []outlook.Failed) string {
	var said []string
	for _, f := range list {
		value := f.Word
		if f.Came != nil {
			value = b.House.Say(*f.Came)
		}
		said = append(said, strings.TrimSpace(f.Measure+" "+value))
	}
	return strings.Join(said, ", ")
}

// promised is whether a promise is kept, by the middle of the forecasts.
func (b Batch) promised(e outlook.Expect) string {
	switch {
	case e.Unjudged:
		return "not forecast"
	case e.Holds:
		return "kept"
	case e.Forecast != nil:
		return "not kept: " + b.House.Say(*e.Forecast)
	}
	return "not kept"
}

// leftBefore are the conditions that were left before they held, each in a sentence.
func (b Batch) leftBefore() (list []string) {
	for i := range b.Conditions {
		c := &b.Conditions[i]
		if c.Unjudged || !c.Otherwise() || i > 0 && c.Text == b.Conditions[i-1].Text && c.Time.Equal(b.Conditions[i-1].Time) { // a gate behind the step that asks the same
			continue
		}
		said := fmt.Sprintf("%s left on %s before %q held: ", c.Awaits(), c.Time.Format(shortTime), oneLine(c.Text))
		switch r := c.Denied(); {
		case r != nil && c.Came:
			said += "the last reading was " + b.readText(r) + "; the forecast has it so by then"
		case r != nil:
			said += "the last reading was " + b.readText(r) + "; the forecast has " + b.failed(c.Failed)
		case len(c.Read) > 0:
			said += "by the forecast " + b.failed(c.Failed) + "; the last reading was " + b.readText(&c.Read[0])
		default:
			said += "by the forecast " + b.failed(c.Failed) + "; nothing of it is in the record"
		}
		list = append(list, said)
	}
	return list
}

func (b Batch) readText(r *progress.LastRead) string {
	return strings.TrimSuffix(b.readOne(r), missed)
}

// maltMoisture tells in how many ways the moisture of the malt is known, and how far each is sure.
func (b Batch) maltMoisture(p *Page) {
	if b.Progress == nil || !b.Progress.Over {
		return
	}
	t := Table{Head: "Moisture of the malt", Columns: []Column{{"how it was come by", false}, {"of when", false}, {"moisture", true}, {"8 in 10 between", true}}}
	end, tested := b.Ledger.EndMoisture, b.Batch.TestOf(vocabulary.AnalysisMoisture)
	if tested != nil {
		t.Rows = append(t.Rows, []string{"measured: " + words.Joined(", ", "an analysis", words.Safe(tested.Method.Text)), when(tested.At), tested.Found.String(), ""})
	}
	if w := b.MaltWeighed; w != nil && tested == nil && end.Standing == seasons.Reckoned {
		t.Rows = append(t.Rows, []string{fmt.Sprintf("reckoned from its weight, %s, and the dry matter that the forecasts have left in it", words.Weighed(b.House, w.Weight)),
			w.At.Format(shortTime), words.Percent(end.Value), words.Between(words.Percent(w.Low), words.Percent(w.High))})
	}
	if x := b.Progress.Outcome.FinalMoisture; x.Share >= 0.5 {
		t.Rows = append(t.Rows, append([]string{"forecast: how dry the kiln leaves it, by the forecasts that agree with the readings", b.Progress.At.Format(shortTime)}, spreadOf(x, words.Percent)...))
		if w := b.MaltWeighed; w != nil && tested == nil && len(t.Rows) == 2 {
			t.Notes = append(t.Notes, agreed(*w, x))
		}
	}
	if tested == nil {
		t.Notes = append(t.Notes, "No sample of the malt was dried or sent to a laboratory: to know it, dry one.")
	}
	p.add(t)
}

// agreed says how the two ways stand to one another.
func agreed(w progress.MaltWeighed, x answer.Spread[answer.Share]) string {
	if w.Low > x.P90 || w.High < x.P10 {
		return "The two do not agree: a weight is wrong, some malt was lost, or the kiln dried otherwise than is forecast. Steps have the second."
	}
	return "The two agree within what either may be wrong by. Figures have the first, steps the second."
}
