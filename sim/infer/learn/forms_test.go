package learn

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
	"maltwright/sim/grain"
	"maltwright/sim/infer/evidence/evidencetest"
)

// rootMeanSquare is that of how far the plans of batches held out were off, h.
func rootMeanSquare(list []Duration, what Span) (learnt, model float64) {
	n := 0.0
	for _, x := range list {
		if x.What == what {
			learnt, model, n = learnt+math.Pow(x.Learnt-x.Recorded, 2), model+math.Pow(x.Model-x.Recorded, 2), n+1
		}
	}
	return math.Sqrt(learnt/n) / 3600, math.Sqrt(model/n) / 3600
}

// Where the equations of growth, uptake and drying are other than the model's, the factors of the
// house take up what they can of that: they are no longer those of the house to within
// their errors, but a plan that goes by them is still nearer than one of the model. The
// figures of the long run stand in docs/limits.md.
func TestAPlanIsBetterForWhatWasLearntThoughTheEquationsAreOther(t *testing.T) {
	type equations struct {
		name  string
		forms grain.Forms
	}
	houses, batches, list := 1, 2, []equations{{"other", evidencetest.OtherForms()}}
	if golden.Long() {
		houses, batches, list = 12, 4, append(list, equations{"own", grain.Forms{}})
	}
	for _, c := range list {
		var lengths []Duration
		square, beyond, n := 0.0, 0, 0.0
		for seed := range uint64(houses) {
			r, err := Of(context.Background(), inventedBy(t, batches, 40+seed, c.forms, nil), Options{})
			require.NoError(t, err)
			lengths = append(lengths, r.Durations...)
			for _, f := range r.Factors {
				z := (f.Value - house[f.Which]) / f.Error
				square += z * z
				if n++; math.Abs(z) > 2.5 {
					beyond++
				}
			}
		}
		for _, what := range []Span{Germination, ToDry} {
			learnt, model := rootMeanSquare(lengths, what)
			t.Logf("%s equations, %s: off by %.2f h as learnt, %.2f h by the model", c.name, what, learnt, model)
			if what == ToDry || golden.Long() { // of a single house the plan of the growing may be worse by chance
				assert.Less(t, learnt, model, what)
			}
		}
		t.Logf("%s equations: %d of %.0f figures beyond 2.5 errors; their mean square in errors is %.1f", c.name, beyond, n, square/n)
	}
}
