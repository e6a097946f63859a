package rules

import (
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/source"
)

// wetting is a soak or a rest as it comes about, with its time.
type wetting struct {
	step    model.Step
	of      *model.Steep
	label   string  // soak 1, rest 1
	seconds float64 // by the forecast; else the longest that is said
}

// wettings lists soaks and rests in their order: those of the forecast, or where there
// is none, or it ends in the middle of the steep, those that may be. Steps that never
// end are left out.
func (c *Case) wettings() []wetting {
	if c.Forecast == nil || c.brokeOffWet() {
		return c.saidWettings()
	}
	var list []wetting
	for _, st := range c.Forecast.Stages {
		of, ok := st.Of.(*model.Steep)
		if !ok {
			continue
		}
		for _, s := range st.Steps {
			if step := stepAt(of.Steps, s.Place); step != nil && step.Kind() == s.Kind {
				list = append(list, wetting{step, of, s.Label, s.End - s.Start})
			}
		}
	}
	return list
}

// brokeOffWet tells whether the forecast could not get out of the steep.
func (c *Case) brokeOffWet() bool {
	n := len(c.Forecast.Stages)
	return c.Forecast.BrokenOff() && (n == 0 || c.Forecast.Stages[n-1].Kind == model.SteepStage)
}

func (c *Case) saidWettings() []wetting {
	var list []wetting
	for _, of := range model.Every[*model.Steep](c.Process) {
		for _, s := range unrolled(of.Steps) {
			if t, ok := lasts(s); ok && s.Kind() != model.GateStep {
				list = append(list, wetting{s, of, string(s.Kind()), t})
			}
		}
	}
	return list
}

// eachSteep gives the wettings of each steep by themselves: between two of them the grain
// lies in air and grows.
func (c *Case) eachSteep() (lists [][]wetting) {
	all := c.wettings()
	for len(all) > 0 {
		n := slices.IndexFunc(all, func(w wetting) bool { return w.of != all[0].of })
		if n < 0 {
			n = len(all)
		}
		lists, all = append(lists, all[:n]), all[n:]
	}
	return lists
}

// wettingsOf are those of one steep.
func (c *Case) wettingsOf(st *model.Steep) []wetting {
	return slices.DeleteFunc(c.wettings(), func(w wetting) bool { return w.of != st })
}

// still is how long a soak keeps the grain at a stretch in water that no air is blown
// through, s. Air at intervals, so much air as is said and an overflow count where the
// forecast finds them to be enough.
func (c *Case) still(w wetting) float64 {
	st := w.of
	switch {
	case model.Aerated(w.step), renewed(w.step) && !c.airless(w.step):
		return 0
	case st != nil && st.Aerate != nil && !c.airless(w.step):
		return min(w.seconds, st.Aerate.Every.SI)
	}
	return w.seconds
}

// renewed tells whether so much air is blown through a soak, or so much water runs through
// it, as is said.
func renewed(s model.Step) bool {
	soak, ok := s.(*model.Soak)
	return ok && (soak.Airflow != nil || soak.Overflow != nil)
}

// aired tells whether air is blown through the water of a soak, all the time or often
// enough.
func (c *Case) aired(w wetting) bool { return c.still(w) < w.seconds }

// onceEach keeps the longest run of each step of a kind.
func onceEach(list []wetting, kind model.StepKind) []wetting {
	var kept []wetting
	at := map[model.Step]int{}
	for _, w := range list {
		if w.step.Kind() != kind {
			continue
		}
		i, again := at[w.step]
		switch {
		case !again:
			at[w.step] = len(kept)
			kept = append(kept, w)
		case w.seconds > kept[i].seconds:
			kept[i] = w
		}
	}
	return kept
}

func stepAt(steps []model.Step, place source.Place) model.Step {
	for _, s := range model.EveryStep(steps) {
		if s.Place() == place {
			return s
		}
	}
	return nil
}

// timeAt is where a step says how long it takes.
func timeAt(s model.Step) source.Place {
	switch {
	case s.Ends().For != nil:
		return s.Ends().For.Place
	case s.Ends().Allow != nil:
		return s.Ends().Allow.Place
	}
	return s.Place()
}

// warmth is how cool and how warm a soak or a rest is, °C, and where it is said; of a
// site's band it is the middle, as in the forecast.
func (c *Case) warmth(s model.Step) (low, high float64, place source.Place, ok bool) {
	if at := s.Warmth().At; at != nil {
		low, high = celsius(at)
		return low, high, at.Place, true
	}
	if c.Process.Site == nil {
		return 0, 0, source.Place{}, false
	}
	of := c.Process.Site.Water
	if s.Kind() == model.RestStep {
		of = c.Process.Site.Air
	}
	if of == nil {
		return 0, 0, source.Place{}, false
	}
	mid := of.Mid() - zeroC
	return mid, mid, s.Place(), true
}
