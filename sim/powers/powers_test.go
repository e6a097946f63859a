package powers_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/powers"
)

func TestBothStayWithinTheirStatedError(t *testing.T) {
	exp, log := 0.0, 0.0
	for x := -60.0; x < 60; x += 0.000317 {
		want := math.Exp(x)
		exp = max(exp, math.Abs(powers.Exp(x)-want)/want)
		log = max(log, math.Abs(powers.Log(want)-math.Log(want))/max(1, math.Abs(math.Log(want))))
	}
	assert.Less(t, exp, powers.Error)
	assert.Less(t, log, powers.Error)
	t.Logf("largest error of e^x %.2g, of ln x %.2g", exp, log)
}

func TestTheWholeRangeOfNumbersIsCovered(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(-750, 750).Draw(t, "x")
		if want := math.Exp(x); x > -700 && x < 700 {
			require.InEpsilon(t, want, powers.Exp(x), 2*powers.Error)
		} else {
			require.Equal(t, want, powers.Exp(x))
		}
		y := rapid.Float64Range(math.SmallestNonzeroFloat64, math.MaxFloat64).Draw(t, "y")
		want := math.Log(y)
		require.InDelta(t, want, powers.Log(y), 2*powers.Error*max(1, math.Abs(want)))
	})
}

func TestArgumentsOutOfTheOrdinaryAreThoseOfMath(t *testing.T) {
	for _, x := range []float64{0, -1, 1e300, -1e300, math.Inf(1), math.Inf(-1), math.NaN(), math.SmallestNonzeroFloat64, math.MaxFloat64} {
		assert.Equal(t, bits(math.Exp(x)), bits(powers.Exp(x)), "e^%g", x)
	}
	for _, x := range []float64{0, -1, -1e300, math.Inf(1), math.Inf(-1), math.NaN(), math.SmallestNonzeroFloat64} {
		assert.Equal(t, bits(math.Log(x)), bits(powers.Log(x)), "ln %g", x)
	}
}

// bits of a number; all that are none are alike.
func bits(x float64) uint64 {
	if math.IsNaN(x) {
		return 0
	}
	return math.Float64bits(x)
}

func BenchmarkExp(b *testing.B)       { along(b, -0.5, powers.Exp) }
func BenchmarkExpOfMath(b *testing.B) { along(b, -0.5, math.Exp) }
func BenchmarkLog(b *testing.B)       { along(b, 3, powers.Log) }
func BenchmarkLogOfMath(b *testing.B) { along(b, 3, math.Log) }

// along has each result wait for the one before, as the models do.
func along(b *testing.B, x float64, f func(float64) float64) {
	y := x
	for range b.N {
		y = f(x + 1e-9*y)
	}
	sink = y
}

var sink float64
