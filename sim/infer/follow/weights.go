package follow

import (
	"math"
	"slices"
)

// normal makes weights of their logarithms.
func normal(logs []float64) []float64 {
	top, sum := slices.Max(logs), 0.0
	out := make([]float64, len(logs))
	for i, l := range logs {
		out[i] = math.Exp(l - top)
		sum += out[i]
	}
	for i := range out {
		out[i] /= sum
	}
	return out
}

// effective is how many members of equal weight the weights are worth.
func (d *drawing) effective() float64 { return worth(d.weights) }

// worth is how many equal weights the weights are worth (Kish).
func worth(weights []float64) float64 {
	sum := 0.0
	for _, w := range weights {
		sum += w * w
	}
	return 1 / sum
}
