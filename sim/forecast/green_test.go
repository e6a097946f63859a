package forecast

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
)

// What is taken over from before the kiln changes nothing: it is the forecast that Run
// makes with these options, and the first one stays as it was.
func TestDriedIsWhatRunGives(t *testing.T) {
	p := run1(t, steepText+growText+kilnText).Process
	plan, err := Run(p, Options{})
	require.NoError(t, err)
	dry := plan.Stages[2].Steps[0]
	for name, course := range map[string]*Course{"by the process": nil,
		"by a record": {Ends: []Ended{{Kind: string(model.DryStep), Number: 1, At: dry.End + 3600, Exact: true}}}} {
		t.Run(name, func(t *testing.T) { driedIsRun(t, p, course) })
	}
}

func driedIsRun(t *testing.T, p *model.Process, course *Course) {
	t.Helper()
	first, err := Run(p, Options{Course: course})
	require.NoError(t, err)
	want, err := Run(p, Options{Course: course, Drying: new(0.8), LateDrying: new(1.3), LateColour: new(0.8), Sorption: 0.01})
	require.NoError(t, err)
	again, err := Run(p, Options{Course: course})
	require.NoError(t, err)
	for range 2 {
		got, err := first.Dried(Options{Drying: new(0.8), LateDrying: new(1.3), LateColour: new(0.8), Sorption: 0.01}, nil)
		require.NoError(t, err)
		assert.NotEqual(t, first.Totals, got.Totals)
		same(t, want, got)
	}
	same(t, again, first)
}

func same(t *testing.T, want, got *Forecast) {
	t.Helper()
	text := func(f *Forecast) string { // which takes two numbers that are none as alike
		return fmt.Sprintf("%+v %+v %+v %+v %+v %+v", f.Stages, f.Gates, f.Pieces, f.Totals, f.Trouble, f.Assumed)
	}
	assert.Equal(t, text(want), text(got))
}

// A step begins with the moisture that the whole forecast gives for it.
func TestMoistureAtIsThatOfTheWholeForecast(t *testing.T) {
	p := run1(t, steepText+growText+kilnText).Process
	first, err := Run(p, Options{})
	require.NoError(t, err)
	slow, err := Run(p, Options{Drying: new(0.8)})
	require.NoError(t, err)
	tried := 0
	for _, st := range slow.Stages {
		for _, s := range st.Steps {
			w, ok := first.MoistureAt(s.Place, 0.8)
			assert.Equal(t, st.Kind == model.KilnStage, ok, s.Label)
			if ok {
				assert.InDelta(t, s.MoistureStart, w, 1e-12, s.Label)
				tried++
			}
		}
	}
	assert.Greater(t, tried, 2)
}
