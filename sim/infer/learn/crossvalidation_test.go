package learn

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWhatWasLearntForetellsABatchThatWasHeldOut(t *testing.T) {
	r, err := Of(context.Background(), invented(t, 3, 2, nil), Options{})
	require.NoError(t, err)
	require.Len(t, r.Batches, 3)
	require.Len(t, r.PredictionErrors, len(kinds))
	for _, m := range r.PredictionErrors {
		t.Logf("%-12s %3d readings: %.4f learnt, %.4f by the model", m.Kind, m.Readings, m.Learnt, m.Model)
		assert.Less(t, m.Learnt, m.Model, m.Kind)
	}
	spans := map[Span][3]float64{}
	for _, x := range r.Durations {
		s := spans[x.What]
		spans[x.What] = [3]float64{s[0] + 1, s[1] + math.Pow((x.Learnt-x.Recorded)/3600, 2), s[2] + math.Pow((x.Model-x.Recorded)/3600, 2)}
	}
	require.Len(t, spans, 2)
	for what, s := range spans {
		t.Logf("%s: %.2f h learnt, %.2f h by the model", what, math.Sqrt(s[1]/s[0]), math.Sqrt(s[2]/s[0]))
		assert.Equal(t, 3.0, s[0], what)
		assert.Less(t, s[1], s[2], what)
	}
}
