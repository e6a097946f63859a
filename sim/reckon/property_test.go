package reckon_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/lang/quantity"
	"maltwright/sim/reckon"
)

// sums is how close two ways to the same sum come in float64 over some ten steps.
const sums = 1e-11

func draw(t *rapid.T, name string, low, high float64, unit string) quantity.Quantity {
	n := rapid.Float64Range(low, high).Draw(t, name)
	return parse(t, strconv.FormatFloat(n, 'f', 6, 64)+" "+unit)
}

func drawStart(t *rapid.T) reckon.Start {
	unit := rapid.SampledFrom([]string{"g", "kg", "t", "oz", "lb"}).Draw(t, "unit")
	return reckon.Start{Weight: draw(t, "weight", 0.1, 5000, unit), Moisture: draw(t, "moisture", 0, 60, "%")}
}

func TestWeightUndoesTarget(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		batch, wanted, lost := drawStart(t), draw(t, "wanted", 0, 60, "%"), draw(t, "lost", 0, 30, "%")
		to, err := reckon.Target(batch, wanted, &lost)
		require.NoError(t, err)
		at, err := quantity.In(to.Weight, batch.Weight.Unit())
		require.NoError(t, err)
		now, err := reckon.Weight(at, batch, &lost)
		require.NoError(t, err)
		assert.InDelta(t, wanted.SI, now.Moisture, sums)
		assert.InEpsilon(t, to.DryMatter+now.Water, at.SI, sums, "water and dry matter make up the weight")
	})
}

func TestYieldFindsTheLossThatTargetTookAway(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		barley, wanted, lost := drawStart(t), draw(t, "malt moisture", 0, 20, "%"), draw(t, "lost", 0, 30, "%")
		to, err := reckon.Target(barley, wanted, &lost)
		require.NoError(t, err)
		malt, err := quantity.In(to.Weight, "kg")
		require.NoError(t, err)
		y, err := reckon.Yield(barley, reckon.Start{Weight: malt, Moisture: wanted})
		require.NoError(t, err)
		assert.InDelta(t, lost.SI, y.Lost, sums)
	})
}

func TestTheUnitChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		batch, wanted := drawStart(t), draw(t, "wanted", 0, 60, "%")
		other, err := quantity.In(batch.Weight.SI, "oz")
		require.NoError(t, err)
		a, err := reckon.Target(batch, wanted, nil)
		require.NoError(t, err)
		b, err := reckon.Target(reckon.Start{Weight: other, Moisture: batch.Moisture}, wanted, nil)
		require.NoError(t, err)
		assert.InEpsilon(t, a.Weight, b.Weight, sums)
	})
}

func TestBasesTurnIntoEachOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		there, err := reckon.Basis(draw(t, "moisture", 0, 90, "%"))
		require.NoError(t, err)
		dry, err := quantity.In(there.Dry.SI, "% dry basis")
		require.NoError(t, err)
		back, err := reckon.Basis(dry)
		require.NoError(t, err)
		assert.InDelta(t, there.Wet.SI, back.Wet.SI, sums)
	})
}

func TestIntervalHoldsTheCountAndNarrowsWithMoreKernels(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 5000).Draw(t, "n")
		k := rapid.IntRange(0, n).Draw(t, "k")
		few, err := reckon.Germination(parse(t, strconv.Itoa(k)), parse(t, strconv.Itoa(n)))
		require.NoError(t, err)
		assert.True(t, 0 <= few.Low && few.Low <= few.Share && few.Share <= few.High && few.High <= 1, "%+v", few)
		many, err := reckon.Germination(parse(t, strconv.Itoa(4*k)), parse(t, strconv.Itoa(4*n)))
		require.NoError(t, err)
		assert.Less(t, many.High-many.Low, few.High-few.Low)
	})
}

// Whatever can be written is answered with finite values or refused.
func TestAnyQuantitiesAreAnsweredOrRefused(t *testing.T) {
	any := rapid.Custom(func(t *rapid.T) quantity.Quantity {
		number := strconv.FormatFloat(rapid.Float64Range(-1e9, 1e9).Draw(t, "number"), 'f', rapid.IntRange(0, 8).Draw(t, "digits"), 64)
		unit := rapid.SampledFrom([]string{"", "g", "kg", "t", "lb", "%", "% dry basis", "K", "h", "kernels", "times"}).Draw(t, "unit")
		q, err := quantity.Parse(number + " " + unit)
		if err != nil {
			return parse(t, "1 "+unit)
		}
		return q
	})
	rapid.Check(t, func(t *rapid.T) {
		q := rapid.SliceOfN(any, 5, 5).Draw(t, "quantities")
		s := reckon.Start{Weight: q[0], Moisture: q[1]}
		var gone *quantity.Quantity
		if rapid.Bool().Draw(t, "lost") {
			gone = &q[4]
		}
		m, _ := reckon.Moisture([]reckon.Sample{{q[0], q[1]}, {q[2], q[3]}}, gone)
		to, _ := reckon.Target(s, q[2], gone)
		now, _ := reckon.Weight(q[2], s, gone)
		b, _ := reckon.Basis(q[0])
		y, _ := reckon.Yield(s, reckon.Start{Weight: q[2], Moisture: q[3]})
		g, _ := reckon.Germination(q[0], q[1])
		for _, x := range []float64{m.Mean, m.Deviation, to.Weight, to.Change, now.Moisture, b.Wet.SI, b.Dry.SI, y.AsIs, y.Lost, g.Low, g.High} {
			assert.False(t, math.IsNaN(x) || math.IsInf(x, 0))
		}
	})
}
