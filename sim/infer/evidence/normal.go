package evidence

import "gonum.org/v1/gonum/mat"

// normal is the normal equations of trials about a place. Each trial touches the shared axes
// and its own alone, so that their matrix has the shape of an arrow: the own axes of each
// trial are eliminated by themselves (Schur's complement), and only the shared are solved
// together. So what it costs grows with the number of trials, and not with its cube.
type normal struct {
	parts   []part
	shared  mat.Cholesky  // of the curvature by the shared axes, where all others follow
	slope   *mat.VecDense // the gradient by them
	mean    *mat.VecDense // Newton's step of the shared axes; empty where there are none
	own     []*mat.VecDense
	promise float64 // by how much the step lowers the cost, if all is as straight as it looks
}

// part is what one trial brings, with D the scale of its own part of each axis, H the
// curvature of its likelihood by its axes, and g the gradient.
type part struct {
	h    *mat.SymDense
	g    *mat.VecDense
	own  mat.Cholesky  // of I + D·H·D
	give *mat.Dense    // (I + D·H·D)⁻¹·D·H: how its own give way as the shared move
	rest *mat.VecDense // (I + D·H·D)⁻¹·(D·g + u): and how far they would go by themselves
	tell *mat.SymDense // H − H·D·give: what it tells of where its axes lie about which they scatter
	pull *mat.VecDense // g − H·D·rest: the gradient by them
}

// patchable is added to the diagonal of a curvature, lest rounding spoils it.
const patchable = 1e-9

// normal makes the equations and solves them.
func (s *search) normal(seats []*seat) normal {
	n := normal{parts: make([]part, len(seats)), own: make([]*mat.VecDense, len(seats))}
	for b, x := range seats {
		n.parts[b] = s.part(b, x)
	}
	n.solve(s.common, s.mean)
	for b, x := range seats {
		p, axes := &n.parts[b], s.common.Axes[b]
		step := mat.NewVecDense(len(axes), nil)
		step.MulVec(p.give, n.meanOf(axes))
		step.AddVec(step, p.rest)
		step.ScaleVec(-1, step)
		n.own[b] = step
		for i, k := range axes {
			n.promise -= (s.common.scale(k)*p.g.AtVec(i) + x.own[i]) * step.AtVec(i) / 2
			if k != Own {
				n.promise -= p.g.AtVec(i) * n.mean.AtVec(k) / 2
			}
		}
	}
	for k, p := range s.common.Prior {
		n.promise -= (s.mean[k] - p.Mean) / (p.SD * p.SD) * n.mean.AtVec(k) / 2
	}
	return n
}

// meanOf is the step of the shared axes as one trial has them, nil at its own.
func (n *normal) meanOf(axes []int) *mat.VecDense {
	out := mat.NewVecDense(len(axes), nil)
	for i, k := range axes {
		if k != Own {
			out.SetVec(i, n.mean.AtVec(k))
		}
	}
	return out
}

// solve puts the parts together.
func (n *normal) solve(c Common, mean []float64) {
	n.mean = &mat.VecDense{}
	if len(mean) == 0 {
		return
	}
	h, g := mat.NewSymDense(len(mean), nil), mat.NewVecDense(len(mean), nil)
	for k, p := range c.Prior {
		h.SetSym(k, k, 1/(p.SD*p.SD)+patchable)
		g.SetVec(k, (mean[k]-p.Mean)/(p.SD*p.SD))
	}
	for b := range n.parts {
		n.parts[b].add(h, g, c.Axes[b], 1)
	}
	n.slope, n.mean = g, mat.NewVecDense(len(mean), nil)
	if n.shared.Factorize(h) && n.shared.SolveVecTo(n.mean, g) == nil {
		n.mean.ScaleVec(-1, n.mean)
	}
}

// add adds so many times the part to a curvature by the shared axes, and to its gradient.
func (p *part) add(h *mat.SymDense, g *mat.VecDense, axes []int, times float64) {
	for i, k := range axes {
		if k == Own {
			continue
		}
		g.SetVec(k, g.AtVec(k)+times*p.pull.AtVec(i))
		for j, l := range axes {
			if l >= k && (l != k || i == j) {
				h.SetSym(k, l, h.At(k, l)+times*p.tell.At(i, j))
			}
		}
	}
}

// part makes that of one trial. Residuals far off weigh less, as their distribution has it.
func (s *search) part(b int, x *seat) part {
	dims := len(x.z)
	p := part{h: mat.NewSymDense(dims, nil), g: mat.NewVecDense(dims, nil)}
	p.take(x)
	d := make([]float64, dims)
	for i, k := range s.common.Axes[b] {
		d[i] = s.common.scale(k)
	}
	own, dh, dg := mat.NewSymDense(dims, nil), mat.NewDense(dims, dims, nil), mat.NewVecDense(dims, nil)
	for i := range dims {
		dg.SetVec(i, d[i]*p.g.AtVec(i)+x.own[i])
		for j := range dims {
			dh.Set(i, j, d[i]*p.h.At(i, j))
			if j >= i {
				own.SetSym(i, j, d[i]*p.h.At(i, j)*d[j])
			}
		}
		own.SetSym(i, i, own.At(i, i)+1+patchable)
	}
	p.give, p.rest = mat.NewDense(dims, dims, nil), mat.NewVecDense(dims, nil)
	if p.own.Factorize(own) {
		_ = p.own.SolveTo(p.give, dh) // the matrix is not worse than its diagonal of ones
		_ = p.own.SolveVecTo(p.rest, dg)
	}
	var taken mat.Dense
	taken.Mul(dh.T(), p.give)
	p.tell = mat.NewSymDense(dims, nil)
	for i := range dims {
		for j := i; j < dims; j++ {
			p.tell.SetSym(i, j, p.h.At(i, j)-(taken.At(i, j)+taken.At(j, i))/2)
		}
	}
	p.pull = mat.NewVecDense(dims, nil)
	p.pull.MulVec(dh.T(), p.rest)
	p.pull.SubVec(p.g, p.pull)
	return p
}

// take takes the curvature of the likelihood and its gradient.
func (p *part) take(x *seat) {
	for n, r := range x.residuals {
		weight := x.trial.Observations[n].pull(r)
		for i, d := range x.slopes[n] {
			if d == 0 {
				continue
			}
			p.g.SetVec(i, p.g.AtVec(i)+weight*r*d)
			for j := 0; j <= i; j++ {
				p.h.SetSym(i, j, p.h.At(i, j)+weight*d*x.slopes[n][j])
			}
		}
	}
}
