package read

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
)

// stock reports what is taken of a lot beyond what came in of it: by one process, or by
// the batches of the file together.
func (b *builder) stock() {
	taken := slices.Clone(b.house.Batches)
	slices.SortStableFunc(taken, func(x, y *model.Batch) int { return x.Began.Compare(y.Began.Time) })
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
		sum := 0.0
		for _, t := range taken {
			if t.Process == nil || t.Process.TakenOf(g) == 0 {
				continue
			}
			if sum += t.Process.TakenOf(g); beyond(sum, in.SI) {
				b.note(overdrawn(g, t.Place, fmt.Sprintf("with batch %q %s of %q is taken, more than the %s that came in", t.Name, in.Like(sum), g.Name, in)))
				break
			}
		}
	}
}

// beyond leaves what rounding leaves over out of account.
func beyond(taken, in float64) bool { return taken > in*(1+1e-9) }

func overdrawn(g *model.Grain, at source.Place, message string) finding.Finding {
	f := lotOverdrawn.At(at, message)
	f.Related = []finding.Related{{Place: g.Delivered[0].Place, Message: "it came in here"}}
	return f
}
