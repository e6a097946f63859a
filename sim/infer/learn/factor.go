package learn

import (
	"cmp"
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/sim/ensemble"
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
	Batches           int             // that have a reading which it moves
	Open              ensemble.Open   // what it is of the things that a process leaves open
}

// Known tells whether the readings settle it well enough to be written down.
func (f Factor) Known() bool { return f.VarianceExplained >= leastExplained }

// order is that in which factors are listed.
var order = []ensemble.Factor{ensemble.Growth, ensemble.Chit, ensemble.Respiration, ensemble.Withering, ensemble.Uptake, ensemble.HuskWater, ensemble.Drying, Thermometer}

// varianceExplained is the share of the prior variance of a column that the readings explain.
func (f *fit) varianceExplained(column int) float64 { return 1 - f.Cov.At(column, column) }

// factors are the shared columns.
func (f *fit) factors() ([]Factor, error) {
	var list []Factor
	for n, c := range f.columns {
		if !c.shared() {
			continue
		}
		x := Factor{Which: c.which, Grain: c.grain, Kiln: c.kiln, Value: c.axis.Value(f.Z[n]), Usual: c.axis.Value(0),
			VarianceExplained: f.varianceExplained(n), Open: c.axis.Open}
		x.Spread, x.Error = c.slope(0), c.slope(f.Z[n])*math.Sqrt(f.Cov.At(n, n))
		var err error
		if x.Batches, err = f.moves(n); err != nil {
			return nil, err
		}
		list = append(list, x)
	}
	slices.SortStableFunc(list, func(a, b Factor) int {
		return cmp.Compare(slices.Index(order, a.Which), slices.Index(order, b.Which))
	})
	return list, nil
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

// moves counts the batches with a reading that a column moves.
func (f *fit) moves(column int) (int, error) {
	count := 0
	for i, t := range f.trials {
		axis := slices.Index(f.shared[i], column)
		if axis < 0 {
			continue
		}
		z := make([]float64, len(t.Axes))
		for k, n := range f.shared[i] {
			z[k] = f.Z[n]
		}
		before := f.Residuals[i]
		z[axis]++
		after, err := t.At(z)
		if err != nil {
			return 0, err
		}
		for k := range before {
			if math.Abs(after[k]-before[k]) >= noticed {
				count++
				break
			}
		}
	}
	return count, nil
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

// correlated lists the pairs with a factor of the house.
func (f *fit) correlated() []Pair {
	var list []Pair
	for i, a := range f.columns {
		for j, b := range f.columns {
			if !a.shared() || i == j || b.shared() && j < i {
				continue
			}
			r := f.Cov.At(i, j) / math.Sqrt(f.Cov.At(i, i)*f.Cov.At(j, j))
			if math.Abs(r) <= together {
				continue
			}
			p := Pair{A: a.side(), B: b.side(), Correlation: r}
			if !b.shared() {
				p.Of = f.trials[b.trial].Batch
			}
			list = append(list, p)
		}
	}
	return list
}

// Side is one of a pair.
type Side struct {
	Open ensemble.Open
	Of   string // the lot or the kiln; "" for none
}

func (c column) side() Side { return Side{c.axis.Open, c.of} }
