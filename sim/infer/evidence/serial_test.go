package evidence_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"maltwright/lang/source/golden"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/infer/evidence/evidencetest"
)

// logged is a record of so many readings of the bed, at even steps of minutes.
func logged(n int, minutes float64) string {
	var b strings.Builder
	at := began.Add(72 * time.Hour)
	for range n {
		fmt.Fprintf(&b, "  read bed 16.0 °C at %s\n", at.Format("2006-01-02 15:04"))
		at = at.Add(time.Duration(minutes * float64(time.Minute)))
	}
	return b.String()
}

func worth(x *evidence.Trial) (sum float64) {
	for i := range x.Observations {
		sum += x.Observations[i].Worth
	}
	return sum
}

// What a row of readings tells of a constant is 1ᵀR⁻¹1 by its correlation matrix R, here
// solved outright.
func TestARowIsWorthWhatItsCorrelationsLeave(t *testing.T) {
	for _, minutes := range []float64{5, 30, 120, 480} {
		x := trial(t, written(t, logged(100, minutes)), time.Time{})
		r := mat.NewSymDense(100, nil)
		for i := range 100 {
			r.SetSym(i, i, 1)
			for k := range i {
				r.SetSym(i, k, 0.8*math.Exp(-float64(i-k)*minutes/180))
			}
		}
		var c mat.Cholesky
		require.True(t, c.Factorize(r))
		one, by := mat.NewVecDense(100, nil), mat.NewVecDense(100, nil)
		for i := range 100 {
			one.SetVec(i, 1)
		}
		require.NoError(t, c.SolveVecTo(by, one))
		t.Logf("100 readings %3.0f min apart are worth %.2f, by their matrix %.2f", minutes, worth(x), mat.Sum(by))
		assert.InEpsilon(t, mat.Sum(by), worth(x), 0.15, "%v min apart", minutes)
	}
}

func TestAHundredReadingsInAnHourAreFew(t *testing.T) {
	assert.Less(t, worth(trial(t, written(t, logged(61, 1)), time.Time{})), 2.0)
	assert.InDelta(t, 1, worth(trial(t, written(t, logged(1, 1)), time.Time{})), 1e-12)
	assert.Greater(t, worth(trial(t, written(t, logged(10, 480)), time.Time{})), 8.5, "three a day count nearly whole")
	x := trial(t, written(t, "  read bed 16.0 °C at 2026-03-09 07:00\n  counted chit 90 of 100 at 07:00\n  felt rub gummy at 07:00\n  weighed 9.0 kg at 07:00\n"), time.Time{})
	for i := range x.Observations {
		assert.Equal(t, 1.0, x.Observations[i].Worth, "another kind takes nothing from it")
	}
}

// loggedFits fits invented batches, with a logger in the bed whose errors last (with none for
// a step of 0), and gives
// the errors of the axes that it found in their own standard errors.
func loggedFits(t *testing.T, batches int, every float64, independent bool) (off []float64) {
	t.Helper()
	p := written(t, "").Process
	for seed := range uint64(batches) {
		r := rand.New(rand.NewPCG(seed, 5))
		plain := trial(t, written(t, ""), time.Time{})
		z := make([]float64, len(plain.Axes))
		for i := range z {
			z[i] = min(max(r.NormFloat64(), -2.5), 2.5)
		}
		truth := evidencetest.Truth{Options: plain.Options(z), Offset: plain.Offset(z)}
		if every > 0 {
			truth.Logger = &evidencetest.Logger{Every: every, Lasts: 3 * 3600, Share: 0.8}
		}
		b, err := evidencetest.Of(p, "x", began, truth, seed)
		require.NoError(t, err)
		x := trial(t, load(t, b.Text), time.Time{})
		if independent {
			x.Independent()
		}
		e, err := evidence.Fit(context.Background(), x, 0)
		require.NoError(t, err)
		for i := range z {
			off = append(off, (e.Z[i]-z[i])/math.Sqrt(e.Cov.At(i, i)))
		}
	}
	return off
}

// within gives the share of errors inside the 80 % interval, and their mean square.
func within(off []float64) (share, square float64) {
	for _, v := range off {
		if math.Abs(v) < 1.2816 {
			share += 1 / float64(len(off))
		}
		square += v * v / float64(len(off))
	}
	return share, square
}

// A logger must narrow no more than it should: what is found of lot, house and weather lies
// within its 80 % interval about as often as without it. That is in three of four cases and
// not in four of five, since the fit takes the posterior for a normal one, and that of the
// weather, whose axes are even bands, is none. The shares stand in docs/model.md.
func TestALoggerNarrowsNoMoreThanItShould(t *testing.T) {
	batches, every := 2, 900.0
	if golden.Long() {
		batches, every = 40, 300
	}
	off := loggedFits(t, batches, every, false)
	share, square := within(off)
	t.Logf("of %d axes of %d batches with a reading each %.0f min %.0f %% lie within their 80 %% interval, with a mean square of %.2f errors",
		len(off), batches, every/60, 100*share, square)
	assert.Greater(t, share, 0.75-2*math.Sqrt(0.16/float64(len(off))))
	if golden.Long() {
		none, usual := within(loggedFits(t, batches, 0, false))
		t.Logf("of the same batches without a logger: %.0f %%, and %.2f", 100*none, usual)
		assert.InDelta(t, none, share, 0.06, "a logger makes it no worse than the fit itself has it")
		alone, far := within(loggedFits(t, batches, every, true))
		t.Logf("taken for independent: %.0f %%, and %.2f", 100*alone, far)
		assert.Less(t, alone, share-0.1, "what the correlation is for")
		assert.Less(t, square, far/4)
	}
}
