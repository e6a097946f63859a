package report

import (
	"fmt"
	"strings"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/words"
	"maltwright/lang/model"
)

// remarks are what was noticed, word by word.
func (b Batch) remarks(p *Page) {
	t := Table{Head: "Remarks", Columns: []Column{{"when", false}, {"what", false}, {"by", false}}}
	for i := range b.Batch.Remarks {
		r := &b.Batch.Remarks[i]
		t.Rows = append(t.Rows, []string{when(r.At), oneLine(r.Text.Text), words.Safe(r.By.Text)})
	}
	p.add(t)
}

// analyses are what a laboratory found.
func (b Batch) analyses(p *Page) {
	t := Table{Head: "Analysis of the malt", Columns: []Column{{"what", false}, {"found", true}, {"method", false}, {"when", false}, {"by", false}}}
	for i := range b.Batch.Tested {
		x := &b.Batch.Tested[i]
		method := words.Safe(x.Method.Text)
		if method == "" {
			method = "not said"
		}
		t.Rows = append(t.Rows, []string{words.Safe(x.What.Text), x.Found.String(), method, when(x.At), words.Safe(x.By.Text)})
	}
	if len(t.Rows) == 0 {
		p.add(Text{Head: "Analysis of the malt", Lines: []string{"None in the record."}})
		return
	}
	p.add(t)
}

func when(at model.Instant) string {
	if at.IsZero() {
		return ""
	}
	return at.Format(shortTime)
}

// learnt is what the batch says of lot and house.
func (b Batch) learnt(p *Page) {
	r := b.Progress
	if r == nil {
		return
	}
	t := Table{Head: "What the batch says of lot and house", Columns: []Column{{"figure", false}, {"middle", true}, {"8 in 10 between", true}}}
	for _, f := range r.Factors {
		if x := f.Posterior; x != nil {
			name := f.Factor
			if f.Of != nil {
				name += fmt.Sprintf(" of %q", words.Safe(*f.Of))
			}
			t.Rows = append(t.Rows, []string{name, number(x.P50), words.Between(number(x.P10), number(x.P90))})
		}
	}
	beside := "A figure is a factor beside the model's, which is 1."
	if r.RelativeTo == progress.House {
		beside = "A figure is a factor beside what the house has learnt, which is 1."
	}
	t.Notes = []string{beside + " It is reckoned from the readings, not measured."}
	p.add(t)
}

func number[T ~float64](x T) string { return fmt.Sprintf("%.2f", float64(x)) }

// care is what the forecast assumed, and what can hurt somebody.
func (b Batch) care(p *Page) {
	if b.Progress == nil {
		return
	}
	p.assumed(b.House, b.Progress.Assumed)
	p.cautions(b.House, b.Progress.Cautions)
	if lines := acceptedBy(b.Batch.Process); len(lines) > 0 {
		p.add(Text{Head: "Findings that the house lets pass", Lines: lines, List: true})
	}
}

func (p *Page) assumed(h words.House, list []outlook.Assumption) {
	text := Text{Head: "Taken for granted, since it is not said", List: true}
	for _, a := range list {
		text.Lines = append(text.Lines, fmt.Sprintf("%s: %s (%s)", h.Say(a.What), h.Say(a.Value), h.Say(a.Why)))
	}
	p.add(text)
}

func (p *Page) cautions(h words.House, list []outlook.Caution) {
	text := Text{Head: "Take care", List: true}
	for _, c := range list {
		text.Lines = append(text.Lines, h.Say(c))
	}
	p.add(text)
}

// sentence writes a text with a capital and a full stop.
func sentence(text string) string {
	if text == "" {
		return ""
	}
	if !strings.HasSuffix(text, ".") {
		text += "."
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
