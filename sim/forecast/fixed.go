package forecast

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// fixed looks for the malt on the lower floors that comes out as it was supposed, by secant
// steps in all its figures at once [anderson-1965]: the next supposal is laid where a plane through the misses of
// the best so far, and of the last, comes nearest to nil. Of wetter malt the exhaust is damper, and the malt that it
// dries is wetter too, so that simply supposing what came out takes many rounds.
type fixed struct{ tried []supposal }

// supposal is malt that was supposed, what came of it, and by how much it was missed, in units
// of enoughOf.
type supposal struct{ malt, came, miss []float64 }

func (s *supposal) off() float64 { return dot(s.miss, s.miss) }

// misses gives by how much malt came out other than it was supposed, in units of what it may.
func misses(malt, came []float64) []float64 {
	miss := make([]float64, len(malt))
	for i := range miss {
		miss[i] = (came[i] - malt[i]) / enoughOf(i)
	}
	return miss
}

// near tells whether nothing is missed by more than it may be.
func near(miss []float64) bool {
	return !slices.ContainsFunc(miss, func(m float64) bool { return !(math.Abs(m) <= 1) })
}

// next gives the next supposal, from one and what came of it.
func (f *fixed) next(malt, came []float64) []float64 {
	now := supposal{malt, came, misses(malt, came)}
	others := slices.Clone(f.tried)
	f.tried = append(f.tried, now)
	slices.SortStableFunc(others, func(a, b supposal) int {
		if a.off() < b.off() {
			return -1
		}
		return 1
	})
	others = others[:min(len(others), len(malt))]
	if len(others) == 0 {
		return came
	}
	next := slices.Clone(came)
	for j, g := range plane(now.miss, others) {
		for i := range next {
			next[i] += g * (others[j].came[i] - came[i])
		}
	}
	return possible(next)
}

// plane gives the shares of others that, put in the place of as much of a miss, leave least of
// it; none where they all lie in one place.
func plane(miss []float64, others []supposal) []float64 {
	a := mat.NewDense(len(miss), len(others), nil)
	b := mat.NewVecDense(len(miss), nil)
	for i := range miss {
		b.SetVec(i, -miss[i])
		for j, o := range others {
			a.Set(i, j, o.miss[i]-miss[i])
		}
	}
	var svd mat.SVD
	if !svd.Factorize(a, mat.SVDThin) {
		return nil
	}
	rank := svd.Rank(1e-3)
	if rank == 0 {
		return nil
	}
	var x mat.VecDense
	svd.SolveVecTo(&x, b, rank)
	shares := make([]float64, len(others))
	for j := range shares {
		shares[j] = min(max(x.AtVec(j), -farthest), farthest)
	}
	return shares
}

// farthest bounds a secant step, so that two points close by do not throw it far (numerical).
const farthest = 8.0

func dot(a, b []float64) (sum float64) {
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}

// enoughOf is what a figure of malt may be missed by: moisture, kg/kg, and temperature, K, in
// turn.
func enoughOf(i int) float64 {
	if i%2 == 0 {
		return nearMoisture
	}
	return nearKelvin
}

// possible keeps malt to what malt can be: moisture, kg/kg, and temperature, °C, of each floor.
func possible(malt []float64) []float64 {
	for i := 0; i < len(malt); i += 2 {
		malt[i], malt[i+1] = min(max(malt[i], 0.005), 1.2), min(max(malt[i+1], 0), 110)
	}
	return malt
}
