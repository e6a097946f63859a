package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var fireUnattended = Rule{
	Rule: finding.Rule{Name: "fire-unattended", Severity: finding.Caution,
		Title: "the kiln's fire burns longer than anybody is awake",
		Why:   "dry rootlets and dust fall through the floor of the kiln and catch fire; a fire that nobody watches takes the house (common practice)",
		Do:    "share out a night watch, or let the fire go out and go on in the morning; keep rootlets off the hearth, and hang a smoke alarm" + localCodes,
		Bad:   "fired wood by indirect\ndry at air-on 50 °C until moisture at most 20 % allow 18 to 30 h",
		Good:  "fired electric\ndry at air-on 50 °C until moisture at most 20 % allow 3 to 16 h",
		Limits: "it judges flames only, by how long they burn, since the process does not say at what hour the kiln is lit; " +
			"electric heat with a thermostat is not judged, and is safer, but not safe"},
	Judge: eachKiln(func(r finding.Rule, c *Case, st *model.Kilning, k *model.Kiln) {
		if !vocabulary.Burns(k.Fired.Text) {
			return
		}
		if c.Process.Site == nil || len(c.Process.Site.Awake) == 0 {
			c.NotJudged(r, "the site does not say when somebody is awake")
			return
		}
		up := c.Process.Site.Waking()
		switch _, burns := c.heated(k); {
		case up >= day: // there is a shift at every hour
		case burns == 0:
			c.NotJudged(r, "the steps of the kiln do not say how long they take")
		case burns <= up:
			c.NotJudged(r, fmt.Sprintf("the hour at which the fire is lit is not known; its %s would fit into the %s that somebody is awake", Hours(burns), Hours(up)))
		default:
			f := r.At(st.Place(), fmt.Sprintf("the %s fire burns %s on end, and somebody is awake for %s of the day", k.Fired.Text, Hours(burns), Hours(up)))
			f.Related = append(theKiln(k), finding.Related{Place: c.Process.Site.Awake[0].Place, Message: "when somebody is awake"})
			c.Note(f)
		}
	}),
}

// heated is the hottest that a kiln is asked for, °C, and how long it is heated on
// end, s: by the forecast, or else at the least that its steps may take; 0 where
// that is not known.
func (c *Case) heated(k *model.Kiln) (hot, seconds float64) {
	for _, s := range c.stepsIn(k) {
		if t, ok := hottest(s); ok {
			hot = max(hot, t)
		}
		seconds += atLeast(s)
	}
	if c.Forecast == nil {
		return hot, seconds
	}
	seconds = 0
	for _, st := range c.Forecast.Stages {
		on, ok := st.Of.(*model.Kilning)
		for _, s := range st.Steps {
			if ok && on.Kiln == k && s.Kind != model.CoolStep {
				seconds += s.End - s.Start
			}
		}
	}
	return hot, seconds
}

// atLeast is the shortest time that a step takes, s; 0 where it says none.
func atLeast(s model.Step) float64 {
	end := s.Ends()
	switch {
	case end.Allow != nil && end.Allow.Earliest != nil:
		return end.Allow.Earliest.SI
	case end.Until != nil || model.Asked(s) != nil || s.Kind() == model.CoolStep:
		return 0
	case end.For != nil:
		return end.For.SI
	case s.Warmth().Over != nil:
		return s.Warmth().Over.SI
	}
	return 0
}
