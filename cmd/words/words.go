// Package words is the one place that formats for people: numbers in the units of the
// house, lengths of time, and the sentences of what an answer tells.
package words

import (
	"fmt"
	"math"
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
	return House{System: p.Units(), home: p.House, bag: p.Bag}
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

// Elapsed writes a time of s from the first soak: 7:00, or 2d 13:20.
func Elapsed[T ~float64](s T) string {
	if !known(float64(s)) {
		return None
	}
	m := int(math.Round(float64(s) / 60))
	if d := m / 1440; d > 0 {
		return fmt.Sprintf("%dd %02d:%02d", d, m/60%24, m%60)
	}
	return fmt.Sprintf("%d:%02d", m/60, m%60)
}

// Lasting writes a length of time of s, roughly, for a sentence: 9.5 h, 6 d 4 h.
func Lasting[T ~float64](s T) string {
	if !known(float64(s)) {
		return None
	}
	if h := float64(s) / 3600; h < 48 {
		return fmt.Sprintf("%.1f h", h)
	}
	h := int(math.Round(float64(s) / 3600))
	return fmt.Sprintf("%d d %d h", h/24, h%24)
}

// Span writes a length of time of s as one would say it: 20 s, 7 h, 1 h 30 min, 21 days;
// "" where there is none.
func Span[T ~float64](s T) string {
	m := int(math.Round(float64(s) / 60))
	switch h := m / 60; {
	case s >= 1 && s < 60:
		return quantity.Rounded(float64(s), 0) + " s"
	case m <= 0:
		return ""
	case m%1440 == 0 && m > 2*1440:
		return fmt.Sprintf("%d days", m/1440)
	case h == 0:
		return fmt.Sprintf("%d min", m)
	case m%60 == 0:
		return fmt.Sprintf("%d h", h)
	default:
		return fmt.Sprintf("%d h %d min", h, m%60)
	}
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
