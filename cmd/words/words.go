// Package words is the one place that formats for people: numbers in the units of the
// house, lengths of time, and the sentences of what an answer tells.
package words

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

// House is how a house is spoken to: in the units that its process is written in.
// Weights are no finer than its scales show them.
type House struct {
	quantity.System
	home *model.House    // nil where it is not known
	bag  *model.Quantity // the raw grain in the marked bag; nil where there is none
}

// Of is how to speak to those who wrote a process.
func Of(p *model.Process) House {
	h := House{System: p.Units(), home: p.House, bag: p.Bag}
	h.Ounces = h.British && inOunces(p)
	return h
}

// inOunces tells whether a house of pounds writes the ounces along: its charge does so, or what one of its
// vessels weighs when it is empty, or a scale of it shows oz.
func inOunces(p *model.Process) bool {
	along := func(q *model.Quantity) bool { return q != nil && strings.Contains(q.String(), " lb ") }
	if along(p.Charge) {
		return true
	}
	return p.House != nil &&
		(slices.ContainsFunc(p.House.Holders(), func(h model.Holder) bool { return along(h.Weighs) }) ||
			slices.ContainsFunc(p.House.Scales, func(s *model.Scale) bool { return s.Division != nil && s.Division.Unit() == "oz" }))
}

// OfBatch is how to speak to those who make a batch by a process.
func OfBatch(p *model.Process, b *model.Batch) House {
	h := Of(p)
	if b.Bag != nil {
		h.bag = b.Bag
	}
	return h
}

// None stands where there is no figure.
const None = "—"

func known(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// Percent writes a share of 1: 12.4 %.
func Percent[T ~float64](share T) string {
	if !known(float64(share)) {
		return None
	}
	return quantity.Fixed(100*float64(share), 1) + " %"
}

// Mass writes a weight to three figures: 834 g, 6.06 kg, 13.4 lb.
func Mass[T ~float64](h House, kg T) string {
	if !known(float64(kg)) {
		return None
	}
	return h.Weight(float64(kg))
}

// Heat writes heat of J: 830 Wh, 12.9 kWh.
func Heat[T ~float64](j T) string {
	switch k := float64(j) / quantity.KilowattHour; {
	case !known(k):
		return None
	case k < 0.1:
		return fmt.Sprintf("%.0f Wh", 1000*k)
	case k < 100:
		return fmt.Sprintf("%.1f kWh", k)
	default:
		return fmt.Sprintf("%.0f kWh", k)
	}
}

// Beginning is what the times of a batch are told after: its first soak or, of bought green
// malt, that it was begun.
func Beginning(green bool) string {
	if green {
		return "it was begun"
	}
	return "the first soak"
}

// Lengths of time have one form, in every answer: 20 s, 45 min, 7 h 30 min, 6 d 22 h. So has a time
// from the first soak, which is the length of time since. Shares have one as well: 12.4 %, with a
// blank, to a tenth of a point where a moisture or a yield is meant, and whole where a forecast knows
// no more of it.

// Lasting writes a length of time of s as a forecast knows it: 9 h 30 min, 6 d 4 h. Of days it has the
// hour, for their spread is hours and more.
func Lasting[T ~float64](s T) string {
	if !known(float64(s)) {
		return None
	}
	return quantity.Lasting(float64(s))
}

// After writes a time of s from the first soak, as Lasting does: 0 h, 16 h, 2 d 13 h.
func After[T ~float64](s T) string {
	if float64(s) == 0 {
		return "0 h"
	}
	return Lasting(s)
}

// Since writes a time of s from a beginning to the minute, and never later than it is: 16 h, 6 d 17 h 39 min.
func Since[T ~float64](s T) string {
	const slack = 0.5 // s, of figures that were rounded
	if m := math.Floor((float64(s) + slack) / 60); m >= 1 {
		return quantity.InFull(60 * m)
	}
	return "0 min"
}

// Span writes a length of time of s as it was set, to the minute: 20 s, 7 h, 1 h 30 min, 21 d;
// "" where there is none.
func Span[T ~float64](s T) string {
	if !(s >= 1) {
		return ""
	}
	return quantity.InFull(float64(s))
}

// More writes by how much a length of time of s is another one: +2 h, -1 d 13 h; "" where nothing is
// left of it.
func More(s float64) string {
	if math.Abs(s) < 60 {
		return ""
	}
	if s < 0 {
		return quantity.Lasting(s)
	}
	return "+" + quantity.Lasting(s)
}

// Part writes a share of 1 of which no more is known than its whole per cent: 67 %.
func Part[T ~float64](share T) string {
	if !known(float64(share)) {
		return None
	}
	return quantity.Fixed(100*float64(share), 0) + " %"
}

// Joined puts between before what stands behind it, where both say something.
func Joined(between, before, after string) string {
	if before == "" || after == "" {
		return before + after
	}
	return before + between + after
}

// OneLine is a text without its line ends, each run of blanks as one.
func OneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// Plural counts things by their word: 1 batch, 3 changes.
func Plural(n int, word string) string {
	return Many(n, word, word+"s")
}
