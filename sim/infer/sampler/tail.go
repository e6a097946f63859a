package sampler

import (
	"math"
	"slices"
)

// Untrusted is the shape of the tail above which a sample tells little: the error of its
// figures then no longer falls as the number of draws grows, or only by very many
// [vehtari-2024].
const Untrusted = 0.7

// Tail is the shape k of the tail of the weights: that of a generalised Pareto distribution
// fitted to the largest of them [vehtari-2024]. Below 0.5 the weights have a variance; up to
// 0.7 they still do for practice; above that the few largest are no measure of what larger
// ones there are that were not drawn. Weights that are all the same have no tail, and give
// -Inf; too few draws to say anything give +Inf.
func (s *Sample) Tail() float64 { return tailShape(s.Weights) }

// Trusted tells whether the draws stand for the posterior, as far as their weights can say.
func (s *Sample) Trusted() bool { return s.Tail() <= Untrusted }

// leastTail is the number of draws of which a tail can be made.
const leastTail = 5

// tailShape takes as the tail the largest weights of three square roots of their number, and
// no more than a fifth of them.
func tailShape(weights []float64) float64 {
	sorted := slices.Sorted(slices.Values(weights))
	n := len(sorted)
	if n == 0 || sorted[0] == sorted[n-1] {
		return math.Inf(-1)
	}
	m := int(min(float64(n)/5, 3*math.Sqrt(float64(n))))
	if m < leastTail {
		return math.Inf(1)
	}
	threshold := sorted[n-m-1]
	var above []float64
	for _, w := range sorted[n-m:] {
		if w > threshold { // as many as are the same as the threshold are none of the tail
			above = append(above, w-threshold)
		}
	}
	if len(above) < leastTail {
		if threshold > 0 { // the largest are all the same
			return math.Inf(-1)
		}
		return math.Inf(1) // a handful bears all the weight
	}
	return steadied(paretoShape(above), len(above))
}

// steadied draws the shape towards a half as if ten more draws said that: one of few draws
// scatters [vehtari-2024].
func steadied(k float64, n int) float64 {
	const more, towards = 10, 0.5
	return (k*float64(n) + towards*more) / (float64(n) + more)
}

// paretoShape estimates the shape k of a generalised Pareto distribution with the density
//
//	(1/σ)·(1 + k·x/σ)^(−1/k − 1), x > 0
//
// from its draws in rising order, by the mean of a posterior over θ = −k/σ that is made of a
// grid of likely values [zhang-stephens-2009]. Its prior is theirs.
func paretoShape(x []float64) float64 {
	n := len(x)
	count := 30 + int(math.Sqrt(float64(n)))
	quartile, most := x[max(int(float64(n)/4+0.5), 1)-1], x[n-1]
	thetas, logs := make([]float64, count), make([]float64, count)
	for j := range thetas {
		thetas[j] = 1/most + (1-math.Sqrt(float64(count)/(float64(j)+0.5)))/(3*quartile)
		k := shapeAt(thetas[j], x)
		logs[j] = float64(n) * (math.Log(-thetas[j]/k) - k - 1)
	}
	theta := 0.0
	for j, w := range normalise(logs) {
		theta += w * thetas[j]
	}
	return shapeAt(theta, x)
}

// shapeAt is the likeliest shape at a value of θ: the mean of ln(1 − θ·x).
func shapeAt(theta float64, x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += math.Log1p(-theta * v)
	}
	return sum / float64(len(x))
}
