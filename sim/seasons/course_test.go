package seasons

import (
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The moistures along the way are those that stand at cast and at the end, and the parts are those of the scale.
func TestCourseAgreesWithTheFigures(t *testing.T) {
	text, err := os.ReadFile(folder + "/26-03.malt")
	require.NoError(t, err)
	b, f := batchOf(t, string(text))
	s, course := Of(b, f), Course(b, f)
	at := func(when float64) Moment {
		for _, m := range course {
			if math.Abs(m.At-when) < second {
				return m
			}
		}
		require.Fail(t, "nothing read", "%v", when)
		return Moment{}
	}
	cast := at(s.Cast.Value)
	assert.InDelta(t, 9.29/b.Process.Charge.SI, cast.Part, share)
	assert.InDelta(t, s.CastMoisture.Value, cast.Moisture, 1e-3)
	last := at(s.Total.Value)
	assert.InDelta(t, s.Malt.Value/b.Process.Charge.SI, last.Part, share)
	assert.InDelta(t, s.EndMoisture.Value, last.Moisture, 1e-3)
	beds := 0
	for i, m := range course {
		if i > 0 {
			assert.GreaterOrEqual(t, m.At, course[i-1].At)
		}
		if !math.IsNaN(m.Bed) {
			beds++
		}
	}
	assert.Equal(t, 16, beds)
}

func TestCourseWithoutAForecastHasWeightsAlone(t *testing.T) {
	text, err := os.ReadFile(folder + "/26-03.malt")
	require.NoError(t, err)
	b, _ := batchOf(t, string(text))
	for _, m := range Course(b, nil) {
		assert.True(t, math.IsNaN(m.Moisture))
	}
}
