package sampler

import (
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distmv"
	"gonum.org/v1/gonum/stat/samplemv"
)

// stratified draws n points from the prior so that each axis is covered evenly.
func stratified(prior Prior, n int, source rand.Source) [][]float64 {
	const least = 1e-12 // the quantile of 0 may lie at infinity
	dim := prior.Dim()
	cube := mat.NewDense(n, dim, nil)
	samplemv.LatinHypercube{Q: distmv.NewUnitUniform(dim, source), Src: source}.Sample(cube)
	draws := make([][]float64, n)
	for i := range draws {
		p := cube.RawRowView(i)
		for k := range p {
			p[k] = min(max(p[k], least), 1-least)
		}
		draws[i] = prior.Quantile(nil, p)
	}
	return draws
}
