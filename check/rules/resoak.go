package rules

import (
	"fmt"
	"math"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// How a steep would meet its target is found by forecasting the steep alone with
// one soak changed, by half hours, until the target is met.

const (
	halfHour   = 0.5 * hour
	leastSoak  = 2 * hour  // a shorter soak only wets the husk
	mostResoak = 12 * hour // by so much a soak is changed at the most
	longSteep  = 10 * day  // a steep that nobody keeps up is not tried out
)

// steepOut forecasts the moisture at the end of a steep. It is NaN where it cannot, and
// where the grain would stand too long without oxygen: no advice leads there.
func (c *Case) steepOut(of *model.Steep, steps []model.Step) float64 {
	p, st := *c.Process, *of
	st.Steps = steps
	p.Stages, p.Expect = []model.Stage{&st}, nil
	var o forecast.Options
	if c.Meter != nil {
		o.Meter = c.Meter()
	}
	f, err := forecast.Run(&p, o)
	if err != nil || f.BrokenOff() || airless(f) > max(airless(c.Forecast), c.Limit(vocabulary.LimitAirless, airlessUsual(c))) {
		return math.NaN()
	}
	return f.Totals.SteepOutMoisture
}

// airless is the longest time that the grain stands without oxygen.
func airless(f *forecast.Forecast) (most float64) {
	for _, t := range forecast.Troubles[forecast.OxygenGone](f) {
		most = max(most, t.Airless)
	}
	return most
}

// soakFor is the soak, or the rest, with another length.
func soakFor(s model.Step, seconds float64) model.Step {
	end := model.Ending{For: &model.Quantity{Quantity: quantity.Quantity{SI: seconds, Dimension: quantity.Time}}}
	switch s := s.(type) {
	case *model.Soak:
		n := *s
		n.Ending = end
		return &n
	case *model.Rest:
		n := *s
		n.Ending = end
		return &n
	}
	return s
}

// replaced gives the steps with one in place of another; nil leaves it out.
func replaced(steps []model.Step, old, with model.Step) []model.Step {
	var list []model.Step
	for _, s := range steps {
		if s == old {
			if with != nil {
				list = append(list, with)
			}
			continue
		}
		if r, ok := s.(*model.Repeat); ok {
			n := *r
			n.Steps = replaced(r.Steps, old, with)
			s = &n
		}
		list = append(list, s)
	}
	return list
}

// within finds the first change, by half hours from the least to the most, with which the steep
// meets the target.
func (c *Case) within(st *model.Steep, least, most float64, changed func(by float64) []model.Step) (by float64, ok bool) {
	for by = least; by <= most+1; by += halfHour {
		if st.Target.Contains(math.Round(1000*c.steepOut(st, changed(by))) / 1000) {
			return by, true
		}
	}
	return 0, false
}

// moreSoak says which soak to lengthen, or what soak to add, so that the steep reaches
// its target; "" where neither does it.
func (c *Case) moreSoak(st *model.Steep) (advice string, repair *resoak) {
	all := c.wettingsOf(st)
	last, rest := lastOf(all, model.SoakStep), lastOf(all, model.RestStep)
	if last == nil || total(all) > longSteep {
		return "", nil
	}
	steps, most := st.Steps, c.Limit(vocabulary.LimitSoak, c.Profile.SoakLong*hour)
	if c.aired(*last) {
		most = mostResoak + last.seconds
	}
	if by, ok := c.within(st, halfHour, min(most-last.seconds, mostResoak), func(by float64) []model.Step {
		return replaced(steps, last.step, soakFor(last.step, last.seconds+by))
	}); ok {
		return fmt.Sprintf("%s would have to last %s longer, %s in all", named(all, last), Hours(by), Hours(last.seconds+by)), newTime(last.step, last.seconds+by)
	}
	added, then := append([]model.Step(nil), steps...), ""
	if rest != nil && all[len(all)-1].step.Kind() == model.SoakStep {
		added, then = append(added, soakFor(rest.step, rest.seconds)), fmt.Sprintf("a rest of %s and ", Hours(rest.seconds))
	}
	if by, ok := c.within(st, leastSoak, min(most, mostResoak), func(by float64) []model.Step {
		return append(added[:len(added):len(added)], soakFor(last.step, by))
	}); ok {
		return fmt.Sprintf("%sa further soak of %s would reach it", then, Hours(by)), nil
	}
	return "", nil
}

// lessSoak says which soak to shorten or leave out.
func (c *Case) lessSoak(st *model.Steep) (advice string, repair *resoak) {
	all := c.wettingsOf(st)
	last := lastOf(all, model.SoakStep)
	if last == nil || total(all) > longSteep {
		return "", nil
	}
	steps := st.Steps
	if by, ok := c.within(st, halfHour, last.seconds-halfHour, func(by float64) []model.Step {
		return replaced(steps, last.step, soakFor(last.step, last.seconds-by))
	}); ok {
		return fmt.Sprintf("%s would have to be %s shorter, %s in all", named(all, last), Hours(by), Hours(last.seconds-by)), newTime(last.step, last.seconds-by)
	}
	if times(all, last) == 1 {
		switch w := c.steepOut(st, replaced(steps, last.step, nil)); {
		case st.Target.Contains(math.Round(1000*w) / 1000):
			return fmt.Sprintf("without %s it would end at %s", last.label, Percent(w)), nil
		case w > st.Target.High.SI:
			return fmt.Sprintf("even without %s it would end at %s: shorten the soaks before as well", last.label, Percent(w)), nil
		}
	}
	return "", nil
}

// total is how long all of them take, s.
func total(all []wetting) (seconds float64) {
	for _, w := range all {
		seconds += w.seconds
	}
	return seconds
}

func lastOf(all []wetting, kind model.StepKind) *wetting {
	for i := len(all) - 1; i >= 0; i-- {
		if all[i].step.Kind() == kind {
			return &all[i]
		}
	}
	return nil
}

func times(all []wetting, w *wetting) int {
	n := 0
	for i := range all {
		if all[i].step == w.step {
			n++
		}
	}
	return n
}

// named is "soak 3", or "each soak of the repeat" where it comes about more than once.
func named(all []wetting, w *wetting) string {
	if times(all, w) > 1 {
		return "each soak of the repeat"
	}
	return w.label
}

// resoak is a soak whose time would be another.
type resoak struct {
	soak finding.Related
	edit finding.Edit
}

// newTime gives a soak another time, where it states one; a half hour is written as
// 7 h 30 min.
func newTime(s model.Step, seconds float64) *resoak {
	if s.Ends().For == nil {
		return nil
	}
	minutes := int(math.Round(seconds / 60))
	text := fmt.Sprintf("%d h", minutes/60)
	if minutes%60 > 0 {
		text = strings.TrimPrefix(fmt.Sprintf("%s %d min", text, minutes%60), "0 h ")
	}
	return &resoak{finding.Related{Place: s.Place(), Message: "this soak, for " + text}, finding.Edit{Place: s.Ends().For.Place, New: text}}
}
