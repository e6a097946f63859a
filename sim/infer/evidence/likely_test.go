package evidence_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/infer/evidence/evidencetest"
)

// BenchmarkMostLikely is nearly all of what seasons takes for a batch.
func BenchmarkMostLikely(b *testing.B) {
	made, err := evidencetest.Of(written(b, "").Process, "x", began, evidencetest.Truth{Options: forecast.Options{Growth: new(0.9)}}, 5)
	require.NoError(b, err)
	batch := load(b, made.Text)
	for b.Loop() {
		_, err := evidence.MostLikely(context.Background(), batch, nil)
		require.NoError(b, err)
	}
}
