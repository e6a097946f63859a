package rules

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

var scaleTooSmall = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "scale-too-small", Severity: finding.Caution,
		Title: "a batch too heavy for every scale of the house",
		Why:   "every moisture of a batch is calculated from its weight; weighing in several goes takes time, and loses water and kernels",
		Do:    "weigh it in several goes, or weigh a marked bag instead: bag 100 g at the start",
		Bad:   `scale "base scale" { division 1 g; holds 5 kg }`,
		Good:  `scale "base scale" { division 5 g; holds 15 kg }`,
		Limits: "it does not judge a process with a marked bag, nor a scale that does not say what it holds; a batch that is too heavy only together with its vessel " +
			"is a note, since it can be weighed in something lighter"},
	Judge: func(r finding.Rule, c *Case) {
		scale := c.largestScale()
		if scale == nil || c.Process.Bag != nil {
			return
		}
		if s, _ := c.heaviest(false); s != nil && !scale.Takes(s.WeightEnd) {
			f := r.At(s.Place, fmt.Sprintf("after %s the drained grain weighs %s, and scale %q holds %s", s.Label, c.Process.Units().Weight(s.WeightEnd), scale.Name, scale.Holds))
			f.Hint = c.Process.Units().Retold(fmt.Sprintf("weigh it in %.0f goes, or weigh a marked bag instead: bag 100 g at the start", math.Ceil(s.WeightEnd/scale.Holds.SI)))
			f.Related = []finding.Related{{Place: scale.Place, Message: "the scale"}}
			c.Note(f)
			return
		}
		s, in := c.heaviest(true)
		if s == nil {
			return
		}
		if gross, _ := in.With(s.WeightEnd); !scale.Takes(gross) {
			f := r.At(s.Place, fmt.Sprintf("after %s the grain weighs %s in %q, and scale %q holds %s", s.Label, c.Process.Units().Weight(gross), in.Name, scale.Name, scale.Holds))
			f.Severity, f.Hint = finding.Note, "weigh it in something lighter, or in several goes"
			f.Related = []finding.Related{{Place: scale.Place, Message: "the scale"}, {Place: in.Weighs.Place, Message: "what it lies in"}}
			c.Note(f)
		}
	},
}

// largestScale is the scale of the house that holds the most; nil where there is none, or
// one does not say what it holds.
func (c *Case) largestScale() (largest *model.Scale) {
	for _, s := range c.Process.House.Scales {
		if s.Holds == nil {
			return nil
		}
		if largest == nil || s.Holds.SI > largest.Holds.SI {
			largest = s
		}
	}
	return largest
}

// heaviest is the step at whose end the grain weighs the most: drained, or with what it
// lies in, of stages alone that say what that weighs.
func (c *Case) heaviest(gross bool) (heaviest *forecast.Step, in *model.Holder) {
	most := 0.0
	for _, st := range c.Forecast.Stages {
		own := model.HolderOf(st.Of)
		if !gross {
			own = nil
		} else if own == nil || own.Weighs == nil {
			continue
		}
		for k := range st.Steps {
			s := &st.Steps[k]
			weight := s.WeightEnd
			if gross, known := own.With(weight); known {
				weight = gross
			}
			if weight > most {
				most, heaviest, in = weight, s, own
			}
		}
	}
	return heaviest, in
}
