package learn

import (
	"maltwright/lang/model"
	"maltwright/sim/ensemble"
	"maltwright/sim/infer/evidence"
)

const (
	leastScattered = 6   // batches from which on it is sought by how much they differ
	guessed        = 2.0 // batches for which the guess of that counts, of half of the usual spread (a choice)
)

// guesses are the factors of which it is sought by how much batches scatter about them, and
// what is guessed of it: those that six batches tell of, or of which older ones have told.
// A thermometer shows in all batches the same too much.
func (f *fit) guesses() map[int]evidence.Guess {
	list := map[int]evidence.Guess{}
	for k, c := range f.columns {
		if !c.shared() || c.which == Thermometer {
			continue
		}
		if sd, batches, ok := c.fromSaid(); ok {
			list[k] = evidence.Guess{SD: sd, Trials: batches}
		} else if f.moves(k) >= leastScattered {
			list[k] = evidence.Guess{SD: ensemble.SpreadLeft, Trials: guessed}
		}
	}
	return list
}

// Single is what one batch says by itself: its own readings and what is usual, as if there were
// no other batch and nothing had been learnt.
type Single struct {
	Batch   *model.Batch
	Figures []Figure
}

// Figure is one of a batch.
type Figure struct {
	Which        ensemble.Factor
	Of           string // the lot or the kiln; "" for none
	Value, Error float64
	Told         bool // whether its readings settle it by more than half
}

// singles are the figures of each batch.
func (f *fit) singles() []Single {
	var list []Single
	for i, t := range f.trials {
		z, sd := f.Together.Single(i)
		s := Single{Batch: t.Batch}
		for axis, k := range f.common.Axes[i] {
			if k == evidence.Own {
				continue
			}
			c := f.columns[k]
			s.Figures = append(s.Figures, Figure{c.which, c.of, c.axis.Value(z[axis]), c.slope(z[axis]) * sd[axis], 1-sd[axis]*sd[axis] >= leastExplained})
		}
		list = append(list, s)
	}
	return list
}
