package learn

import (
	"context"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"maltwright/lang/model"
	"maltwright/sim/ensemble"
	"maltwright/sim/infer/evidence"
)

func TestALotOfItsOwnIsLearntFromItsBatchAlone(t *testing.T) {
	batches := invented(t, 2, 4, nil)
	other, p := *batches[1].Process.Grain, *batches[1].Process
	other.Name = "Near field 2026"
	p.Grain = &other
	batches[1].Process = &p
	r, err := Of(context.Background(), batches, Options{NoCrossValidation: true})
	require.NoError(t, err)
	var lots []string
	for _, f := range r.Factors {
		if f.Which == ensemble.Uptake {
			lots = append(lots, f.Grain.Name)
			assert.Equal(t, 1, f.Batches)
		}
	}
	assert.Equal(t, []string{"Far field 2026", "Near field 2026"}, lots)

	a, err := trialOf(t.Context(), batches[0], nil)
	require.NoError(t, err)
	b, err := trialOf(t.Context(), batches[1], nil)
	require.NoError(t, err)
	f, err := fitted(context.Background(), []*evidence.Trial{a, b}, Options{})
	require.NoError(t, err)
	z := f.pointOf(1)
	for i, axis := range b.Axes {
		switch {
		case axis.Thermometer, axis.Factor == ensemble.Growth:
			assert.NotZero(t, z[i], axis.Open)
		case axis.Factor == ensemble.Uptake, axis.Factor == "":
			assert.Zero(t, z[i], axis.Open)
		}
	}
}

// Each kiln of a process has a factor of its own, by its name; one of which nothing is said
// has none that could be written down.
func TestAProcessWithTwoKilnsTeachesOfBoth(t *testing.T) {
	b := *batchOf(t, "use \"pale.malt\"\nbatch \"x\" of \"Loft pale\" { began 2026-03-01 07:00; weighed 5 kg clean malt at 2026-03-08 07:00 }")
	p := *b.Process
	b.Process = &p
	again := *model.First[*model.Kilning](&p)
	p.Stages = append(slices.Clone(p.Stages), &again)
	of := func() (names []string) {
		trial, err := evidence.New(&b, time.Time{})
		require.NoError(t, err)
		for _, c := range arranged([]*evidence.Trial{trial}).columns {
			if c.which == ensemble.Drying {
				names = append(names, c.kiln.Name)
			}
		}
		return names
	}
	assert.Equal(t, []string{"tray kiln"}, of(), "what is dried on one kiln twice teaches of it")
	other := *again.Kiln
	other.Name = "oven"
	again.Kiln = &other
	assert.Equal(t, []string{"tray kiln", "oven"}, of())
	again.Kiln = nil
	assert.Equal(t, []string{"tray kiln"}, of())
	p.Stages = nil
	assert.Empty(t, of())
}

// told is a posterior of two shared axes and one own of the only trial.
type told struct{ cov *mat.SymDense }

func (c told) Cov(k, l int) float64 { return c.cov.At(k, l) }
func (c told) OwnCov(int, int) ([]float64, float64) {
	return []float64{c.cov.At(3, 0), c.cov.At(3, 1), c.cov.At(3, 2)}, c.cov.At(3, 3)
}

func TestFiguresWhoseErrorsGoTogetherAreTold(t *testing.T) {
	cov := mat.NewSymDense(4, []float64{
		0.25, 0.01, 0.02, 0.43,
		0.01, 0.04, -0.09, 0.00,
		0.02, -0.09, 0.25, 0.00,
		0.43, 0.00, 0.00, 1.00,
	})
	named := func(open ensemble.Open) evidence.Axis { return evidence.Axis{Unknown: ensemble.Unknown{Open: open}} }
	b := &model.Batch{Name: "26-01"}
	list := correlated(told{cov}, []*evidence.Trial{{Batch: b}}, []column{
		{key: key{which: ensemble.Growth}, axis: named(ensemble.LotGrowth)},
		{key: key{ensemble.Uptake, "Far field"}, axis: named(ensemble.LotUptake), seat: 1},
		{key: key{ensemble.Drying, "tray"}, axis: named(ensemble.KilnDrying), seat: 2}, // -0.09/√0.01 = -0.9 with uptake
		{axis: named(ensemble.PlaceInBands), seat: 9},                                  // 0.43/√0.25 = 0.86 with growth
	})
	require.Len(t, list, 2)
	assert.Equal(t, []Side{{Open: ensemble.LotGrowth}, {Open: ensemble.PlaceInBands}}, []Side{list[0].A, list[0].B})
	assert.Equal(t, b, list[0].Of)
	assert.InDelta(t, 0.86, list[0].Correlation, 1e-9)
	assert.Equal(t, []Side{{ensemble.LotUptake, "Far field"}, {ensemble.KilnDrying, "tray"}}, []Side{list[1].A, list[1].B})
	assert.Nil(t, list[1].Of)
	assert.InDelta(t, -0.9, list[1].Correlation, 1e-9)
}
