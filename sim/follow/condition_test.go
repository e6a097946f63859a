package follow

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"maltwright/lang/process"
	"maltwright/sim/evidence"
	"maltwright/sim/evidence/invent"
)

// house loads the process of the loft.
func house(t testing.TB) *process.Process {
	t.Helper()
	return load(t, `use "pale.malt"`+"\n"+`batch "x" of "Loft pale" { began 2026-03-06 07:00 }`).Process
}

func load(t testing.TB, text string) *process.Batch {
	t.Helper()
	root, err := process.OpenRoot(filepath.Join("..", "..", "examples"))
	require.NoError(t, err)
	defer root.Close()
	h, found := process.Load("x.malt", []byte(text), ".", root)
	require.Empty(t, found, text)
	require.Len(t, h.Batches, 1)
	return h.Batches[0]
}

var began = time.Date(2026, 3, 6, 7, 0, 0, 0, time.Local)

// invented is a batch whose truth is drawn from what is usual.
func invented(t testing.TB, p *process.Process, seed uint64) *invent.Batch {
	t.Helper()
	r := rand.New(rand.NewPCG(seed, 7))
	tr, err := evidence.New(&process.Batch{Process: p, Began: process.Instant{Time: began}}, time.Time{})
	require.NoError(t, err)
	z := make([]float64, len(tr.Axes))
	for i := range z {
		z[i] = min(max(r.NormFloat64(), -2.5), 2.5)
	}
	truth := invent.Truth{Options: tr.Options(z), Offset: tr.Offset(z)}
	b, err := invent.Of(p, "x", began, truth, seed)
	require.NoError(t, err)
	return b
}

// upTo is the batch as its record stood at a time.
func upTo(t testing.TB, b *invent.Batch, at float64) *process.Batch {
	lines := slices.DeleteFunc(slices.Clone(b.Lines), func(l invent.Line) bool { return l.At > at })
	return load(t, "use \"pale.malt\"\n"+invent.Record("x", "Loft pale", began, 0, lines))
}

func TestExplore(t *testing.T) {
	if os.Getenv("EXPLORE") == "" {
		t.Skip()
	}
	p := house(t)
	n := 40
	type row struct{ in, ess, red, err float64 }
	cuts := []float64{0.1, 8, 40, 60, 90, 115}
	for _, cut := range cuts {
		var ins, esss, reds, errs, wid []float64
		start := time.Now()
		for seed := range n {
			b := invented(t, p, uint64(seed+1))
			end := endOf(b)
			at := cut * 3600
			if at > end-3600 {
				at = end - 3600
			}
			tr, err := evidence.New(upTo(t, b, at), began.Add(time.Duration(at)*time.Second))
			require.NoError(t, err)
			s, err := Condition(context.Background(), tr, Options{Members: 100})
			require.NoError(t, err)
			var ends []float64
			for _, f := range s.Ensemble.Members {
				for _, st := range f.Stages {
					if st.Kind == process.Germinate && len(st.Steps) > 0 {
						ends = append(ends, st.Steps[len(st.Steps)-1].End)
					}
				}
			}
			slices.Sort(ends)
			lo, mid, hi := stat.Quantile(.1, stat.LinInterp, ends, nil), stat.Quantile(.5, stat.LinInterp, ends, nil), stat.Quantile(.9, stat.LinInterp, ends, nil)
			in := 0.0
			if end >= lo-60 && end <= hi+60 {
				in = 1
			}
			ins, esss, reds, errs, wid = append(ins, in), append(esss, s.Effective), append(reds, float64(s.Redrawn)), append(errs, math.Abs(mid-end)/3600), append(wid, (hi-lo)/3600)
		}
		fmt.Printf("cut %5.1f h: in %.2f  ESS %.0f (min %.0f)  redrawn %.2f  |err| %.2f h  width %.1f h  %v each\n", cut, stat.Mean(ins, nil), stat.Mean(esss, nil), slices.Min(esss), stat.Mean(reds, nil), stat.Mean(errs, nil), stat.Mean(wid, nil), time.Since(start)/time.Duration(n))
	}
}

func endOf(b *invent.Batch) float64 {
	for _, st := range b.Forecast.Stages {
		if st.Kind == process.Germinate {
			return st.Steps[len(st.Steps)-1].End
		}
	}
	return math.NaN()
}
