package forecast

import (
	"fmt"
	"math"
)

// Why a forecast ends before its process does. Their texts are for programmers.

// NoMalt is a stage to which no malt comes, since no kiln stands before it.
type NoMalt struct{}

func (NoMalt) Error() string { return "no malt comes to it" }

// LongSteep is a steep that lasts longer than any grain lives through it.
type LongSteep struct{ Most float64 } // s

func (e LongSteep) Error() string { return fmt.Sprintf("the steep lasts over %.0f s", e.Most) }

// TooDear is a forecast that takes more steps of the models than one may have.
type TooDear struct {
	Most  int     // steps
	Share float64 // of them that go into the statement told of, 0 to 1; NaN where none is known
}

func (e TooDear) Error() string {
	if math.IsNaN(e.Share) {
		return fmt.Sprintf("it takes over %d steps", e.Most)
	}
	return fmt.Sprintf("it takes over %d steps, %.2f of them for this", e.Most, e.Share)
}
