package progress

import (
	"time"

	"maltwright/cmd/answer"
	"maltwright/sim/infer/follow"
	"maltwright/sim/visits"
)

// Visit is one time at which somebody goes to the batch.
type Visit struct {
	Time     time.Time
	At       answer.Seconds
	Moisture answer.Share `json:"moisture_wb"`
	Weight   answer.Kilograms
	Tasks    []Task
}

// Task is one thing to do.
type Task struct {
	Stage string
	Kind  string
	Words answer.Told
}

// Work is a task to be told.
type Work struct{ visits.Task }

// Told marks it.
func (Work) Told() {}

func dueOf(f *follow.Following) (list []Visit) {
	for _, v := range f.Due {
		x := Visit{Time: clock(f.Trial.Batch, v.At), At: answer.Seconds(v.At), Moisture: answer.Share(v.Moisture), Weight: answer.Kilograms(v.Weight)}
		for _, k := range v.Tasks {
			x.Tasks = append(x.Tasks, Task{string(k.Stage), string(k.Kind), Work{k}})
		}
		list = append(list, x)
	}
	return list
}
