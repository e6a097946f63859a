package forecast

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

// What a record says of the air of a step is blown in that step, and in no other.
func TestAStepHasTheAirThatItWasChangedTo(t *testing.T) {
	const body = "kiln in \"kiln\" { dry at air-on 50 °C for 6 h; dry at air-on 60 °C for 6 h }\n"
	less, err := quantity.Make(quantity.Part{Number: "10", Unit: "m3/h"})
	require.NoError(t, err)
	change := model.Change{Step: model.StepName{Kind: model.Word{Text: "dry"}, Number: 2}, What: model.Word{Text: "airflow"}}
	change.To.Low, change.To.High = less, less
	plain, f := kept(t, steepText+growText+body, Course{}), kept(t, steepText+growText+body, Course{Changes: []model.Change{change}})
	last, was := steps(f), steps(plain)
	n := len(last)
	assert.Equal(t, was[n-2].WeightEnd, last[n-2].WeightEnd, "as it was")
	assert.Greater(t, last[n-1].WeightEnd, was[n-1].WeightEnd, "less air takes less water off")
	assert.Equal(t, was[n-1].End-was[n-1].Start, last[n-1].End-last[n-1].Start)
	assert.Equal(t, was[n-1].Label, last[n-1].Label, "it is the same step")
}

// A time and a temperature of one step are both kept.
func TestAStepIsChangedInTimeAndTemperature(t *testing.T) {
	to := func(number, unit string) model.Change {
		q, err := quantity.Make(quantity.Part{Number: number, Unit: unit})
		require.NoError(t, err)
		c := model.Change{Step: model.StepName{Kind: model.Word{Text: "cure"}}}
		c.To.Low, c.To.High, c.To.Where = q, q, "air-on"
		return c
	}
	for _, list := range [][]model.Change{{to("3", "h"), to("90", "°C")}, {to("90", "°C"), to("3", "h")}} {
		cured := 0
		for _, s := range steps(kept(t, steepText+growText+kilnText, Course{Changes: list})) {
			if s.Label == "cure" {
				cured++
				assert.Equal(t, 3*hour, s.End-s.Start)
				assert.Equal(t, 90.0, s.Temperature.To)
			}
		}
		assert.Equal(t, 1, cured)
	}
}
