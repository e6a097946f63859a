package visits

import (
	"cmp"
	"math"

	"maltwright/lang/model"
	"maltwright/lang/sorted"
)

// Visit is one time at which somebody goes to the batch, with all that is to do then.
type Visit struct {
	At               float64 // s from the first soak
	Waits            float64 // s that all of it may wait without harm
	Tasks            []Task
	Moisture, Weight float64       // as in Task, from the first task that knows them
	In               *model.Holder // of the weight
}

// together is how near to one another tasks are one visit, s.
const together = 60.0

// Gather makes visits of tasks in the order of time: those that fall due within a
// minute are done in one.
func Gather(list []Task) []Visit {
	var out []Visit
	for _, t := range list {
		if n := len(out); n == 0 || t.At-out[n-1].At >= together {
			out = append(out, Visit{At: t.At, Waits: t.Waits, Moisture: math.NaN(), Weight: math.NaN()})
		}
		v := &out[len(out)-1]
		v.Tasks = append(v.Tasks, t)
		v.Waits = min(v.Waits, t.Waits)
		if math.IsNaN(v.Moisture) {
			v.Moisture = t.Moisture
		}
		if math.IsNaN(v.Weight) {
			v.Weight, v.In = t.Weight, t.In
		}
	}
	for _, v := range out {
		sorted.Stable(v.Tasks, func(a, b Task) int { return cmp.Compare(first[a.Kind], first[b.Kind]) })
	}
	return out
}

// Hands is how many could work at once in a visit: one for each task, but for what is
// only looked at, or comes about by itself.
func (v Visit) Hands() (n int) {
	for _, t := range v.Tasks {
		if t.Kind != Look && t.Kind != Gate && t.Kind != Rested {
			n++
		}
	}
	return n
}

func (t Task) due() (at, waits float64) { return t.At, t.Waits }

func (v Visit) due() (at, waits float64) { return v.At, v.Waits }
