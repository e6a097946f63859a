package quantity

import "math"

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

// Turned is the bound on the other side of the value; of Is it is Is.
func (o Op) Turned() Op {
	switch o {
	case AtLeast:
		return AtMost
	case AtMost:
		return AtLeast
	case Above:
		return Below
	case Below:
		return Above
	}
	return o
}

// Bound is a bound and its value. With Is the value may be a range, in which a
// value then lies. Of a range, at least and above take the Low end, at most and
// below the High one.
type Bound struct {
	Op    Op
	Range Range
}

// sameValue is how close two values count as equal, as a share of the larger: far
// below what any scale or thermometer shows, far above rounding in the SI value.
const sameValue = 1e-9

// Holds tells whether a value in SI keeps the bound. A value that is not finite
// keeps none.
func (b Bound) Holds(si float64) bool {
	if math.IsNaN(si) || math.IsInf(si, 0) {
		return false
	}
	low, high := b.Range.Low.SI, b.Range.High.SI
	slack := sameValue * max(math.Abs(low), math.Abs(high), math.Abs(si))
	switch b.Op {
	case AtLeast:
		return si >= low-slack
	case AtMost:
		return si <= high+slack
	case Above:
		return si > low+slack
	case Below:
		return si < high-slack
	case Is:
		return si >= low-slack && si <= high+slack
	}
	return false
}

// String is "at least 43 %", or the bare range for a range that something is in.
func (b Bound) String() string {
	if b.Op == Is && !b.Range.Single() {
		return b.Range.String()
	}
	return b.Op.String() + " " + b.Range.String()
}

// missedDigits is how many digits behind the point show at the most that a bound is missed.
const missedDigits = 4

// Missed writes a value in SI that the bound does not hold of, as its lower end is
// written, with so many more digits that this shows: 2.96 %, where 3 to 5 % is wanted.
func (b Bound) Missed(si float64) string {
	q := b.Range.Low
	text := q.Like(si)
	if b.Holds(si) || len(q.more) > 0 {
		return text
	}
	u := q.unit()
	for places := decimalsOf(q.first.number); places <= missedDigits && b.holdsOf(text); places++ {
		text = written{round(q.inUnit(si, u), places, 0), u}.text()
	}
	return text
}

// holdsOf tells whether a bound holds of a value as it is printed.
func (b Bound) holdsOf(text string) bool {
	q, err := Parse(text)
	if err != nil {
		return false
	}
	q, err = q.As(b.Range.Low.Dimension)
	return err == nil && b.Holds(q.SI)
}
