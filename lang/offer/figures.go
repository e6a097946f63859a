package offer

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// figures lists whole values: what is usual, or else what the example of the statement has.
func (l *list) figures(w *want, ranged bool, dims []quantity.Dimension, sense *vocabulary.Sense) {
	if w.slot.Placed && w.place == "" && !w.bounded {
		return // where it is measured comes first
	}
	class := l.class
	defer func() { l.class = class }()
	l.class--
	example := l.example(dims)
	usual := l.known.usual(l.at)
	for _, u := range usual {
		text, detail := u.Range.String(), "usual"
		if !ranged {
			text, detail = within(u.Range, example), u.Range.String()+" is usual"
		}
		l.figure(Item{Label: text, Kind: Value, Detail: detail, Doc: u.Why, Needed: w.needed}, dims)
	}
	if len(usual) > 0 || example == "" || !ranged && strings.Contains(example, " "+vocabulary.To+" ") {
		return
	}
	l.class = class + 1
	l.figure(Item{Label: example, Kind: Value, Detail: "for example", Doc: l.sensible(sense, dims[0]), Needed: w.needed}, dims)
}

// figure adds a value. Where its unit stands behind the place already it is not written again, and one in
// another unit is of no use there.
func (l *list) figure(it Item, dims []quantity.Dimension) {
	if unit := l.unitBehind(dims); unit != "" {
		number, ok := strings.CutSuffix(it.Label, " "+unit)
		if !ok {
			return
		}
		it.Edit, it.Filter = Edit{l.word, number}, it.Label
	}
	l.add(it)
}

// unitBehind is the unit that stands right behind the place, "" where none does: 82| °C.
func (l *list) unitBehind(dims []quantity.Dimension) string {
	if len(l.after) == 0 {
		return ""
	}
	if u, ok := quantity.Lookup(l.after[0]); ok && slices.ContainsFunc(dims, func(d quantity.Dimension) bool {
		return d == u.Dimension || d == quantity.TemperatureDifference && u.Dimension == quantity.Temperature
	}) {
		return l.after[0]
	}
	return ""
}

// example is a value of the statement's example that is of one of the dimensions, in the units of
// the house; "" where there is none.
func (l *list) example(dims []quantity.Dimension) string {
	for _, text := range l.samples() {
		if a, ok := amountOf(text); ok {
			if _, err := value.Range(a, dims); err == nil {
				return l.known.System.Retold(text)
			}
		}
	}
	return ""
}

// amountOf reads a value.
func amountOf(text string) (syntax.Amount, bool) {
	tree, _ := syntax.Parse(source.New("", []byte("x "+text)))
	if len(tree.Top.Statements) != 1 || len(tree.Top.Statements[0].Terms) != 1 {
		return syntax.Amount{}, false
	}
	a, ok := tree.Top.Statements[0].Terms[0].(syntax.Amount)
	return a, ok
}

// within gives one value of a range: that of the example where it lies in it, or else one in the middle.
func within(r quantity.Range, example string) string {
	if a, ok := amountOf(example); ok && a.High == nil {
		if q, err := value.Quantity(a.Low, []quantity.Dimension{r.Low.Dimension}); err == nil && q.Dimension == r.Low.Dimension && r.Contains(q.SI) {
			return q.String()
		}
	}
	return quantity.About((r.Low.SI+r.High.SI)/2, r.High.Unit())
}

// units lists those in which a value of the dimensions is written, those of the house first.
func (l *list) units(w *want, dims []quantity.Dimension, sense *vocabulary.Sense) {
	for _, u := range l.fitting(w, dims, sense) {
		it := Item{Label: u.Name, Kind: Unit, Detail: u.Doc, Needed: w.needed, Filter: filter(u.Name, u.Aliases)}
		if l.kind == syntax.NumberLexeme { // the number itself is at the place
			number := strings.TrimSpace(l.file.Text(l.word))
			it.Edit, it.Filter = Edit{l.word, number + " " + u.Name}, number+" "+u.Name
		}
		l.add(it)
	}
}

// fitting are the units that fit, the likeliest first.
func (l *list) fitting(w *want, dims []quantity.Dimension, sense *vocabulary.Sense) (list []quantity.Unit) {
	ranks := map[string]int{}
	for _, u := range quantity.Units() {
		for _, d := range dims {
			if d == quantity.TemperatureDifference {
				d = quantity.Temperature
			}
			if u.Dimension == d && (d != quantity.Count || counted(u, sense)) && w.goesWith(u) {
				ranks[u.Name] = l.rank(u)
				list = append(list, u)
				break
			}
		}
	}
	slices.SortStableFunc(list, func(a, b quantity.Unit) int { return ranks[a.Name] - ranks[b.Name] })
	return list
}

// goesWith tells whether a number of the unit goes on with what stands in front of it: the oz of 5 lb 4 oz.
func (w *want) goesWith(u quantity.Unit) bool {
	if w.more == nil {
		return true
	}
	if first, ok := quantity.Lookup(w.more[0].Unit); ok && quantity.OfPounds(first.Name) != quantity.OfPounds(u.Name) {
		return false
	}
	_, err := quantity.Make(append(slices.Clip(w.more), quantity.Part{Number: "1", Unit: u.Name})...)
	return err == nil
}

// unitOfNumber lists the units of a number at the place that has none yet: 12| of 12 °C.
func (l *list) unitOfNumber(w *want, dims []quantity.Dimension) {
	if l.kind == syntax.NumberLexeme && l.unitBehind(dims) == "" && (w.place != "" || !w.slot.Placed) {
		class := l.class
		l.class = 0
		l.units(w, dims, w.slot.Sense)
		l.class = class
	}
}

// counted tells whether a unit is of what is counted in a value.
func counted(u quantity.Unit, sense *vocabulary.Sense) bool {
	if sense == nil {
		return u.Name != "hands"
	}
	return u.Name == sense.Can.High.Unit()
}

// likely are the units that a maltster is likely to mean, the likeliest first; where none stands the
// table's own order holds.
var likely = map[quantity.Dimension][]string{
	quantity.Time:   {"h", "min", "days", "weeks"},
	quantity.Mass:   {"kg", "g", "t", "lb", "oz"},
	quantity.Volume: {"l", "ml", "hl", "m3"},
	quantity.Length: {"m", "cm", "ft"},
	quantity.Area:   {"m2", "ft2"},
	quantity.Flow:   {"m3/h", "l/min", "cfm"},
	quantity.Power:  {"kW", "W", "Btu/h"},
}

// rank is how far down a unit stands: those of the house first, and of them those that are likely.
func (l *list) rank(u quantity.Unit) int {
	s, rank := l.known.System, slices.Index(likely[u.Dimension], u.Name)
	if rank < 0 {
		rank = len(likely[u.Dimension]) + 1
	}
	switch {
	case u.Dimension == quantity.Time:
	case u.Dimension == quantity.Temperature && u.Name != s.Degree(), u.Dimension != quantity.Temperature && quantity.OfPounds(u.Name) != s.British:
		rank += 20
	case strings.HasSuffix(u.Name, "-us") && s.Imperial, strings.HasSuffix(u.Name, "-imp") && !s.Imperial:
		rank += 10
	}
	return rank
}

// times lists dates and times of day.
func (l *list) times(w *want) {
	if w.to {
		l.join(w, vocabulary.To, "the end of the time")
		return
	}
	now, last := l.known.Now, l.lastTime()
	clock := func(text, detail string) { l.add(Item{Label: text, Kind: Value, Detail: detail, Needed: w.needed}) }
	switch w.slot.Kind {
	case vocabulary.Moment:
		if !now.IsZero() && !now.Before(last) {
			clock(now.Format("2006-01-02 15:04"), "now")
		}
		if !last.IsZero() {
			clock(last.Format("2006-01-02 15:04"), "the time of the line above")
		}
	case vocabulary.Date:
		if !now.IsZero() {
			clock(now.Format("2006-01-02"), "today")
		}
	case vocabulary.Clock:
		clock("06:30 to 22:30", "for example")
	case vocabulary.Hour:
		for _, h := range []int{7, 13, 19} {
			if text := fmt.Sprintf("%02d:00", h); !strings.Contains(l.file.Text(span(l.start, l.word.Start)), text) {
				clock(text, "a time of day")
			}
		}
	}
}
