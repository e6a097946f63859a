package kiln

// past is where the unknowns of the last stages stood, the newest last: where those of the next begin.
type past struct {
	n    int
	when [pastStages]float64 // s since New
	what [pastStages]list
}

const (
	pastStages = 3

	// farthest is how far ahead of the last stages they are carried on, share of the time between
	// them: further, and they stay (numerical).
	farthest = 6.0
)

// add notes a stage.
func (p *past) add(when float64, what list) {
	if p.n == pastStages {
		copy(p.when[:], p.when[1:])
		copy(p.what[:], p.what[1:])
		p.n--
	}
	p.when[p.n], p.what[p.n] = when, what
	p.n++
}

// at carries them on to a time: in a parabola through three, a straight line through two.
func (p *past) at(when float64) list {
	if p.n == 0 {
		return list{}
	}
	last := p.what[p.n-1]
	if p.n < 2 {
		return last
	}
	t0, t1 := p.when[p.n-2], p.when[p.n-1]
	ahead := (when - t1) / (t1 - t0)
	if !(ahead > 0 && ahead < farthest) {
		return last
	}
	to := last
	for i := range unknowns {
		slope := (last[i] - p.what[p.n-2][i]) / (t1 - t0)
		to[i] += slope * (when - t1)
		if p.n == pastStages {
			before := (p.what[p.n-2][i] - p.what[p.n-3][i]) / (t0 - p.when[p.n-3])
			bend := (slope - before) / (t1 - p.when[p.n-3])
			to[i] += bend * (when - t1) * (when - t0)
		}
	}
	return to
}

// stands is where the unknowns of a stage stood.
func (b *Bed) stands(f flow) list { return list{b.passing, f.on.w, f.on.t} }
