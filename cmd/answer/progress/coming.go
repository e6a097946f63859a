package progress

import (
	"math"
	"strings"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/sim/ensemble"
	"maltwright/sim/infer/follow"
)

// Wait is a condition that the batch waits for, or will.
type Wait struct {
	outlook.StageName
	Step  string                        `json:",omitempty" doc:"the step that it ends, as a record names it"`
	Text  string                        `doc:"as written"`
	Hold  bool                          `doc:"a gate statement; otherwise an until"`
	Open  bool                          `doc:"it is waited for now"`
	Left  answer.Spread[answer.Seconds] `doc:"hours from then; negative where it was so already, null where it does not come about"`
	Never bool                          `doc:"it does not come about in most cases"`
}

// Late is something that should have been done by now.
type Late struct {
	Kind  string `doc:"step: what it waits for has most likely come about; guard: its latest time is over; turn; cool: malt was read hot when it was to be cool, and the text is the reading"`
	Stage string
	Since time.Time
	Late  answer.Seconds
	Text  string `doc:"the condition, as written"`
}

func waitsOf(f *follow.Following) (list []Wait) {
	for _, w := range f.Waits {
		list = append(list, Wait{outlook.NameOf(f.Trial.Process, w.Of), outlook.StepEndedBy(f.Centre, w.Place), oneLine(w.Text), w.Hold, w.Open, left(w.Left), w.Left.P50 > follow.Never})
	}
	return list
}

// left is a length of time, infinite where what is waited for does not come about.
func left(s ensemble.Spread) answer.Spread[answer.Seconds] {
	ever := func(t float64) float64 {
		if t > follow.Never {
			return math.Inf(1)
		}
		return t
	}
	return outlook.Points[answer.Seconds](ensemble.Spread{P10: ever(s.P10), P50: ever(s.P50), P90: ever(s.P90), Share: s.Share})
}

func lateOf(f *follow.Following) (list []Late) {
	for _, l := range f.Late {
		list = append(list, Late{string(l.Kind), string(l.Stage), outlook.ClockAt(f.Trial.Batch.Began.Time, answer.Seconds(l.Since)), answer.Seconds(f.Now - l.Since), oneLine(l.Text)})
	}
	return list
}

// oneLine is a text of a file without its line ends.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
