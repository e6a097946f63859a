package quantity

import "fmt"

// Range is two quantities of one dimension; a single value has Low equal to High.
type Range struct{ Low, High Quantity }

// Single tells whether the range is one value.
func (r Range) Single() bool { return r.Low.SI == r.High.SI }

// Contains tells whether a value in SI lies in the range, ends included.
func (r Range) Contains(si float64) bool { return r.Low.SI <= si && si <= r.High.SI }

// String is "14 to 17 °C", or "14 °C" for a single value. The unit stands once
// where both are written in the same.
func (r Range) String() string {
	low, high := r.Low.String(), r.High.String()
	switch {
	case low == high:
		return low
	case len(r.Low.more) == 0 && len(r.High.more) == 0 && r.Low.first.Unit == r.High.first.Unit:
		return fmt.Sprintf("%s to %s", Part{Number: r.Low.first.Number}.text(), high)
	}
	return low + " to " + high
}

// Op says on which side of its value a bound holds.
type Op int

// The bounds.
const (
	AtLeast Op = iota
	AtMost
	Is
	Above
	Below
)

var opWords = [...]string{"at least", "at most", "is", "above", "below"}

// String is the bound as the language writes it.
func (o Op) String() string {
	if o < 0 || int(o) >= len(opWords) {
		return "unknown"
	}
	return opWords[o]
}

// Bound is a bound and its value. With Is the value may be a range; otherwise a
// range is taken by its Low for at least and above, its High for at most and below.
type Bound struct {
	Op    Op
	Range Range
}

// sameValue is how close two values count as equal, as a share of the value:
// well below what any scale or thermometer shows.
const sameValue = 1e-9

// Holds tells whether a value in SI keeps the bound.
func (b Bound) Holds(si float64) bool {
	low, high := b.Range.Low.SI, b.Range.High.SI
	slack := sameValue * max(abs(low), abs(high), abs(si))
	switch b.Op {
	case AtLeast:
		return si >= low-slack
	case AtMost:
		return si <= high+slack
	case Above:
		return si > low
	case Below:
		return si < high
	}
	return si >= low-slack && si <= high+slack
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}

// String is "at least 43 %", or the bare range for a range that something is in.
func (b Bound) String() string {
	if b.Op == Is && !b.Range.Single() {
		return b.Range.String()
	}
	return b.Op.String() + " " + b.Range.String()
}
