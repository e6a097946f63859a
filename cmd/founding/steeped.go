package founding

import (
	"math"

	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

// steeped gives a plan with the soaks that bring the grain nearest to the middle of what is
// usual at steep-out, begun and drained while somebody is awake.
func (t *trial) steeped(p *plan) *plan {
	band := p.profile.CastBand()
	aim, half := (band.Low+band.High)/2, (band.High-band.Low)/2
	u := upOf(p.site)
	best, least := p, math.Inf(1)
	longest, step := min(p.profile.SoakLong-1, 15), 1.0
	if p.water > p.profile.HotWater {
		longest = 4
	}
	if longest > 10 {
		step = 2
	}
	for n := 2; n <= 4; n++ {
		for each := longest; each >= 3; each -= step {
			for last := 1.0; last <= each && t.ctx.Err() == nil; last += step {
				begin, awake := u.begins(int(each*60), int(last*60))
				if !awake && u != (up{}) {
					continue
				}
				q := p.copy()
				q.soaks, q.begin = nil, begin
				for range n - 1 {
					q.soaks = append(q.soaks, each)
				}
				q.soaks = append(q.soaks, last)
				moist, troubles := t.out(q)
				cost := math.Abs(moist-aim)/half + 0.2*math.Abs(float64(n)-3) + 0.03*(longest-each) + 3*float64(troubles)
				if cost < least {
					best, least = q, cost
				}
				if moist > band.High {
					break // longer ones only overshoot farther
				}
			}
		}
	}
	return best
}

// out is the moisture at the end of a steep, and how many troubles it has.
func (t *trial) out(p *plan) (moisture float64, troubles int) {
	s := &sheet{questions: t.questions, asking: t.asking}
	s.line("use \"%s\"", t.house.Name)
	s.open("process", p.name)
	s.line("make %s malt\nfrom %s of \"%s\"", p.malt, p.charge(s.system), p.grain.Name)
	if p.site != nil {
		s.line("at \"%s\"", p.site.Name)
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
