package margin

import (
	"regexp"

	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// gateless are the rules that say a gate is missing, and whether it goes behind the step that they speak of.
var gateless = map[string]bool{"cure-without-gate": false, "hot-while-wet": false, "roast-wet": false, "end-moisture-high": true}

// asksFor is a gate in what a rule says to do.
var asksFor = regexp.MustCompile(`gate moisture at most [0-9.]+ %`)

// usualGate is the gate before a cure where a rule names none.
const usualGate = "gate moisture at most 10 %"

// waits is how long a gate waits of which nothing is said, so that who reads it sees that it may wait.
const waits = " allow 0 to 12 h"

// gate puts in a gate that a finding says is missing, where the finding is gone with it and nothing else comes.
func (a *actor) gate(f *finding.Finding) []Action {
	behind, ok := gateless[f.Rule]
	if !ok || len(f.Fixes) > 0 {
		return nil
	}
	s := stepAt(a.tree, f.Place.Span)
	if s == nil {
		return nil
	}
	gate := asksFor.FindString(f.Hint)
	if gate == "" {
		gate = usualGate
	}
	x := Action{Deed: Gate, Title: "insert " + gate + waits, Edits: []finding.Edit{a.put(s, gate+waits)}, Of: f}
	if behind {
		x.Edits = []finding.Edit{a.behind(s, gate+waits)}
	}
	if !a.silences(x, *f) {
		return nil
	}
	return []Action{x}
}

// stepAt is the step of a kiln that a stretch is in, nil where it is in none.
func stepAt(tree *syntax.Tree, at source.Span) (found *syntax.Statement) {
	tree.Top.Walk(func(s *syntax.Statement) {
		if row, ok := vocabulary.Lookup(vocabulary.Kiln, s.Verb.Text); ok && row.Ordered && s.Body == nil && s.Start <= at.Start && at.End <= s.End {
			found = s
		}
	})
	return found
}
