package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var noAirRest = Rule{
	Rule: finding.Rule{Name: "no-air-rest", Severity: finding.Caution,
		Title: "soak follows soak with no rest in air, or hardly any",
		Why:   "drained grain breathes, gives off its carbon dioxide and drinks the film on its husk; without a rest it chits late and unevenly (common practice)",
		Do:    "drain it between the soaks and let it lie in air for 6 to 12 h",
		Bad: `steep in "base tub" to moisture 42 to 46 % {
  soak 9 h in water at 12 °C
  soak 9 h in water at 12 °C
}`,
		Good: usualSteep,
		Limits: "a steep of one soak is left alone: it is quick oats, or another rule judges it (soak-too-long, water-never-changed). Soaks with air blown through do not count, nor do rinses, " +
			"nor does a drain of about an hour between soaks that are too long by themselves; a rest of two hours counts as a rest. " +
			"A change of water does no harm unless the grain is under water for much longer than one soak may be"},
	Judge: func(r finding.Rule, c *Case) {
		told := map[model.Step]bool{}
		for _, s := range c.stretches() {
			at := s.soaks[1].step
			if !s.wrong(c) || told[at] {
				continue
			}
			told[at] = true
			if s.all && len(s.drains) == 0 {
				c.Note(r.At(s.soaks[0].of.Place(), fmt.Sprintf("%d soaks keep the grain under water for %s with no rest in air", len(s.soaks), Hours(s.wet))))
				continue
			}
			c.Note(s.finding(r))
		}
	},
}

const (
	drainsOnly = 2 * hour // a shorter rest lets the water run off, and no more
	rinses     = 2 * hour // a shorter soak only washes the grain
	sparesRest = 1.25     // by so much soaks may come to more than the longest that is usual
)

// stretch is what stands between two rests in air: soaks, and rests that only drain.
type stretch struct {
	soaks, drains []wetting
	wet           float64 // in still water
	all           bool    // its whole steep is one stretch
}

// stretches lists those of two soaks and more. Soaks that have air blown through, and rinses, are not among
// the soaks.
func (c *Case) stretches() (list []stretch) {
	for _, steep := range c.eachSteep() {
		list = append(list, c.stretchesOf(steep)...)
	}
	return list
}

func (c *Case) stretchesOf(steep []wetting) (list []stretch) {
	var now stretch
	whole := true
	end := func() {
		if len(now.soaks) > 1 {
			list = append(list, now)
		}
		now = stretch{}
	}
	for _, w := range steep {
		switch {
		case w.step.Kind() == model.RestStep && w.seconds >= drainsOnly:
			whole = false
			end()
		case w.step.Kind() == model.RestStep:
			now.drains = append(now.drains, w)
		case w.step.Kind() == model.SoakStep && !c.aired(w):
			now.wet += w.seconds
			if w.seconds >= rinses {
				now.soaks = append(now.soaks, w)
			}
		}
	}
	end()
	for i := range list {
		list[i].all = whole
	}
	return list
}

// wrong tells whether the grain is under water for too long in a stretch. Where it is
// drained on the way, one soak of it that is too long by itself is told of as that.
func (s stretch) wrong(c *Case) bool {
	most := c.Profile.SoakLong * hour
	for _, w := range s.drains {
		if w.seconds < c.Profile.TimesOf(vocabulary.VerbRest).Odd.Low*hour {
			return false // step-time-odd
		}
	}
	for _, w := range s.soaks {
		if len(s.drains) > 0 && w.seconds > most+60 {
			return false
		}
	}
	return s.wet > sparesRest*max(most, c.Limit(vocabulary.LimitSoak, most))
}

// finding is told at the first rest that is too short, or at the soak that has none
// before it.
func (s stretch) finding(r finding.Rule) finding.Finding {
	if len(s.drains) == 0 {
		f := r.At(s.soaks[1].step.Place(), fmt.Sprintf("this soak follows another with no rest in air: the grain is under water for %s", Hours(s.wet)))
		f.Related = []finding.Related{{Place: s.soaks[0].step.Place(), Message: "the soak before it"}}
		return f
	}
	short := s.drains[0]
	lasts := Hours(short.seconds)
	if short.step.Ends().For != nil {
		lasts = short.step.Ends().For.String()
	}
	f := r.At(timeAt(short.step), fmt.Sprintf("a rest of %s is too short to help, and the grain is under water for %s in all", lasts, Hours(s.wet)))
	f.Hint = "let it lie in air for 6 to 12 h between the soaks"
	return f
}
