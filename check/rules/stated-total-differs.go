package rules

import (
	"fmt"
	"math"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

var statedTotalDiffers = Rule{
	Rule: finding.Rule{Name: "stated-total-differs", Severity: finding.Fault,
		Title:  "the promised total time contradicts the times of the steps",
		Why:    "the shortest or the longest times of the steps add up to another total than the process promises",
		Do:     "promise the total of the steps, or change their times",
		Bad:    "allow 6 to 8 days\nexpect total time at most 5 days",
		Good:   "allow 6 to 8 days\nexpect total time at most 12 days",
		Limits: "a step that waits for a condition may take any time up to its latest time; expectation-broken judges the time that the forecast gives"},
	Judge: func(r finding.Rule, c *Case) {
		for i := range c.Process.Expect {
			for _, t := range c.Process.Expect[i].Tests {
				if !c.againstStated(&t) {
					continue
				}
				least, most := c.stated()
				f := r.At(t.Place, fmt.Sprintf("the process promises %s, and the times of the steps add up to %s", t.Place.Text(), between(least, most)))
				f.Related = c.addends()
				c.Note(f)
			}
		}
	},
}

func between(least, most float64) string {
	switch {
	case most-least < 60:
		return Hours(least)
	case least == 0 && !math.IsInf(most, 1):
		return "up to " + Hours(most)
	case math.IsInf(most, 1):
		return Hours(least) + " and more"
	}
	low, high := Hours(least), Hours(most)
	if number, unit, _ := strings.Cut(low, " "); strings.HasSuffix(high, " "+unit) {
		low = number
	}
	return low + " to " + high
}

// againstStated tells whether a promise is of the total time, and cannot be kept by
// the times that are stated.
func (c *Case) againstStated(t *model.Test) bool {
	if t.Measure != vocabulary.MeasureTotalTime || t.Bound == nil {
		return false
	}
	least, most := c.stated()
	low, high := t.Bound.Range.Low.SI, t.Bound.Range.High.SI
	const slack = 60.0 // s: nobody writes a promise finer than a minute
	tooLong := least > high+slack
	tooShort := most < low-slack
	switch t.Bound.Op {
	case quantity.AtMost, quantity.Below:
		return tooLong
	case quantity.AtLeast, quantity.Above:
		return tooShort
	}
	return tooLong || tooShort
}

// stated adds up the least and the most that the stages are given, s.
func (c *Case) stated() (least, most float64) {
	for _, st := range c.Process.Stages {
		l, m := statedOf(st)
		least, most = least+l, most+m
	}
	return least, most
}

// addends names the times of the stages that go into the sum.
func (c *Case) addends() []finding.Related {
	var list []finding.Related
	for _, st := range c.Process.Stages {
		if l, m := statedOf(st); m > 0 {
			list = append(list, finding.Related{Place: st.Place(), Message: c.Process.Called(st) + ": " + between(l, m)})
		}
	}
	return list
}

// statedOf is the least and the most that a stage is given, s. The malt's rest in
// store is no part of the total.
func statedOf(st model.Stage) (least, most float64) {
	switch st := st.(type) {
	case *model.Storing:
		return 0, 0
	case *model.Deculming:
		if st.Within == nil {
			return 0, deculming
		}
		return 0, st.Within.SI + deculming
	case *model.Germination, *model.Withering:
		end := st.Ends()
		least, most = span(end.Until, end.For, end.Allow)
		_, wait := statedSteps(gatesOf(model.StepsOf(st)))
		return least, most + wait
	}
	least, most = statedSteps(model.StepsOf(st))
	if st.Ends().Until != nil && len(model.StepsOf(st)) > 0 {
		least, _ = statedSteps(model.StepsOf(st)[:1])
	}
	return least, most
}

const (
	deculming = 12 * hour // rubbing and sieving a batch takes no longer (common practice)
	cooling   = day       // nor does cooling a kiln
)

func gatesOf(steps []model.Step) []model.Step {
	var list []model.Step
	for _, s := range steps {
		if s.Kind() == model.GateStep {
			list = append(list, s)
		}
	}
	return list
}

func statedSteps(steps []model.Step) (least, most float64) {
	for _, s := range steps {
		l, m := statedStep(s)
		least, most = least+l, most+m
	}
	return least, most
}

func statedStep(s model.Step) (least, most float64) {
	switch s := s.(type) {
	case *model.Repeat:
		return statedRepeat(s)
	case *model.Gate:
		if s.Allow != nil && s.Allow.Latest != nil {
			return 0, s.Allow.Latest.SI
		}
		return 0, math.Inf(1)
	case *model.Cool:
		if s.Allow != nil && s.Allow.Latest != nil {
			return 0, s.Allow.Latest.SI
		}
		return 0, cooling
	}
	time := s.Ends().For
	if time == nil && !model.HeldOn(s.Ends(), s.Warmth()) {
		time = s.Warmth().Over
	}
	return span(s.Ends().Until, time, s.Ends().Allow)
}

func statedRepeat(s *model.Repeat) (least, most float64) {
	times := 1.0
	if s.Times != nil {
		times = s.Times.Range.High.SI
	}
	least, most = statedSteps(s.Steps)
	if s.Until == nil {
		return times * least, times * most
	}
	first := 0.0
	if len(s.Steps) > 0 {
		first, _ = statedStep(s.Steps[0]) // what it waits for may hold after this
	}
	return first, times * most
}

// span is the least and the most that a step or a stage takes by its clauses, s.
func span(until *model.Condition, time *model.Quantity, allow *model.Guard) (least, most float64) {
	most = math.Inf(1)
	if allow != nil && allow.Latest != nil {
		most = allow.Latest.SI
	}
	if time != nil {
		most = min(most, time.SI)
	}
	switch {
	case until == nil && !math.IsInf(most, 1):
		return most, most
	case allow != nil && allow.Earliest != nil:
		return allow.Earliest.SI, most
	}
	return 0, most
}
