package sampler

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

// density is a distribution whose density is known.
type density interface {
	LogProb(x []float64) float64
}

// component is a distribution that was drawn from, and how many draws are from it.
type component struct {
	density
	draws int
}

// logShare is ln n·q(x): the density by the number of draws.
func (c component) logShare(x []float64) float64 { return math.Log(float64(c.draws)) + c.LogProb(x) }

// mixture is all distributions that were drawn from.
type mixture []component

// logTotal is ln Σ nₖ·qₖ(x).
func (m mixture) logTotal(x []float64) float64 {
	sum := math.Inf(-1)
	for _, c := range m {
		sum = logSum(sum, c.logShare(x))
	}
	return sum
}

// logSum is the logarithm of the sum of two numbers of which the logarithms are given.
func logSum(a, b float64) float64 { return floats.LogSumExp([]float64{a, b}) }
