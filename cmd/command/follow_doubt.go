package command

import (
	"fmt"
	"strings"

	"maltwright/lang/model"
	"maltwright/sim/grain"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/infer/follow"
)

// doubt says what is wrong with a reading, and what to do.
func (p *followSheet) doubt(d follow.Doubt) string {
	j := p.Judged[d.Observation]
	words := oneLine(j.Observation.Reading.Place().Text())
	if at := j.Observation.Reading.When(); !at.IsZero() && !strings.Contains(words, at.Format("2006-01-02")) {
		words = at.Format("Mon 2 Jan, ") + words
	}
	return fmt.Sprintf("%s: %s", words, doubtWords[d.Kind](p, d, j))
}

var doubtWords = map[follow.DoubtKind]func(*followSheet, follow.Doubt, follow.Judged) string{
	follow.BelowDry: func(p *followSheet, d follow.Doubt, j follow.Judged) string {
		return fmt.Sprintf("that is less than the dry matter in it; %s was to be expected. Look at the number, its unit and the tare", p.expected(j))
	},
	follow.NoTare: func(p *followSheet, d follow.Doubt, j follow.Judged) string {
		return fmt.Sprintf("it would fit if the tare of %s were not in it; the record takes the tare off every such weight. Weigh it along, or write the weight with it",
			p.Trial.Batch.Tare)
	},
	follow.Unit: func(p *followSheet, d follow.Doubt, j follow.Judged) string {
		return fmt.Sprintf("it would fit if it were %s; %s was to be expected. Put the unit right", d.Detail, p.expected(j))
	},
	follow.Nought: func(p *followSheet, d follow.Doubt, j follow.Judged) string {
		return fmt.Sprintf("it would fit with the point one place on; %s was to be expected", p.expected(j))
	},
	follow.GainedWater: func(p *followSheet, d follow.Doubt, j follow.Judged) string {
		return fmt.Sprintf("it only dries here, and cannot weigh more than in the reading before, %s; %s was to be expected",
			oneLine(p.Judged[d.Other].Observation.Reading.Place().Text()), p.expected(j))
	},
	follow.ChargesDry: func(p *followSheet, d follow.Doubt, j follow.Judged) string {
		return fmt.Sprintf("that is the weight asked for only if none of the dry matter of the charge were gone; with what was lost it holds %.1f %%. Reckon the weight to dry to with reckon target --lost",
			100*d.Value)
	},
	follow.NotYet: func(p *followSheet, d follow.Doubt, j follow.Judged) string {
		return fmt.Sprintf("by that weight it held %.1f %% then, and the step that is said to have ended waits for %s. Look at the weight, and at the step behind after", 100*d.Value, percentText(d.Wanted))
	},
	follow.GoesBack: func(p *followSheet, d follow.Doubt, j follow.Judged) string {
		return fmt.Sprintf("growth does not go back, and before it stands: %s. Count more corns", oneLine(p.Judged[d.Other].Observation.Reading.Place().Text()))
	},
	follow.OutOfPlace: func(p *followSheet, d follow.Doubt, j follow.Judged) string {
		return "by all else that is written there is nothing of the kind to be read then. Look at its time, and at the step behind after"
	},
	follow.Disagrees: func(p *followSheet, d follow.Doubt, j follow.Judged) string {
		return fmt.Sprintf("the other readings and the process make %s likely. Look at the number, and whether the step was done as the process says", p.expected(j))
	},
}

// expected is what a reading should have been, in the units of the process.
func (p *followSheet) expected(j follow.Judged) string {
	s := j.Expected
	low, high := s.P10-j.Observation.Error, s.P90+j.Observation.Error
	from, to := p.valueOf(j.Observation, low), p.valueOf(j.Observation, high)
	if from == to {
		return from
	}
	return from + " to " + to
}

func (p *followSheet) valueOf(m *evidence.Observation, v float64) string {
	switch x := m.Reading; {
	case model.Weight(x) != nil:
		return p.mass(v)
	case model.Thermometer(x) != nil:
		return p.degreesOf(v)
	case model.CountOf(x, model.Chit) != nil:
		return fmt.Sprintf("%.0f of 100", 100*min(max(v, 0), 1))
	case model.Is[*model.Felt](x):
		return grain.RubAt(v).String()
	}
	return fmt.Sprintf("a mean length of %.2f", max(v, 0))
}
