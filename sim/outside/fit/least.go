package main

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"

	"maltwright/sim/air"
)

// result is a fit that was made.
type result struct {
	values    []float64
	low, high []float64 // ends of the interval of each value
	sum       float64   // of the squares, of the rows and of what the constants are drawn to
}

// solve makes the sum of squares least: of the misses of the rows, and of how far each
// parameter lies from what is published of it, all in standard deviations. The interval
// of a value is its profile: where the sum, made least over the others, is one higher.
func (p *problem) solve() (result, error) {
	n := len(p.parameters)
	z, sum, err := p.least(make([]float64, n), -1)
	if err != nil {
		return result{}, err
	}
	r := result{sum: sum}
	for i, c := range p.parameters {
		r.values = append(r.values, c.at(z[i]))
		if !p.constant(i) {
			r.low, r.high = append(r.low, math.NaN()), append(r.high, math.NaN())
			continue
		}
		low, err := p.profile(z, i, -1, sum+1)
		if err != nil {
			return result{}, err
		}
		high, err := p.profile(z, i, 1, sum+1)
		if err != nil {
			return result{}, err
		}
		r.low, r.high = append(r.low, c.at(low)), append(r.high, c.at(high))
	}
	return r, nil
}

// profileNear: so near, as a share of an interval, its ends are found.
const profileNear = 0.01

// profile seeks where the sum comes to a level as one parameter is moved to a side.
// What it is drawn to makes the sum rise by one in a standard deviation at the latest.
func (p *problem) profile(z []float64, i int, side, level float64) (float64, error) {
	near, far := 0.0, 1+math.Abs(z[i])+math.Sqrt(level)
	for far-near > profileNear*far {
		mid := (near + far) / 2
		start := append([]float64(nil), z...)
		start[i] += side * mid
		_, sum, err := p.least(start, i)
		var refused *air.RangeError
		switch {
		case errors.As(err, &refused): // no model has such a value
			far = mid
		case err != nil:
			return 0, err
		case sum < level:
			near = mid
		default:
			far = mid
		}
	}
	return z[i] + side*(near+far)/2, nil
}

// least makes the sum of squares least from a start, with one parameter held where it
// is; −1 holds none. The method is Levenberg's and Marquardt's, with differences for
// derivatives.
func (p *problem) least(start []float64, fixed int) (z []float64, sum float64, err error) {
	const rounds, enough = 40, 1e-7
	z = append([]float64(nil), start...)
	r, err := p.residuals(z)
	if err != nil {
		return nil, 0, err
	}
	damp := 1e-3
	for range rounds {
		j, err := p.jacobian(z, r, fixed)
		if err != nil {
			return nil, 0, err
		}
		next, ahead, ok := p.step(z, r, j, &damp)
		if !ok || squares(r)-squares(ahead) < enough {
			break
		}
		z, r = next, ahead
	}
	return z, squares(r), nil
}

// step seeks a step that makes the sum smaller, damped as much as that takes.
func (p *problem) step(z, r []float64, j *mat.Dense, damp *float64) (next, ahead []float64, ok bool) {
	n := len(z)
	var normal mat.Dense
	normal.Mul(j.T(), j)
	var slope mat.VecDense
	slope.MulVec(j.T(), mat.NewVecDense(len(r), r))
	for range 12 {
		damped := mat.DenseCopyOf(&normal)
		for i := range n {
			damped.Set(i, i, damped.At(i, i)*(1+*damp))
			if damped.At(i, i) == 0 { // held, or of no account
				damped.Set(i, i, 1)
			}
		}
		var by mat.VecDense
		if err := by.SolveVec(damped, &slope); err == nil {
			next = make([]float64, n)
			for i := range n {
				next[i] = z[i] - by.AtVec(i)
			}
			if ahead, err := p.residuals(next); err == nil && squares(ahead) < squares(r) {
				*damp /= 5
				return next, ahead, true
			}
		}
		*damp *= 5
	}
	return nil, nil, false
}

func (p *problem) jacobian(z, r []float64, fixed int) (*mat.Dense, error) {
	const by = 1e-3
	j := mat.NewDense(len(r), len(z), nil)
	for i := range z {
		if i == fixed {
			continue
		}
		moved := append([]float64(nil), z...)
		moved[i] += by
		at, err := p.residuals(moved)
		if err != nil {
			return nil, err
		}
		for k := range r {
			j.Set(k, i, (at[k]-r[k])/by)
		}
	}
	return j, nil
}

// residuals are the misses of the rows, then how far each parameter is from what it is
// drawn to.
func (p *problem) residuals(z []float64) ([]float64, error) {
	values := make([]float64, len(z))
	for i, c := range p.parameters {
		values[i] = c.at(z[i])
	}
	list := make([]float64, 0, len(p.fitted)+len(z))
	for _, o := range p.fitted {
		v, err := o.model(values)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", o.What, err)
		}
		list = append(list, o.miss(v))
	}
	return append(list, z...), nil
}

func squares(list []float64) float64 {
	sum := 0.0
	for _, v := range list {
		sum += v * v
	}
	return sum
}
