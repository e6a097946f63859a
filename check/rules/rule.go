// Package rules holds the rules that look at a process and its forecast: one file
// a rule, with its declaration and its judgement.
//
// A rule asks the typed process or the forecast, never the text. Where it cannot
// judge, because a fact it needs is not given, it says so: silence is never taken
// for approval.
package rules

import (
	"maltwright/lang/finding"
	"maltwright/lang/process"
	"maltwright/sim/forecast"
)

// Rule is a declaration and the judgement that goes with it.
type Rule struct {
	finding.Rule
	Judge func(finding.Rule, *Case)
}

// All lists the rules in the order in which they are run.
func All() []Rule {
	return []Rule{
		forecastUnable, gateNotReached, guardCameFirst, targetMissed, expectationBroken,
		vesselTooSmall, oxygenGone, pieceOverheats, equipmentCannot, hotWhileWet,
	}
}

// Case is one process under judgement.
type Case struct {
	Process  *process.Process
	Forecast *forecast.Forecast
	Found    []finding.Finding
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

// troubles gives the troubles of a kind.
func (c *Case) troubles(kind forecast.TroubleKind) []forecast.Trouble {
	var list []forecast.Trouble
	for _, t := range c.Forecast.Trouble {
		if t.Kind == kind {
			list = append(list, t)
		}
	}
	return list
}
