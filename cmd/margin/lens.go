package margin

import (
	"cmp"
	"fmt"
	"path"
	"path/filepath"

	"maltwright/check"
	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
)

// say writes what a lens says: the findings in front, since a narrow screen cuts off the end. Whole tells that all
// was looked at; else nobody knows that there is nothing to find.
func (x *Lens) say(found []finding.Finding, whole bool, says string) {
	x.says = says
	counts := ""
	if whole || len(found) > 0 {
		counts = words.BySeverity(found)
	}
	x.Text = words.Joined("; ", counts, says)
}

// bearing are the findings that bear on a process or a batch: those of all files that are checked with it, but what
// lies in another process or batch.
func bearing(h *model.House, list []finding.Finding, p *model.Process, b *model.Batch) (on []finding.Finding) {
	var others []source.Place
	for _, x := range h.Processes {
		if x != p {
			others = append(others, x.Scope)
		}
	}
	for _, x := range h.Batches {
		if x != b {
			others = append(others, x.Scope)
		}
	}
	for _, f := range list {
		if !inOne(f.Place, others) {
			on = append(on, f)
		}
	}
	return on
}

func inOne(p source.Place, scopes []source.Place) bool {
	for _, s := range scopes {
		if p.Known() && p.Within(s) {
			return true
		}
	}
	return false
}

// unforecast says why a process is not forecast, and of faults where the first of them is; "" where that is not said.
func (w *writer) unforecast(r check.Report, p *model.Process) string {
	for _, n := range r.NotJudged {
		if n.Process != p.Name || n.Rule != "forecast" {
			continue
		}
		if n.Reason == check.FaultsFirst {
			return "not forecast: " + cmp.Or(w.firstFault(bearing(r.House, r.Findings, p, nil)), w.firstFault(r.Findings), n.Reason)
		}
		return "not forecast: " + n.Reason
	}
	return ""
}

// firstFault says where the first fault of a list is; "" where it has no place.
func (w *writer) firstFault(list []finding.Finding) string {
	for _, f := range list {
		if f.Severity != finding.Fault || !f.Place.Known() {
			continue
		}
		at := fmt.Sprintf("line %d", f.Place.File.Position(f.Place.Start, source.Characters).Line)
		if name := f.Place.File.Name(); name != w.m.File.Name() {
			at = words.Safe(path.Base(filepath.ToSlash(name))) + ", " + at + ","
		}
		return "put " + at + " right first"
	}
	return ""
}

// mostly is how often a gate must hold that nothing is said of it above the process.
const mostly = 0.9

// unsure says which gate of a process holds least often, where that is in fewer than nine of ten likely batches.
func unsure(f *forecast.Forecast, told outlook.Result, likely *Likely) string {
	var least *answer.Share
	said := ""
	for i, g := range told.Gates[:min(len(told.Gates), len(f.Gates))] {
		odds := likely.gate(f, i)
		if odds == nil || g.Unjudged || float64(*odds) >= mostly || least != nil && *odds >= *least {
			continue
		}
		least, said = odds, words.MarginUnsure(g, *odds)
	}
	return said
}
