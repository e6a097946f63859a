package learn

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source/golden"
	"maltwright/sim/ensemble"
	"maltwright/sim/grain"
)

func growthOf(t testing.TB, r *Result) Factor {
	t.Helper()
	for _, f := range r.Factors {
		if f.Which == ensemble.Growth {
			return f
		}
	}
	require.Fail(t, "no growth")
	return Factor{}
}

// Of batches whose growth differs by a tenth, that is found, to within what a dozen of them
// tell of a standard deviation, 1/√24 of it, and what their own errors leave; of batches that
// do not differ it is found to be less than half of the usual spread, from which it is sought.
func TestByHowMuchBatchesDifferIsFound(t *testing.T) {
	houses := 1
	if golden.Long() {
		houses = 6
	}
	for _, truth := range []float64{0, 0.1} {
		mean, square := 0.0, 0.0
		for seed := range uint64(houses) {
			r, err := Of(t.Context(), scattered(t, 12, 80+seed, truth, grain.Forms{}, nil), Options{NoCrossValidation: true})
			require.NoError(t, err)
			f := growthOf(t, r)
			t.Logf("scatter of growth %.3f of %.3f; growth %.3f ± %.3f of %.2f", f.Scatter, truth*house[ensemble.Growth], f.Value, f.Error, house[ensemble.Growth])
			mean += f.Scatter / float64(houses)
			off := (f.Value - house[ensemble.Growth]) / f.Error
			square += off * off / float64(houses)
			assert.GreaterOrEqual(t, f.Error, f.Scatter/math.Sqrt(12)*0.9, "the house is no better known than its batches allow")
		}
		if truth == 0 {
			assert.Less(t, mean, ensemble.SpreadLeft*0.12)
		} else {
			assert.InDelta(t, truth*house[ensemble.Growth], mean, 0.03)
		}
		assert.Less(t, square, 4.0)
	}
}

// With fewer than six batches nothing is said of how they differ.
func TestOfFewBatchesNoScatterIsSought(t *testing.T) {
	r, err := Of(t.Context(), invented(t, 2, 1, nil), Options{NoCrossValidation: true})
	require.NoError(t, err)
	for _, f := range r.Factors {
		assert.Zero(t, f.Scatter, f.Which)
	}
	require.Len(t, r.Singles, 2)
	for _, s := range r.Singles {
		assert.Len(t, s.Figures, len(r.Factors))
	}
}

// What a batch says by itself is what a fit of it alone finds, but for straight lines: and
// where the cost of one batch has two valleys, as of growth and the thermometer in one of these
// three, the fit alone may come to rest in the other, two errors off.
func TestWhatABatchSaysByItself(t *testing.T) {
	batches := invented(t, 3, 4, nil)
	r, err := Of(t.Context(), batches, Options{NoCrossValidation: true})
	require.NoError(t, err)
	sum, n := 0.0, 0.0
	for i, b := range batches {
		alone := houseOf(t, []*model.Batch{b})
		for _, x := range r.Singles[i].Figures {
			f := alone[x.Which]
			t.Logf("%-12s %.3f ± %.3f by itself, %.3f ± %.3f by a fit of it", x.Which, x.Value, x.Error, f.Value, f.Error)
			off := (x.Value - f.Value) / f.Error
			assert.InDelta(t, 0, off, 2.5, "%s", x.Which)
			sum, n = sum+off*off, n+1
		}
	}
	t.Logf("off by %.2f of its errors in the mean square of %.0f figures", math.Sqrt(sum/n), n)
	assert.Less(t, math.Sqrt(sum/n), 0.8)
}

// blockOf is a house block that says what was learnt, as the language would have it.
func blockOf(t testing.TB, r *Result) *model.Learnt {
	t.Helper()
	number := func(v float64) *model.Quantity {
		q, err := quantity.Make(quantity.Part{Number: quantity.Fixed(v, 3)})
		require.NoError(t, err)
		return &model.Quantity{Quantity: q}
	}
	l := &model.Learnt{Name: "Loft"}
	for _, f := range r.Factors {
		x := &model.Factor{Value: *number(f.Value), Error: number(f.Error), Batches: f.Batches + f.Before}
		switch f.Which {
		case ensemble.Growth:
			l.Growth = x
		case ensemble.Respiration:
			l.Respiration = x
		case ensemble.Withering:
			l.Withering = x
		case Thermometer:
			l.Thermometer = x
		case ensemble.Uptake:
			l.Uptake = append(l.Uptake, model.GrainFactor{Factor: *x, Grain: f.Grain})
		case ensemble.HuskWater:
			l.HuskWater = append(l.HuskWater, model.GrainFactor{Factor: *x, Grain: f.Grain})
		case ensemble.Chit:
			l.Chit = append(l.Chit, model.GrainFactor{Factor: *x, Grain: f.Grain})
		case ensemble.Drying:
			l.Drying = append(l.Drying, model.KilnFactor{Factor: *x, Kiln: f.Kiln})
		}
	}
	return l
}

// Four batches at once and two, and then two more from what those taught, come to the same:
// within one of its errors, as a block keeps value and error of each figure and not which of
// them go together.
func TestALearntHouseGoesOnWithoutTheOldBatches(t *testing.T) {
	batches := invented(t, 4, 3, nil)
	at := func(list []*model.Batch, from *model.Learnt) *Result {
		r, err := Of(t.Context(), list, Options{NoCrossValidation: true, From: from})
		require.NoError(t, err)
		return r
	}
	all, first := at(batches, nil), at(batches[:2], nil)
	then := at(batches[2:], blockOf(t, first))
	require.Len(t, then.Factors, len(all.Factors))
	for i, f := range all.Factors {
		g := then.Factors[i]
		require.Equal(t, f.Which, g.Which)
		t.Logf("%-12s %.3f ± %.3f at once, %.3f ± %.3f in two", f.Which, f.Value, f.Error, g.Value, g.Error)
		assert.InDelta(t, 0, (f.Value-g.Value)/f.Error, 1, f.Which)
		assert.InDelta(t, 1, g.Error/f.Error, 0.35, f.Which)
		assert.Equal(t, f.Batches, g.Batches+g.Before, f.Which)
	}
	// Of what no new batch has, the old figure stays.
	l := blockOf(t, first)
	other := *l.Drying[0].Kiln
	other.Name = "old oven"
	l.Drying[0].Kiln = &other
	kept := false
	for _, f := range at(batches[2:], l).Factors {
		if f.Kiln != nil && f.Kiln.Name == "old oven" {
			kept = true
			assert.InDelta(t, l.Drying[0].Value.SI, f.Value, 1e-9)
			assert.True(t, f.Known())
			assert.Equal(t, ensemble.KilnDrying, f.Open, "by which it is said what to weigh")
			assert.InDelta(t, 0.2, f.Spread, 1e-9)
			left := f.Error / f.Value / f.Spread
			assert.InDelta(t, max(1-left*left, 0.5), f.VarianceExplained, 1e-9)
		}
	}
	assert.True(t, kept)
}

// An error of next to nothing holds its figure where it is, and leaves the others to be learnt.
func TestAFigureThatIsAllButCertainLeavesTheOthersOpen(t *testing.T) {
	from := blockOf(t, &Result{Factors: []Factor{{Which: ensemble.Growth, Value: 0.9, Error: 1e-14, Batches: 3}}})
	r, err := Of(t.Context(), invented(t, 1, 3, nil), Options{NoCrossValidation: true, From: from})
	require.NoError(t, err)
	for _, f := range r.Factors {
		switch f.Which {
		case ensemble.Growth:
			assert.InDelta(t, 0.9, f.Value, 1e-3)
			assert.Less(t, f.Error, 1e-3)
			assert.True(t, f.Known())
		case ensemble.Respiration:
			assert.True(t, f.Known(), "told %.2f", f.VarianceExplained)
		}
	}
}
