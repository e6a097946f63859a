package evidence_test

import (
	"context"
	"math"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/infer/evidence/evidencetest"
)

var began = time.Date(2026, 3, 6, 7, 0, 0, 0, time.Local)

func load(t testing.TB, statements string) *model.Batch {
	t.Helper()
	root, err := read.OpenRoot(filepath.Join("..", "..", "..", "examples"))
	require.NoError(t, err)
	defer root.Close()
	h, found := read.Load("x.malt", []byte("use \"pale.malt\"\nuse \"box.malt\"\n"+statements), ".", root)
	require.Empty(t, found, statements)
	require.Len(t, h.Batches, 1)
	return h.Batches[0]
}

func written(t testing.TB, lines string) *model.Batch {
	t.Helper()
	return load(t, "batch \"x\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n"+lines+"}\n")
}

func trial(t testing.TB, b *model.Batch, until time.Time) *evidence.Trial {
	t.Helper()
	x, err := evidence.New(b, until)
	require.NoError(t, err)
	return x
}

func middle(t testing.TB, x *evidence.Trial) *forecast.Forecast {
	t.Helper()
	f, err := x.Run(make([]float64, len(x.Axes)), false)
	require.NoError(t, err)
	return f
}

// 20.00 g that dry to 17.40 g held 13.0 %, and the lot says 12.4 %.
func TestTheSampleOfTheBatchCounts(t *testing.T) {
	x := trial(t, written(t, "  sample 20.00 g dried to 17.40 g\n"), time.Time{})
	assert.InDelta(t, 0.13, x.Process.Grain.Moisture.SI, 1e-9)
	assert.InDelta(t, 6*0.87, middle(t, x).DryMass, 1e-6)
	assert.InDelta(t, 0.124, x.Batch.Process.Grain.Moisture.SI, 1e-9, "the process itself stays as it is")
}

func TestOnlyWhatWasReadByThenCounts(t *testing.T) {
	b := written(t, "  weighed 7.38 kg at 14:00 after soak 1\n  weighed 8.58 kg at 2026-03-07 06:00 after soak 2\n")
	assert.Len(t, trial(t, b, began.Add(6*time.Hour)).Observations, 0)
	assert.Len(t, trial(t, b, began.Add(7*time.Hour)).Observations, 1)
	assert.Len(t, trial(t, b, time.Time{}).Observations, 2)
}

// A bag of 100 g weighs a sixtieth of 6 kg; its net weighs 8 g. A reading without a time
// is of the end of its step.
func TestTheBagStandsForTheBatch(t *testing.T) {
	x := trial(t, written(t, "  bag 100 g at the start\n  tare 8 g\n  weighed bag 131 g after soak 1\n"), time.Time{})
	require.Len(t, x.Observations, 1)
	assert.InDelta(t, 0.123, x.Observations[0].Value, 1e-9)
	f := middle(t, x)
	assert.InDelta(t, f.Stages[0].Steps[0].WeightEnd/60, x.Observations[0].Expect(f, 0), 1e-9)
}

// By hand: of 2 none, 6 to 1/4, 22 to 1/2, 55 to 3/4, 13 to 1 and 2 over, the lengths are
// 0, 1/8, 3/8, 5/8, 7/8 and 1.1: 0.75 + 8.25 + 34.375 + 11.375 + 2.2 = 56.95 of 100.
func TestCountsAreMeanLengths(t *testing.T) {
	x := trial(t, written(t, "  counted acrospire 2 6 22 55 13 2 at 2026-03-12 08:00\n  counted chit 84 of 100 at 2026-03-12 08:05\n"), time.Time{})
	require.Len(t, x.Observations, 2)
	assert.InDelta(t, 0.5695, x.Observations[0].Value, 1e-9)
	assert.InDelta(t, math.Hypot(0.05, 0.025), x.Observations[0].Error, 1e-9)
	assert.InDelta(t, 0.84, x.Observations[1].Value, 1e-9)
	assert.InDelta(t, math.Hypot(0.04, math.Sqrt(0.84*0.16/100)), x.Observations[1].Error, 1e-9)
}

// A rub agrees with every modification at which it is felt, and costs more the
// farther from that it is; a reading that no forecast has is far off, but finite.
func TestResiduals(t *testing.T) {
	x := trial(t, written(t, "  felt rub gritty at 2026-03-12 08:00\n"), time.Time{})
	rub := x.Observations[0]
	assert.Zero(t, rub.Residual(0.6))
	assert.Zero(t, rub.Residual(0.8))
	assert.Less(t, rub.Residual(0.95), -1.0)
	assert.Greater(t, rub.Residual(0.4), 1.0)
	assert.Equal(t, rub.Residual(math.NaN()), 30.0)
	// Student's distribution of four degrees of freedom at r = 2: (4+1)/2 · ln(1 + 4/4)
	assert.InDelta(t, -2.5*math.Ln2, x.LogLikelihood([]float64{2}), 1e-12)
	assert.InDelta(t, -0.5-2, evidence.LogPrior([]float64{1, 2}), 1e-12)
}

// The thermometer's offset moves what is read, and no forecast.
func TestTheThermometerMovesNoForecast(t *testing.T) {
	x := trial(t, written(t, "  read bed 15.9 °C at 2026-03-09 14:35\n"), time.Time{})
	z := make([]float64, len(x.Axes))
	f := middle(t, x)
	for i, a := range x.Axes {
		if a.Thermometer {
			z[i] = 1.5
		}
	}
	warm, err := x.Run(z, false)
	require.NoError(t, err)
	assert.Equal(t, f.Totals.Total, warm.Totals.Total)
	assert.InDelta(t, x.Observations[0].Expect(f, 0)+1.5*0.8, x.Observations[0].Expect(warm, x.Offset(z)), 1e-9)
}

func TestABatchThatCannotBeHeldBesideAForecast(t *testing.T) {
	_, err := evidence.New(&model.Batch{}, time.Time{})
	assert.ErrorIs(t, err, evidence.ErrNoProcess)
	_, err = evidence.New(&model.Batch{Process: written(t, "").Process}, time.Time{})
	assert.ErrorIs(t, err, evidence.ErrNotBegun)
}

// An invented batch whose lot drinks fast, in a house that dries slowly and whose
// thermometer shows too much, must be found out, to within its own errors.
func TestFitFindsWhatTheBatchWas(t *testing.T) {
	p := written(t, "").Process
	truth := map[string]float64{"uptake": 1.4, "growth": 0.9, "drying": 0.75, "thermometer": 1.2}
	b, err := evidencetest.Of(p, "x", began, evidencetest.Truth{Options: forecast.Options{Uptake: new(1.4), Growth: new(0.9), Drying: new(0.75)}, Offset: 1.2}, 11)
	require.NoError(t, err)
	x := trial(t, load(t, b.Text), time.Time{})
	e, err := evidence.Fit(context.Background(), x, 0)
	require.NoError(t, err)
	for i, a := range x.Axes {
		name := string(a.Factor)
		if a.Thermometer {
			name = "thermometer"
		}
		want, ok := truth[name]
		if !ok {
			continue
		}
		sd := math.Sqrt(e.Cov.At(i, i))
		low, high := a.Value(e.Z[i]-2.5*sd), a.Value(e.Z[i]+2.5*sd)
		assert.Less(t, low, want, name)
		assert.Greater(t, high, want, name)
		assert.Less(t, sd, 0.8, "%s: a whole record must tell something", name)
	}
	again, err := evidence.Fit(context.Background(), x, 1)
	require.NoError(t, err)
	assert.Equal(t, e.Z, again.Z, "on any number of cores")
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err = evidence.Fit(ctx, x, 0)
	assert.ErrorIs(t, err, context.Canceled)
}

// A box has air before and behind its bed as a kiln has; what is read of it ends no growing.
func TestAirOfABoxIsReadWhileItGrows(t *testing.T) {
	b := load(t, `batch "x" of "Mill pale" {
  began 2026-03-06 07:00
  read bed 15.8 °C at 2026-03-10 08:00
  read air-on 13.2 °C at 08:05
  read air-off 17.0 °C at 08:10
}
`)
	x := trial(t, b, began.Add(5*24*time.Hour))
	require.Len(t, x.Observations, 3)
	f := middle(t, x)
	for i := range x.Observations {
		o := &x.Observations[i]
		require.Equal(t, model.GerminateStage, o.Sight(f).Stage)
		assert.Less(t, math.Abs(o.Residual(o.Expect(f, 0))), 2.5, "%s", o.Reading.Place().Text())
	}
	assert.Equal(t, model.GerminateStage, f.Seen[len(f.Seen)-1].Stage, "it still grows on the fifth day")
}
