package sampler

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
)

// Sample is weighted draws from a posterior.
type Sample struct {
	Draws   [][]float64 // those from the prior first, then those of each round
	Weights []float64   // of each draw; their sum is 1
	Rounds  int         // of adaptation
}

// EffectiveSize is the effective sample size: how many draws of equal weight give as
// small an error as these, 1/Σw² [kish-1965].
func (s *Sample) EffectiveSize() float64 { return kishSize(s.Weights) }

func kishSize(weights []float64) float64 {
	sum := 0.0
	for _, w := range weights {
		sum += w * w
	}
	return 1 / sum
}

// Mean is that of the posterior.
func (s *Sample) Mean() []float64 {
	mean := make([]float64, len(s.Draws[0]))
	for i, x := range s.Draws {
		for k := range x {
			mean[k] += s.Weights[i] * x[k]
		}
	}
	return mean
}

// covariance is that of the posterior. The weights count as one draw more than the
// effective sample size, lest few draws come out as none.
func (s *Sample) covariance() *mat.SymDense {
	n, count := len(s.Draws[0]), s.EffectiveSize()+1
	rows, weights := mat.NewDense(len(s.Draws), n, nil), make([]float64, len(s.Draws))
	for i, x := range s.Draws {
		rows.SetRow(i, x)
		weights[i] = count * s.Weights[i]
	}
	cov := mat.NewSymDense(n, nil)
	stat.CovarianceMatrix(cov, rows, weights)
	return cov
}

// Resample picks n draws that count the same, each as often as its weight is worth: by
// systematic resampling, at the middle of even steps of the sum of the weights
// [kitagawa-1996]. It gives the places of the draws, in their order.
func (s *Sample) Resample(n int) []int {
	out := make([]int, 0, n)
	at, sum := 0, s.Weights[0]
	for k := range n {
		for want := (float64(k) + 0.5) / float64(n); sum < want && at < len(s.Weights)-1; {
			at++
			sum += s.Weights[at]
		}
		out = append(out, at)
	}
	return out
}

// normalise makes weights whose sum is 1 of their logarithms, nil where all are nil. NaN
// counts as no weight.
func normalise(logs []float64) []float64 {
	top := math.Inf(-1)
	for _, l := range logs {
		if l > top {
			top = l
		}
	}
	if math.IsInf(top, 0) {
		return nil
	}
	out, sum := make([]float64, len(logs)), 0.0
	for i, l := range logs {
		if !math.IsNaN(l) {
			out[i] = math.Exp(l - top)
			sum += out[i]
		}
	}
	for i := range out {
		out[i] /= sum
	}
	return out
}
