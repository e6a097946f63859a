package read

import (
	"fmt"
	"slices"
	"time"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/sorted"
	"maltwright/lang/source"
)

// stock reports what is taken of a lot beyond what came in of it: by one process, or by
// the batches of the file together, one after another.
func (b *builder) stock() {
	taken := slices.Clone(b.house.Batches)
	sorted.Stable(taken, earlier)
	for _, g := range b.house.Grains {
		in, ok := g.Came()
		if !ok {
			continue
		}
		for _, p := range b.house.Processes {
			for _, t := range p.Taken() {
				if t.Grain == g && beyond(t.Weight.SI, in.SI) {
					b.note(overdrawn(g, t.Weight.Place, fmt.Sprintf("%s is more than came in of %q, %s", t.Weight, g.Name, in)))
				}
			}
		}
		b.takenOf(g, in, taken)
	}
}

// takenOf goes through the batches of a lot, and reports the first that took more than there
// was. What comes in after a batch was begun is not in it.
func (b *builder) takenOf(g *model.Grain, in model.Quantity, taken []*model.Batch) {
	sum := 0.0
	for _, t := range taken {
		if t.Process == nil || t.Process.TakenOf(g) == 0 {
			continue
		}
		by := g.CameBy(t.Began.Time)
		if sum += t.Process.TakenOf(g); !beyond(sum, by) {
			continue
		}
		had := fmt.Sprintf("more than the %s that came in", in)
		switch {
		case by == 0:
			had = "and none had come in by " + t.Began.Format(time.DateOnly)
		case by < in.SI:
			had = fmt.Sprintf("more than the %s that had come in by %s", in.Like(by), t.Began.Format(time.DateOnly))
		}
		f := overdrawn(g, t.Place, fmt.Sprintf("with batch %q %s of %q is taken, %s", t.Name, in.Like(sum), g.Name, had))
		if by < in.SI {
			f.Hint = "look at the dates too, of the batch and of each delivery; " + f.Hint
		}
		b.note(f)
		return
	}
}

// earlier orders batches by when they began; those that do not say come last.
func earlier(x, y *model.Batch) int {
	if x.Began.IsZero() != y.Began.IsZero() {
		if x.Began.IsZero() {
			return 1
		}
		return -1
	}
	return x.Began.Compare(y.Began.Time)
}

// beyond leaves what rounding leaves over out of account.
func beyond(taken, in float64) bool { return taken > in*(1+1e-9) }

func overdrawn(g *model.Grain, at source.Place, message string) finding.Finding {
	f := lotOverdrawn.At(at, message)
	f.Related = []finding.Related{{Place: g.Delivered[0].Place, Message: "it came in here"}}
	return f
}
