package report

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/words"
)

// readings are all lines of the record, each beside what the forecast expected of it.
func (b Batch) readings(p *Page) {
	if len(b.Batch.Readings) == 0 {
		p.add(Text{Head: "Readings", Lines: []string{"None in the record."}})
		return
	}
	t := Table{Head: "Readings beside the forecast", Columns: []Column{{"when", false}, {"as written", false}, {"expected", true}, {"8 in 10 between", true}, {"", false}}}
	judged, doubted := untilNow(b.Progress), b.inDoubt()
	for _, x := range b.Batch.Readings {
		place := x.Place()
		line := lineOf(place)
		middle, between, said := "", "", []string{}
		if r, ok := judged[line]; ok {
			middle, between = b.expected(r)
			switch {
			case r.Struck:
				said = append(said, "in doubt; it does not count")
			case r.Doubt != "":
				said = append(said, "in doubt")
			case r.Unjudged:
				said = append(said, "not judged")
			}
		}
		if len(said) == 0 && slices.Contains(doubted, x) {
			said = append(said, "in doubt")
		}
		if by := byWhom(x); by.Text != "" {
			said = append(said, "by "+words.Safe(by.Text))
		}
		t.Rows = append(t.Rows, []string{when(x.When()), oneLine(place.Text()), middle, between, strings.Join(said, "; ")})
	}
	t.Notes = []string{"Expected is what the forecasts that agree with the whole record have then, before the error of a reading; a line without it is not held against them."}
	p.add(t)
}

// expected is what the forecasts expect of a reading: the middle, and where eight in ten lie.
func (b Batch) expected(r progress.Reading) (middle, between string) {
	h := b.House
	switch {
	case r.Weight != nil:
		write := func(kg answer.Kilograms) string { return words.Weighed(h, kg+r.Along) }
		if r.OfBag {
			write = func(kg answer.Kilograms) string { return words.Bag(h, kg+r.Along) }
		}
		return spread(r.Weight.Expected, write)
	case r.Temperature != nil:
		return spread(r.Temperature.Expected, h.Shown)
	case r.Moisture != nil:
		return spread(r.Moisture.Expected, words.Percent)
	case r.Chit != nil:
		return spread(r.Chit.Expected, words.Percent)
	case r.Acrospire != nil:
		return spread(r.Acrospire.Expected, func(x answer.Number) string { return number(x) + " of the kernel" })
	case r.Modification != nil:
		return spread(r.Modification.Expected, words.Rub)
	}
	return "", ""
}

func spread[T answer.Figure](x *answer.Spread[T], write func(T) string) (middle, between string) {
	if x == nil {
		return "", ""
	}
	return write(x.P50), words.Between(write(x.P10), write(x.P90))
}

// doubts are all there is to say against the record.
func (b Batch) doubts(p *Page) {
	text := Text{Head: "Doubts", List: true}
	say := func(format string, args ...any) {
		text.Lines = append(text.Lines, sentence(fmt.Sprintf(format, args...)))
	}
	if r := b.Progress; r != nil {
		for _, x := range r.Readings {
			if x.Words == nil {
				continue
			}
			why := b.House.Say(x.Words)
			if x.Struck {
				why += "; it does not count"
			}
			say("%s: %s", oneLine(x.Text), why)
		}
		if !r.Posterior.Trusted {
			say("%s", words.Astray)
		}
		if !r.Complete {
			say("the forecast breaks off before the end of the process")
		}
	}
	for _, f := range b.Found {
		say("%s: %s. %s [%s]", f.Severity, words.Safe(f.Message), words.Safe(f.Hint), f.Rule)
	}
	if len(text.Lines) == 0 {
		text.Lines, text.List = []string{"None: every reading can be right, and nothing in the record speaks against it."}, false
	}
	p.add(text)
}
