// Package rules holds the rules that look at a process and its forecast: one file
// a rule, named after it, with its declaration and its judgement, and its cases in
// testdata under the same name.
//
// A rule asks the typed process, its profile or the forecast, never the text. What
// is usual for grain and malt stands in package profile; limit words of the house
// move it. Where a rule cannot judge, because a fact it needs is not given, it says
// so: silence is never taken for approval.
package rules

import (
	"slices"

	"maltwright/check/profile"
	"maltwright/check/tell"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// Rule is a declaration and the judgement that goes with it.
type Rule struct {
	finding.Rule
	Forecast bool // it needs a forecast; without one it is not asked
	Judge    func(finding.Rule, *Case)
}

// All lists the rules in the order in which they are run, family by family.
func All() []Rule {
	return slices.Concat(forecastRules(), lotRules(), steepRules(), growRules(), kilnRules(), afterRules(), timeRules(), peopleRules())
}

// forecastRules are of the forecast as a whole.
func forecastRules() []Rule {
	return []Rule{forecastUnable, learntFigures, gateNotReached, guardCameFirst, statedTotalDiffers, expectationBroken, expectationAtRisk}
}

// Case is one process under judgement.
type Case struct {
	Process  *model.Process
	Profile  profile.Profile    // by which it is judged
	Claim    profile.Profile    // that of the malt that is claimed; Judge sets it
	Forecast *forecast.Forecast // nil where none could be made
	Odds     []ensemble.Odds    // of the promises; nil where they were not asked for
	On       string             // the day of the first soak, as 2026-03-06; "" where it is not given
	Meter    func() *work.Meter // of a further forecast that a rule makes; nil for one that nothing else bounds
	Found    []finding.Finding
	all      []Rule            // those that are asked
	tried    map[float64]*Case // with so much air led back, where that was assumed
	trial    bool              // it is such a one: what its faults rest on is not asked
	Unjudged []Unjudged
}

// Unjudged is a rule that could not be judged, and why.
type Unjudged struct{ Rule, Reason string }

// Note adds a finding.
func (c *Case) Note(f finding.Finding) { c.Found = append(c.Found, f) }

// NotJudged says that a rule could not be judged, because of the reason.
func (c *Case) NotJudged(r finding.Rule, reason string) {
	c.Unjudged = append(c.Unjudged, Unjudged{r.Name, reason})
}

// Judge asks every rule that can be asked. A claim that much is allowed to buys no
// silence where the process is plainly that of a pale malt.
func (c *Case) Judge() {
	if c.Claim = c.Profile; c.plainly() {
		c.Profile = c.Profile.AsPale()
	}
	units := c.Process.Units()
	c.all = All()
	for _, r := range c.all {
		if !r.Forecast || c.Forecast != nil {
			said, before := r.Rule, len(c.Found)
			r.Why, r.Do = units.Retold(r.Why), units.Retold(r.Do)
			r.Judge(r.Rule, c)
			for i := before; i < len(c.Found); i++ {
				inDegreesOf(said, units, &c.Found[i])
			}
		}
	}
	c.tellDegrees()
}

// Limit gives a threshold in SI, as the house moved it or as usual.
func (c *Case) Limit(word string, usual float64) float64 {
	if l, ok := model.FindLimit(c.Process.Limits, word); ok {
		return l.Bound.Range.High.SI
	}
	return usual
}

// said is a trouble in words, in the units of the process.
func (c *Case) said(t forecast.Trouble) string { return tell.Trouble(t, c.Process.Units()) }

// has tells whether a rule has spoken, wherever.
func (c *Case) has(rule string) bool {
	return slices.ContainsFunc(c.Found, func(f finding.Finding) bool { return f.Rule == rule })
}

// told tells whether somebody who reads the place is told of it already.
func (c *Case) told(place source.Place) bool {
	return slices.ContainsFunc(c.Found, func(f finding.Finding) bool { return f.Place == place && f.Severity >= finding.Caution })
}
