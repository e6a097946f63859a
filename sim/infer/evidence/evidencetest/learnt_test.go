package evidencetest_test

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/ensemble"
	"maltwright/sim/infer/evidence/evidencetest"
	"maltwright/sim/infer/learn"
)

// The three records of the examples teach what their loft really is.
func TestTheLoftOfTheExamplesIsLearnt(t *testing.T) {
	folder := filepath.Join("..", "..", "..", "..", "examples", "batches")
	root, err := read.OpenRoot(folder)
	require.NoError(t, err)
	defer root.Close()
	var batches []*model.Batch
	for _, name := range []string{"26-03.malt", "26-04.malt", "26-05.malt"} {
		text, err := os.ReadFile(filepath.Join(folder, name))
		require.NoError(t, err)
		h, _ := read.Load(name, text, ".", root)
		batches = append(batches, h.Batches...)
	}
	r, err := learn.Of(context.Background(), batches, learn.Options{})
	require.NoError(t, err)
	truth := map[ensemble.Factor]float64{ensemble.Growth: *evidencetest.Loft.Growth, ensemble.Respiration: *evidencetest.Loft.Respiration,
		ensemble.HuskWater: 1, ensemble.Chit: 1, ensemble.Withering: 1,
		ensemble.Uptake: *evidencetest.Loft.Uptake, ensemble.Drying: *evidencetest.Loft.Drying, learn.Thermometer: evidencetest.LoftOffset}
	require.Len(t, r.Factors, len(truth))
	for _, f := range r.Factors {
		t.Logf("%-12s %.3f ± %.3f of %.2f", f.Which, f.Value, f.Error, truth[f.Which])
		assert.Less(t, math.Abs(f.Value-truth[f.Which]), 2.5*f.Error, f.Which)
		assert.True(t, f.Known(), f.Which)
		assert.Equal(t, 3, f.Batches, f.Which)
	}
}

// The three records of the porch teach what each of its kilns is, as far as they tell.
func TestTheKilnsOfThePorchAreLearnt(t *testing.T) {
	folder := filepath.Join("..", "..", "..", "..", "examples", "home")
	root, err := read.OpenRoot(folder)
	require.NoError(t, err)
	defer root.Close()
	var batches []*model.Batch
	for _, name := range []string{"26-02.malt", "26-03.malt", "26-04.malt"} {
		text, err := os.ReadFile(filepath.Join(folder, name))
		require.NoError(t, err)
		h, _ := read.Load(name, text, ".", root)
		batches = append(batches, h.Batches...)
	}
	r, err := learn.Of(context.Background(), batches, learn.Options{NoCrossValidation: true})
	require.NoError(t, err)
	truth := evidencetest.Porch(batches[0].Process)
	of := map[string]float64{}
	for k, v := range truth.DryingOf {
		of[k.Name] = v
	}
	kilns := 0
	for _, f := range r.Factors {
		want, known := 0.0, true
		switch f.Which {
		case ensemble.Drying:
			kilns++
			want, known = of[f.Kiln.Name], f.Kiln.Name == "fruit dryer"
		case ensemble.Growth:
			want = *truth.Growth
		case ensemble.Respiration:
			want = *truth.Respiration
		case learn.Thermometer:
			want = evidencetest.PorchOffset
		default:
			continue
		}
		t.Logf("%-12s %.3f ± %.3f of %.2f", f.Which, f.Value, f.Error, want)
		assert.Less(t, math.Abs(f.Value-want), 2.5*f.Error, f.Which)
		assert.Equal(t, known, f.Known(), "%s: what a still oven of dry malt does hangs little on the malt", f.Which)
	}
	assert.Equal(t, 2, kilns)
}
