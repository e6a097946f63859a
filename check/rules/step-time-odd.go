package rules

import (
	"fmt"
	"strconv"
	"strings"

	"maltwright/check/profile"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

var stepTimeOdd = Rule{
	Rule: finding.Rule{Name: "step-time-odd", Severity: finding.Caution,
		Title:  "the time of a step makes no sense",
		Why:    "a soak of minutes wets nothing, and one of days drowns the grain; turning every few minutes tears the rootlets off; mostly min, h or days were mixed up (common practice)",
		Do:     "look at the number and its unit",
		Bad:    `rest 10 min in air at 14 °C`,
		Good:   `rest 10 h in air at 14 °C`,
		Limits: "It judges only times far outside practice, by the grain and the malt type, and says nothing where another rule judges the same words."},
	Judge: func(r finding.Rule, c *Case) {
		for _, t := range c.timesGiven() {
			if usual := c.Profile.TimesOf(t.word); !usual.Odd.Holds(t.time.SI/hour) && !c.told(t.time.Place) {
				c.oddTime(r, t, usual)
			}
		}
	},
}

// givenTime is a time that a process gives to something, by the word of its times.
type givenTime struct {
	word, what string
	time       model.Quantity
}

// timesGiven lists the times of a process.
func (c *Case) timesGiven() []givenTime {
	var list []givenTime
	add := func(word, what string, q *model.Quantity) {
		if q != nil {
			list = append(list, givenTime{word, what, *q})
		}
	}
	for _, st := range c.Process.Stages {
		for _, s := range model.EveryStep(model.StepsOf(st)) {
			if t, word, what := timeGiven(s); word != "" {
				add(word, what, t)
			}
		}
		switch st := st.(type) {
		case *model.Steep:
			if st.Aerate != nil {
				add(vocabulary.VerbAerate, "from one blowing of air to the next", atLeastAMinute(&st.Aerate.Every))
				add("aerate's air", "for air that is blown at intervals", &st.Aerate.For)
			}
		case *model.Germination:
			if st == c.lastGrowth() {
				add(vocabulary.VerbGerminate, "for growing "+c.Profile.Grain.Name, c.inAll(model.GerminateStage))
			}
			add(vocabulary.VerbTurn, "from one turn to the next", atLeastAMinute(st.Turn))
			if st.Sprinkle != nil {
				add(vocabulary.VerbSprinkle, "from one sprinkling to the next", atLeastAMinute(st.Sprinkle.Every))
			}
			for _, a := range st.Blown {
				add(vocabulary.VerbAir, "from one start of the fan to the next", atLeastAMinute(a.Every))
			}
		case *model.Withering:
			if st == model.Last[*model.Withering](c.Process) {
				add(vocabulary.VerbWither, "for withering", c.inAll(model.WitherStage))
			}
			add("wither's turn", "from one turn to the next", atLeastAMinute(st.Turn))
			for _, a := range st.Blown {
				add(vocabulary.VerbAir, "from one start of the fan to the next", atLeastAMinute(a.Every))
			}
		case *model.Kilning:
			add(vocabulary.VerbStir, "from one stirring to the next", atLeastAMinute(st.Stir))
		case *model.Deculming:
			add(vocabulary.VerbDeculm, "to have the malt deculmed", st.Within)
		case *model.Storing:
			if st.Rest != nil {
				add(vocabulary.VerbStore, "for malt in store", &model.Quantity{Quantity: st.Rest.Range.Low, Place: st.Rest.Place})
			}
		}
	}
	return list
}

// inAll is the time of the stages of a kind together, at the place of the last; nil where
// one of them does not say it.
func (c *Case) inAll(kind model.StageKind) *model.Quantity {
	var all *model.Quantity
	for _, st := range c.Process.Stages {
		if st.Kind() != kind {
			continue
		}
		time := orLatest(st.Ends().For, st.Ends().Allow)
		switch {
		case time == nil:
			return nil
		case all != nil:
			sum := quantity.Quantity{SI: all.SI + time.SI, Dimension: quantity.Time}
			if made, err := quantity.In(sum.SI, time.Unit()); err == nil {
				sum = made
			}
			all = &model.Quantity{Quantity: sum, Place: time.Place}
		default:
			all = time
		}
	}
	return all
}

// timeGiven is the time of a step, or the latest it may take.
func timeGiven(s model.Step) (t *model.Quantity, word, what string) {
	switch {
	case s.Kind() == model.RepeatStep || s.Kind() == model.CoolStep:
		return nil, "", ""
	case s.Kind() == model.GateStep:
		return orLatest(nil, s.Ends().Allow), "wait", "for a wait at a gate"
	case s.Kind() != model.HoldStep && s.Ends().For == nil && s.Warmth().From != nil && s.Warmth().Over != nil:
		return s.Warmth().Over, "rise", "for a rise"
	}
	time := s.Ends().For
	if time == nil {
		time = s.Warmth().Over
	}
	word = string(s.Kind())
	return orLatest(time, s.Ends().Allow), word, givenFor[s.Kind()]
}

var givenFor = map[model.StepKind]string{model.SoakStep: "for a soak", model.RestStep: "for a rest in air", model.HoldStep: "for a hold",
	model.DryStep: "for drying", model.StewStep: "for stewing", model.CureStep: "for a cure", model.RoastStep: "for a roast"}

func orLatest(time *model.Quantity, g *model.Guard) *model.Quantity {
	if time == nil && g != nil && g.Latest != nil {
		return g.Latest
	}
	return time
}

// atLeastAMinute leaves out the intervals that no hand could keep, which the language
// tells of.
func atLeastAMinute(q *model.Quantity) *model.Quantity {
	if q != nil && q.SI < 60 {
		return nil
	}
	return q
}

func (c *Case) oddTime(r finding.Rule, t givenTime, usual profile.Times) {
	word := "short"
	if t.time.SI/hour > usual.Odd.High {
		word = "long"
	}
	f := r.At(t.time.Place, fmt.Sprintf("%s is %s %s: %s is usual", t.time, word, t.what, hoursBand(usual.Usual)))
	if meant := unitMeant(t.time, usual.Usual); meant != "" {
		f.Hint = fmt.Sprintf("if %s was meant, write it", meant)
	}
	c.Note(f)
}

// timeUnits are the units of time in which a slip is made, s.
var timeUnits = []struct {
	name string
	s    float64
}{{"min", 60}, {"h", hour}, {"days", day}, {"weeks", 7 * day}}

// leastMeant and mostMeant are the least and the most that anybody writes of a unit of
// time: half an hour is 0.5 h, and a week is 7 days.
const leastMeant, mostMeant = 0.1, 1000

// unitMeant gives the same number in the unit in which it would be usual, or "".
func unitMeant(q model.Quantity, usual profile.Band) string {
	number, unit, ok := strings.Cut(q.String(), " ")
	of, err := strconv.ParseFloat(number, 64)
	if !ok || err != nil || of < leastMeant || of > mostMeant || strings.Contains(unit, " ") {
		return ""
	}
	for _, u := range timeUnits {
		if usual.Holds(of * u.s / hour) {
			return number + " " + u.name
		}
	}
	return ""
}

// hoursBand writes a band of hours: 1 to 10 h, 2 weeks to 12 months.
func hoursBand(b profile.Band) string {
	low, lowUnit := timeText(b.Low)
	high, highUnit := timeText(b.High)
	switch {
	case b.Low == 0:
		return "at most " + high + " " + highUnit
	case lowUnit == highUnit:
		return low + " to " + high + " " + highUnit
	}
	return low + " " + lowUnit + " to " + high + " " + highUnit
}

func timeText(hours float64) (number, unit string) {
	switch {
	case hours < 1:
		return fmt.Sprintf("%.3g", 60*hours), "min"
	case hours <= 48:
		return fmt.Sprintf("%.3g", hours), "h"
	}
	return fmt.Sprintf("%.3g", hours/24), "days"
}
