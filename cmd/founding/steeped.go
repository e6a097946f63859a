package founding

import (
	"math"

	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

// steeped gives a plan with the soaks that bring the grain nearest to the middle of what is
// usual at steep-out, begun and drained while somebody is awake.
func (t *trial) steeped(p *plan) *plan {
	longest, step := p.longest, 1.0
	if longest > 10 {
		step = 2
	}
	best, least := p, math.Inf(1)
	for n := 2; n <= 4; n++ {
		for each := longest; each >= 3 && t.ctx.Err() == nil; each -= step {
			if q, cost := t.lastSoak(p, n, each, step); q != nil {
				if cost += 0.03 * (longest - each); cost < least {
					best, least = q, cost
				}
			}
		}
	}
	return best
}

// lastSoak gives a plan of so many soaks of so many h, of which the last is as long as brings
// the grain nearest to where it is wanted, and what speaks against it. The plan is nil where
// nobody is awake to drain it.
func (t *trial) lastSoak(p *plan, n int, each, step float64) (*plan, float64) {
	band := p.profile.CastBand()
	aim, half := (band.Low+band.High)/2, (band.High-band.Low)/2
	cost := func(last float64) (q *plan, short bool, cost float64) {
		q = p.copy()
		q.soaks = nil
		for range n - 1 {
			q.soaks = append(q.soaks, each)
		}
		q.soaks = append(q.soaks, last)
		moist, troubles := t.out(q)
		return q, moist < aim, math.Abs(moist-aim)/half + 0.2*math.Abs(float64(n)-3) + 0.2*max(0, 3-last) + 3*float64(troubles)
	}
	var best *plan
	least := math.Inf(1)
	for low, high := 2.0, each; low <= high; {
		last := low + math.Floor((high-low)/2/step)*step
		q, short, c := cost(last)
		begin, awake := upOf(p.site).begins(int(each*60), int(last*60))
		if q.begin = begin; awake && c < least {
			best, least = q, c
		}
		if short {
			low = last + step // a longer one brings in more
		} else {
			high = last - step
		}
	}
	return best, least
}

// out is the moisture at the end of a steep, and how many troubles it has.
func (t *trial) out(p *plan) (moisture float64, troubles int) {
	s := &sheet{questions: t.questions, asking: t.asking}
	s.line("use \"%s\"", t.house.Name)
	s.open("process", p.name)
	s.line("make %s malt\nfrom %s of %s", p.malt, p.charge(s.system), quoted(p.grain.Name))
	if p.site != nil {
		s.line("at %s", quoted(p.site.Name))
	}
	p.wordsOfSteep(s)
	s.shut()
	house, _ := read.Load(t.name, []byte(s.String()), ".", beside{t.house, t.Root})
	if len(house.Processes) == 0 {
		return math.Inf(1), 0
	}
	f, err := forecast.Run(house.Processes[len(house.Processes)-1], forecast.Options{})
	if err != nil {
		return math.Inf(1), 0
	}
	return f.Totals.SteepOutMoisture, len(f.Trouble)
}
