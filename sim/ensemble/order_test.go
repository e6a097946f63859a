package ensemble

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// A step that few of the members have stands behind the one that it follows there, however late
// those members are: waits that are never in one member, and one that comes latest of all.
func TestAWaitStandsBehindTheStepOfItsGate(t *testing.T) {
	e := Of(loft(t))
	member := func(late float64, steps ...string) {
		f := &forecast.Forecast{Stages: []forecast.Stage{{Kind: model.KilnStage}}}
		for i, label := range steps {
			step := forecast.Step{Label: label, Number: 1, End: late + float64(i)}
			if label[0] == 'w' { // a wait, by its gate
				step.Label, step.Number = forecast.Waiting, 0
				step.Place.Start = int(label[1])
			}
			f.Stages[0].Steps = append(f.Stages[0].Steps, step)
		}
		e.Members = append(e.Members, e.Reduce(f))
	}
	member(0, "dry", "cure", "cool", "deculm")
	member(100, "dry", "cure", "w2", "cool", "deculm")
	member(200, "w0", "dry", "cure", "cool", "deculm")
	member(300, "dry", "w1", "cure", "cool", "deculm")
	var got []string
	for _, s := range e.Steps() {
		if s.Label == forecast.Waiting {
			got = append(got, "w"+string(rune(s.At)))
		} else {
			got = append(got, s.Label)
		}
	}
	assert.Equal(t, []string{"w0", "dry", "w1", "cure", "w2", "cool", "deculm"}, got)
}
