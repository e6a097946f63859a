package forecast

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"

	"maltwright/lang/sorted"
)

// fixed looks for the malt on the lower floors that comes out as it was supposed, by secant
// steps in all its figures at once [anderson-1965]: the next supposal is laid where a plane through the misses of
// the best so far, and of the last, comes nearest to nil. Of wetter malt the exhaust is damper, and the malt that it
// dries is wetter too, so that simply supposing what came out takes many rounds.
type fixed struct {
	tried []supposal
	like  []secant // of a search that this one is near to
}

// supposal is malt that was supposed, what came of it, and by how much it was missed, in units
// of enoughOf.
type supposal struct{ malt, came, miss []float64 }

// secant is how what comes out, and the miss, differ between two supposals.
type secant struct{ came, miss []float64 }

func (f *fixed) forget() { f.like, f.tried = f.secants(), nil }

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
	f.tried = append(f.tried, supposal{malt, came, misses(malt, came)})
	ways, miss := f.secants(), f.tried[len(f.tried)-1].miss
	next := slices.Clone(came)
	for j, g := range plane(miss, ways) {
		for i := range next {
			next[i] += g * ways[j].came[i]
		}
	}
	return possible(next)
}

// secants are those from the last supposal to the best of the others, as many as it has
// figures; as long as there are fewer, those of the search that this one is near to.
func (f *fixed) secants() (list []secant) {
	n := len(f.tried) - 1
	if n < 0 {
		return nil
	}
	now, others := f.tried[n], slices.Clone(f.tried[:n])
	sorted.Stable(others, func(a, b supposal) int { return cmp.Compare(floats.Norm(a.miss, 2), floats.Norm(b.miss, 2)) })
	for _, o := range others[:min(n, len(now.malt))] {
		s := secant{slices.Clone(o.came), slices.Clone(o.miss)}
		floats.Sub(s.came, now.came)
		floats.Sub(s.miss, now.miss)
		list = append(list, s)
	}
	if len(list) < len(now.malt) {
		list = append(list, f.like...)
	}
	return list
}

// plane gives how far to go along each secant for least to be left of a miss; none where they
// all lie in one place.
func plane(miss []float64, ways []secant) []float64 {
	if len(ways) == 0 {
		return nil
	}
	a := mat.NewDense(len(miss), len(ways), nil)
	b := mat.NewVecDense(len(miss), nil)
	for i := range miss {
		b.SetVec(i, -miss[i])
		for j, o := range ways {
			a.Set(i, j, o.miss[i])
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
	shares := make([]float64, len(ways))
	for j := range shares {
		shares[j] = min(max(x.AtVec(j), -farthest), farthest)
	}
	return shares
}

// farthest bounds a secant step, so that two points close by do not throw it far (numerical).
const farthest = 8.0

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
