package chart

import (
	"math"

	"maltwright/lang/quantity"
)

// Ticks are the values that an axis is marked with: whole steps of 1, 2 or 5 times a power of ten. The first and the last
// enclose what was asked, and are the ends of the axis.
type Ticks struct {
	At     []float64
	Places int // decimals that tell them apart
}

// Low is the lower end of the axis.
func (t Ticks) Low() float64 { return t.At[0] }

// High is its upper end.
func (t Ticks) High() float64 { return t.At[len(t.At)-1] }

// Label writes a tick.
func (t Ticks) Label(i int) string { return quantity.Fixed(t.At[i], t.Places) }

// NiceTicks gives at most so many ticks, and two at least, that enclose an interval. They are no finer than values of so many
// decimals. Where it has no length, one unit of these goes to either side; where it is not known, it is 0 to 1.
func NiceTicks(low, high float64, most, places int) Ticks {
	places = max(0, min(places, 9))
	low, high = interval(low, high, math.Pow10(-places))
	most = max(most, 2)
	power := math.Max(math.Floor(math.Log10((high-low)/float64(most))), float64(-places))
	for ; ; power++ {
		for _, times := range []float64{1, 2, 5} {
			step := times * math.Pow(10, power)
			from, to := math.Floor(low/step+1e-9), math.Ceil(high/step-1e-9)
			to = math.Max(to, from+1)
			if n := int(to-from) + 1; n > most {
				continue
			}
			t := Ticks{Places: max(0, -int(power))}
			for k := from; k <= to; k++ {
				t.At = append(t.At, nearStep(k, times, power))
			}
			return t
		}
	}
}

// nearStep is k steps, rounded once.
func nearStep(k, times, power float64) float64 {
	if power < 0 {
		return k * times / math.Pow(10, -power)
	}
	return k * times * math.Pow(10, power)
}

// interval is one that can be drawn: of two numbers, in order, some length apart.
func interval(low, high, unit float64) (float64, float64) {
	if !(math.Abs(low) < 1e15 && math.Abs(high) < 1e15) {
		return 0, 1
	}
	if low > high {
		low, high = high, low
	}
	if least := math.Max(1e-12, 1e-9*math.Max(math.Abs(low), math.Abs(high))); high-low < least {
		unit = math.Max(unit, least)
		return low - unit, high + unit
	}
	return low, high
}

// known tells whether a figure can be drawn: NaN and what is beyond all measure are gaps.
func known(x float64) bool { return math.Abs(x) <= 1e12 }
