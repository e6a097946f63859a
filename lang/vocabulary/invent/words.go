package invent

import (
	"fmt"
	"slices"
	"strconv"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

func (w *writer) slots(slots []vocabulary.Slot, clause string) {
	for i := range slots {
		s := &slots[i]
		if s.Optional && s.Kind != vocabulary.Literal && !(w.block == vocabulary.Steep || w.block == vocabulary.Repeat) {
			continue
		}
		w.WriteString(" ")
		w.slot(s, clause)
	}
}

func (w *writer) slot(s *vocabulary.Slot, clause string) {
	switch s.Kind {
	case vocabulary.Amount:
		w.amount(s, clause)
	case vocabulary.Condition:
		w.condition()
	case vocabulary.Text:
		if w.word == "process" || w.name == other {
			fmt.Fprintf(w, "%q", w.name)
			return
		}
		w.WriteString(`"x"`)
	case vocabulary.Name:
		if w.block == vocabulary.KilnFacts {
			fmt.Fprintf(w, "%q", other)
			return
		}
		w.WriteString(`"x"`)
	case vocabulary.Choice, vocabulary.Literal:
		if word, ok := w.ofKind(); ok {
			w.WriteString(word)
			return
		}
		words := slices.DeleteFunc(slices.Clone(s.Words), func(word string) bool {
			return w.word == "make" && word == vocabulary.MaltGreen || w.word == vocabulary.FactAlready && word == map[bool]string{true: vocabulary.MaltGreen, false: vocabulary.MaltKilned}[w.malted]
		})
		word := words[w.IntN(len(words))]
		if w.word == "make" && w.ends && !w.green && s.Kind == vocabulary.Choice {
			word = vocabulary.MaltGreen
		}
		w.WriteString(word)
	case vocabulary.Clock:
		w.WriteString(w.either("06:30 to 22:30", "6:30 am to 10:30 pm"))
	case vocabulary.Hour:
		w.WriteString(hours[w.IntN(len(hours))])
	case vocabulary.Date:
		w.WriteString("2026-02-02")
	case vocabulary.Moment:
		w.WriteString(w.either("2026-03-06 07:00", "2026-03-06 7 am"))
	}
}

// hours are times of day.
var hours = []string{"07:00", "19:00", "23:30", "00:00"}

// amount writes a quantity, or a range where the slot takes one.
func (w *writer) amount(s *vocabulary.Slot, clause string) {
	if len(s.Places) > 0 && (s.Placed || w.odds(2)) {
		w.WriteString(s.Places[w.IntN(len(s.Places))] + " ")
	}
	of := s.Dims[0]
	if w.returns { // a share, and no airflow
		of = quantity.Share
	}
	a, b, unit := w.value(of, clause), w.value(of, clause), w.unit(of)
	if w.word == "reaches" { // both ends are needed
		a, b = min(a, b), max(a, b)
	}
	if s.Range && a < b && w.odds(2) || clause == "allow" && a < b || w.word == "reaches" && a < b {
		w.WriteString(w.number(a) + " to " + w.number(b) + unit)
		return
	}
	w.WriteString(w.number(a) + unit)
}

// number writes four figures without an exponent, which the language does not read.
func number(v float64) string {
	v, _ = strconv.ParseFloat(strconv.FormatFloat(v, 'g', 4, 64), 64)
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// condition writes a test of what can be looked at in the block.
func (w *writer) condition() {
	var list []vocabulary.Measure
	for _, m := range vocabulary.Measures() {
		if m.Promise == (w.word == "expect") && (m.Promise || slices.Contains(m.In, w.stage())) {
			list = append(list, m)
		}
	}
	m := list[w.IntN(len(list))]
	w.WriteString(m.Word)
	switch {
	case m.Bare:
	case len(m.Words) > 0:
		w.WriteString(" is " + m.Words[w.IntN(len(m.Words))])
	default:
		w.WriteString(w.bound(m.Word))
		w.WriteString(w.number(w.value(m.Dims[0], "until")) + w.unit(m.Dims[0]))
	}
}

// bound is the side on which a measure comes to its value as time goes on; of what goes
// both ways it is either.
func (w *writer) bound(measure string) string {
	wet := measure == "moisture" || measure == "weight"
	switch in := w.stage(); {
	case measure == "chit", measure == "acrospire", wet && (in == vocabulary.Steep || in == vocabulary.Repeat):
		return " at least "
	case wet && (in == vocabulary.Kiln || in == vocabulary.Wither):
		return " at most "
	}
	either := []string{" at least ", " at most "}[w.IntN(2)]
	if measure == "time" {
		return " at least "
	}
	return either
}

// stage is the block whose state a condition looks at.
func (w *writer) stage() vocabulary.Block {
	if w.block == vocabulary.Process {
		return vocabulary.Germinate
	}
	return w.block
}

// unit is that of the values of a dimension.
func (w *writer) unit(d quantity.Dimension) string {
	if d == quantity.Mass && w.word == "kernel-weight" {
		return " g"
	}
	return w.either(units[d], typed[d]...)
}

var units = map[quantity.Dimension]string{
	quantity.Number: "", quantity.Count: "", quantity.Share: " %", quantity.Temperature: " °C", quantity.Time: " h", quantity.Mass: " kg",
	quantity.Volume: " l", quantity.Length: " m", quantity.Area: " m2", quantity.Flow: " m3/h", quantity.Power: " kW",
}
