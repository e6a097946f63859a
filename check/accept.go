package check

import (
	"fmt"
	"slices"

	"maltwright/check/records"
	"maltwright/check/rules"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/nearest"
	"maltwright/lang/source"
)

var (
	acceptUnused = finding.Rule{Name: "accept-unused", Severity: finding.Caution,
		Title: "an acceptance that silences nothing",
		Why:   "it may be left over from a process that has changed since, and would hide the next trouble",
		Do:    "take it out"}
	acceptUnknown = finding.Rule{Name: "accept-unknown", Severity: finding.Fault,
		Title: "an acceptance of a rule that does not exist",
		Why:   "it silences nothing",
		Do:    "see the names with explain rules"}
	findingsLeftOut = finding.Rule{Name: "findings-left-out", Severity: finding.Fault,
		Title: "more than 200 findings in one file",
		Why:   "so many mostly come from a few slips near the top",
		Do:    "put the first ones right and check again"}
	noProcess = finding.Rule{Name: "no-process", Severity: finding.Fault,
		Title: "the file holds no process and defines nothing",
		Why:   "there is nothing to check",
		Do:    `write a process, beginning with process "its name" {`}
)

// empty tells whether a file, with those it uses, says nothing at all.
func empty(h *model.House) bool {
	facts := len(h.Grains) + len(h.Sites) + len(h.Vessels) + len(h.Floors) + len(h.Kilns) + len(h.Limits)
	return h.Learnt == nil && facts+len(h.Processes)+len(h.Batches)+len(h.Accepts) == 0
}

// nothing is the finding of a file that says nothing. It stands at the first line that holds something.
func nothing(f *source.File) finding.Finding {
	return noProcess.At(source.Place{File: f, Span: f.FirstLine()}, "this file holds no process, and nothing for one")
}

// accepted drops the findings that an acceptance silences, and reports the
// acceptances that silence none, unless their rule was not asked. A danger to people is never silenced.
func accepted(h *model.House, found []finding.Finding, idle map[string]bool) []finding.Finding {
	used := make([]bool, len(h.Accepts))
	kept := found[:0]
	for _, f := range found {
		if i := silencer(h, f); i >= 0 {
			used[i] = true
			continue
		}
		kept = append(kept, f)
	}
	for i, a := range h.Accepts {
		if !used[i] && !idle[a.Rule.Text] && !forOthers(h, a) {
			kept = append(kept, unusedAccept(a, found))
		}
	}
	return kept
}

// idle are the rules that were not asked everywhere: what they would have found is not
// known, and neither is whether an acceptance of them silences something.
func idle(h *model.House, unjudged []finding.NotJudged, o Options) map[string]bool {
	names := map[string]bool{}
	for _, u := range unjudged {
		names[u.Rule] = true
	}
	if names["record"] || o.NoForecast {
		for _, r := range records.Rules() {
			names[r.Name] = true
		}
	}
	broken := slices.ContainsFunc(h.Processes, func(p *model.Process) bool { return p.Broken })
	for _, r := range rules.All() {
		names[r.Name] = names[r.Name] || broken || r.Forecast && names["forecast"]
	}
	return names
}

// Silenced tells whether an acceptance of a house silences a finding.
func Silenced(h *model.House, f finding.Finding) bool { return silencer(h, f) >= 0 }

func silencer(h *model.House, f finding.Finding) int {
	return slices.IndexFunc(h.Accepts, func(a model.Accept) bool {
		return f.Severity < finding.Danger && a.Rule.Text == f.Rule && concerns(h, a, f)
	})
}

func unusedAccept(a model.Accept, _ []finding.Finding) finding.Finding {
	var names []string
	for _, r := range Rules() {
		if r.Name == a.Rule.Text {
			return acceptUnused.At(a.Place, fmt.Sprintf("%s finds nothing here that could be accepted", a.Rule.Text))
		}
		names = append(names, r.Name)
	}
	f := acceptUnknown.At(a.Rule.Place, fmt.Sprintf("no rule is called %q", a.Rule.Text))
	if meant, ok := nearest.Word(a.Rule.Text, names); ok {
		_, only := nearest.Only(a.Rule.Text, names)
		f.AskOnly(a.Rule.Place, meant, only)
	}
	return f
}
