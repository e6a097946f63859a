// Package finding holds what the tool has to say about a process: one sentence
// about certain words of a file, why it matters and what to do.
//
// Every stage from the lexer to the forecast rules makes findings of this one
// kind. They are put in order and rid of repeats in one place, Sort, and
// rendered elsewhere; a finding holds no escape codes and no line breaks.
package finding

import (
	"cmp"
	"slices"

	"maltwright/lang/sorted"
	"maltwright/lang/source"
)

// Severity says how bad it is.
type Severity int

// The severities, mildest first.
const (
	Note    Severity = iota // worth knowing
	Caution                 // likely to go wrong
	Fault                   // impossible, inconsistent, or the grain is lost
	Danger                  // people can be hurt
)

var severityWords = [...]string{"note", "caution", "fault", "danger"}

// String is the word shown for the severity.
func (s Severity) String() string {
	if s < Note || s > Danger {
		return "unknown"
	}
	return severityWords[s]
}

// ParseSeverity reads a severity word.
func ParseSeverity(word string) (Severity, bool) {
	i := slices.Index(severityWords[:], word)
	return Severity(i), i >= 0
}

// Finding is one thing found, about the words at Place.
type Finding struct {
	Place    source.Place
	Severity Severity
	Rule     string    // name of the rule, as in explain
	Message  string    // the sentence, with values and units; lower case, no full stop
	Why      string    // why it matters here, with the values that led to it; may be ""
	Hint     string    // what to do; may be ""
	Related  []Related // other places that had a part in it
	Fixes    []Edit    // a certain repair, as edits; may be empty
	Offers   []Offer   // what may have been meant, where only the writer knows; may be empty
}

// Related is another place that belongs to a finding.
type Related struct {
	Place   source.Place
	Message string
}

// Edit replaces the text at Place by New.
type Edit struct {
	Place source.Place
	New   string
}

// Worst gives the highest severity in the list, and whether there is any.
func Worst(list []Finding) (Severity, bool) {
	worst := Note
	for _, f := range list {
		worst = max(worst, f.Severity)
	}
	return worst, len(list) > 0
}

// Sort puts findings in the order in which they are shown - by file, then place,
// then the worst first - and drops those that say the same of the same words.
// Findings without a file come last.
func Sort(list []Finding) []Finding {
	sorted.Stable(list, compare)
	return slices.CompactFunc(list, func(a, b Finding) bool { return compare(a, b) == 0 })
}

func compare(a, b Finding) int {
	return cmp.Or(
		cmp.Compare(fileOrder(a), fileOrder(b)),
		cmp.Compare(fileName(a), fileName(b)),
		cmp.Compare(a.Place.Start, b.Place.Start),
		cmp.Compare(b.Severity, a.Severity),
		cmp.Compare(a.Place.End, b.Place.End),
		cmp.Compare(a.Rule, b.Rule),
		cmp.Compare(a.Message, b.Message),
	)
}

func fileOrder(f Finding) int {
	if f.Place.Known() {
		return 0
	}
	return 1
}

func fileName(f Finding) string {
	if !f.Place.Known() {
		return ""
	}
	return f.Place.File.Name()
}
