package learn

import (
	"cmp"
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/sorted"
	"maltwright/sim/ensemble"
	"maltwright/sim/infer/evidence"
)

// leastExplained is the share of a factor's prior variance that the readings must explain
// for it to count as known. Below a half more of the value is prior than seen.
const leastExplained = 0.5

// Factor is one figure of the house.
type Factor struct {
	Which             ensemble.Factor // or Thermometer
	Grain             *model.Grain    // of uptake, husk-water and chit: the lot
	Kiln              *model.Kiln     // of drying
	Value             float64         // beside the model's 1; of the thermometer K that it shows too much
	Error             float64         // standard error, in the same unit
	Usual             float64         // what it is taken to be before anything is read
	Spread            float64         // standard deviation around that
	VarianceExplained float64         // share of that variance that the readings explain, 0 to 1
	Scatter           float64         // standard deviation of batches about it; 0 where they are too few to tell
	Batches           int             // that have a reading which it moves
	Before            int             // batches that an older house block rests on, from which it went on
	Open              ensemble.Open   // what it is of the things that a process leaves open
}

// Known tells whether the readings settle it well enough to be written down.
func (f Factor) Known() bool { return f.VarianceExplained >= leastExplained }

// order is that in which factors are listed.
var order = []ensemble.Factor{ensemble.Growth, ensemble.Chit, ensemble.Respiration, ensemble.Withering, ensemble.Uptake, ensemble.HuskWater, ensemble.Drying, Thermometer}

// factors are the shared columns, and what older batches taught besides.
func (f *fit) factors(from *model.Learnt) []Factor {
	var list []Factor
	for k, c := range f.columns {
		if !c.shared() {
			continue
		}
		z, variance := f.Mean(k), f.Cov(k, k)
		x := Factor{Which: c.which, Grain: c.grain, Kiln: c.kiln, Value: c.axis.Value(z), Usual: c.axis.Value(0), VarianceExplained: 1 - variance,
			Open: c.axis.Open, Spread: c.slope(0), Error: c.slope(z) * math.Sqrt(variance), Batches: f.moves(k),
			Scatter: c.slope(z) * f.Scatter(k)}
		if c.from != nil {
			x.Before = c.from.Batches
		}
		list = append(list, x)
	}
	list = append(list, f.carried(from)...)
	sorted.Stable(list, func(a, b Factor) int {
		return cmp.Compare(slices.Index(order, a.Which), slices.Index(order, b.Which))
	})
	return list
}

// slope is by how much the value changes with a standard deviation of its axis. Of a
// factor, which is log-normal, that is the value times the change of its logarithm.
func (c column) slope(z float64) float64 {
	const half = 0.05
	if c.axis.Thermometer {
		return (c.axis.Value(z+half) - c.axis.Value(z-half)) / (2 * half)
	}
	return c.axis.Value(z) * math.Log(c.axis.Value(z+half)/c.axis.Value(z-half)) / (2 * half)
}

// noticed is how far a standard deviation of a factor must move a reading, in the
// reading's own errors, for the batch to say anything of it.
const noticed = 0.1

// moves counts the batches with a reading that a shared column moves.
func (f *fit) moves(column int) int {
	count := 0
	for i, axes := range f.common.Axes {
		if axis := slices.Index(axes, column); axis >= 0 && f.Moves(i, axis, noticed) {
			count++
		}
	}
	return count
}

// Pair is two figures whose errors go together, so that the readings tell rather what
// both come to than each of them.
type Pair struct {
	A, B        Side
	Of          *model.Batch // the batch whose own the second is; nil where it is of the house
	Correlation float64      // of the errors, −1 to 1
}

// together is the correlation of two errors from which on they are listed.
const together = 0.8

// posterior is what a fit tells of how errors go together.
type posterior interface {
	Cov(k, l int) float64
	OwnCov(trial, axis int) (shared []float64, variance float64)
}

// correlated lists the pairs with a factor of the house. The shared columns come first.
func correlated(p posterior, trials []*evidence.Trial, columns []column) []Pair {
	var list []Pair
	for i, a := range columns {
		if !a.shared() {
			break
		}
		for _, b := range columns[i+1:] {
			x := pairOf(p, a, b)
			if !b.shared() {
				x.Of = trials[b.trial].Batch
			}
			if math.Abs(x.Correlation) > together {
				list = append(list, x)
			}
		}
	}
	return list
}

// pairOf is that of a factor of the house with another, or with what is a batch's own.
func pairOf(p posterior, a, b column) Pair {
	with, variance := 0.0, 0.0
	if b.shared() {
		with, variance = p.Cov(a.seat, b.seat), p.Cov(b.seat, b.seat)
	} else {
		var all []float64
		all, variance = p.OwnCov(b.trial, b.seat)
		with = all[a.seat]
	}
	return Pair{A: a.side(), B: b.side(), Correlation: with / math.Sqrt(p.Cov(a.seat, a.seat)*variance)}
}

// Side is one of a pair.
type Side struct {
	Open ensemble.Open
	Of   string // the lot or the kiln; "" for none
}

func (c column) side() Side { return Side{c.axis.Open, c.of} }
