package founding

import (
	"fmt"
	"slices"
	"time"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/visits"
	"maltwright/sim/work"
)

// nights is what of a plan falls due when nobody is awake, whenever it is begun.
type nights struct {
	begin int // min of the day at which the fewest visits are missed
	many  int
	first string // what the first of them is and when, as words; "" where there is none
}

// hoursOf is when somebody is awake at a site, as upOf has it.
func hoursOf(s *model.Site) model.Hours {
	if s == nil || len(s.Awake) == 0 {
		h := model.Hours{Awake: []model.Shift{{Clock: model.Clock{From: 7 * 3600, To: 22 * 3600}}}}
		if s != nil {
			h.Away = s.Away
		}
		return h
	}
	return s.Hours
}

// someDay stands for the day of the first soak, which nobody knows yet.
var someDay = time.Date(2001, 1, 1, 0, 0, 0, 0, time.UTC)

// byNight seeks the hour to begin at by which the fewest visits fall in the night. The changes of
// water are at hours at which somebody is awake in any case. Without anyHour it begins when it was
// planned to.
func (p *plan) byNight(f *forecast.Forecast, anyHour bool) nights {
	hours, up := hoursOf(p.site), upOf(p.site)
	changes := []int{}
	for i, h := range p.soaks {
		changes = append(changes, int(float64(i)*p.day*60), int((float64(i)*p.day+h)*60))
	}
	missed := func(second int) []visits.Visit {
		of := *f
		of.Begun = someDay.Add(time.Duration(second) * time.Second)
		return visits.Missed(visits.Gather(visits.List(&of)), visits.Daily(second), hours)
	}
	best, least := nights{begin: p.begin}, []visits.Visit(nil)
	found := false
	starts := []int{p.begin}
	if anyHour {
		starts = append(starts, halfHours(p.begin)...)
	}
	for _, m := range starts {
		if slices.ContainsFunc(changes, func(c int) bool { return !up.at(m + c) }) {
			continue
		}
		if now := missed(m * 60); !found || len(now) < len(least) {
			best.begin, least, found = m, now, true
		}
	}
	if !found {
		least = missed(p.begin * 60)
	}
	if best.many = len(least); best.many > 0 {
		at := visits.Shown(least[0], visits.Daily(best.begin*60))(least[0].At).Second / 60
		best.first = fmt.Sprintf("%s at %02d:%02d", asWords(least[0].Tasks), at/60, at%60)
	}
	return best
}

// halfHours are those of a day behind a minute of it.
func halfHours(from int) (list []int) {
	for m := (from + 29) / 30 * 30; len(list) < ofDay/30; m += 30 {
		list = append(list, m%ofDay)
	}
	return list
}

// asWords names the chief task of a visit.
func asWords(tasks []visits.Task) string {
	names := map[visits.Kind]string{visits.Load: "loading", visits.Unload: "unloading", visits.Heat: "setting the heat", visits.Cool: "cooling", visits.Turn: "a turn",
		visits.Spread: "spreading", visits.Stir: "stirring", visits.Sprinkle: "sprinkling", visits.Drain: "a draining", visits.Fill: "a filling", visits.EndFloor: "the end of a stage",
		visits.Change: "a change of the bed", visits.Deculm: "rubbing the rootlets off"}
	for _, kind := range []visits.Kind{visits.Load, visits.Unload, visits.Spread} {
		for _, t := range tasks {
			if t.Kind == kind && t.Where != "" {
				return names[kind] + " " + quoted(t.Where)
			}
		}
	}
	for _, t := range tasks {
		if name := names[t.Kind]; name != "" {
			return name
		}
	}
	return "a look"
}

// byDay puts the visits of a plan into the hours of the day in which somebody is awake: by how fast it
// withers and dries, so that it can begin when it was planned to, or else by the hour at which it
// begins. It never takes a plan of which check finds more.
func (t *trial) byDay(planned tried) tried {
	if planned.broken != nil || t.ctx.Err() != nil || planned.forecast() == nil {
		return planned
	}
	t.pool = work.NewPool(mostWork / 4)
	best, least := t.paced(planned, false)
	if least.many > 0 {
		if other, fewer := t.paced(planned, true); fewer.many < least.many {
			best, least = other, fewer
		}
	}
	p := best.plan.copy()
	p.begin, p.night = least.begin, &least
	t.pool = work.NewPool(mostWork)
	return t.try(p)
}

// paced seeks the pace of a plan by which the fewest visits fall in the night.
func (t *trial) paced(planned tried, anyHour bool) (best tried, least nights) {
	best, least = planned, planned.plan.byNight(planned.forecast(), anyHour)
	for _, change := range planned.plan.paces() {
		q := planned.plan.copy()
		if least.many == 0 || t.spent() || !change(q) {
			continue
		}
		now := t.try(q)
		if t.spent() || now.broken != nil || now.score > planned.score+0.05 {
			continue
		}
		if f := now.forecast(); f != nil {
			if n := q.byNight(f, anyHour); n.many < least.many {
				best, least = now, n
			}
		}
	}
	return best, least
}

// paces are changes by which a plan takes some hours more or less behind the growing.
func (p *plan) paces() (list []func(*plan) bool) {
	for _, by := range []float64{-2, 2, -4, 4} {
		list = append(list, func(p *plan) bool {
			if p.wither == nil || p.wither.low+by < 15 || p.wither.high+by > 28 {
				return false
			}
			p.wither.low, p.wither.high = p.wither.low+by, p.wither.high+by
			return true
		})
	}
	for i := range p.heats {
		low, high := reach(p.heats[i].kiln)
		for j, d := range p.heats[i].dry {
			for _, by := range []float64{-5, 5} {
				if d.from+by >= max(low, 30) && d.to+by <= min(high, 80) {
					list = append(list, func(p *plan) bool {
						p.heats[i].dry[j].from += by
						p.heats[i].dry[j].to += by
						return true
					})
				}
			}
		}
		for _, by := range []float64{-1, 1} {
			list = append(list, func(p *plan) bool {
				if p.heats[i].cure == nil || p.heats[i].cure.hours+by < 3 {
					return false
				}
				p.heats[i].cure.hours += by
				return true
			})
		}
	}
	return list
}

// beginning says when to begin, and what of it falls in the night all the same.
func (p *plan) beginning() string {
	at := fmt.Sprintf("Begin at %02d:%02d", p.begin/60, p.begin%60)
	switch n := p.night; {
	case n == nil:
		return at + ", and somebody is awake for every change of water."
	case n.many == 0:
		return at + ", and by the forecast somebody is awake for all that is to be done, to the last of the kiln."
	case n.many == 1:
		return fmt.Sprintf("%s, and somebody is awake for every change of water. One visit still falls in the night: %s. See maltwright visits.", at, n.first)
	default:
		return fmt.Sprintf("%s, and somebody is awake for every change of water. %d visits still fall in the night, the first of them %s. See maltwright visits.", at, n.many, n.first)
	}
}

// turnedByDay writes when a piece is turned so many times a day, while somebody is awake.
func (p *plan) turnedByDay(times int) string {
	u := upOf(p.site)
	at := u.spread(times)
	if len(at) == 0 || u == (up{}).filled() {
		return fmt.Sprintf("every %d h", 24/times)
	}
	return "at " + clocks(at)
}
