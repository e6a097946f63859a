package effect

import (
	"regexp"
	"slices"

	"maltwright/lang/finding"
)

// Findings tells which went, which say the same of other figures, and which came, by rule
// and words; where one stands in the file makes no difference.
func Findings(old, new []finding.Finding) []Finding {
	went, came := apartBy(old, new, saidOf)
	gone, up := apartBy(went, came, saidOfAny)
	var list []Finding
	for _, f := range gone {
		list = append(list, one(Went, f))
	}
	list = append(list, stay(without(went, gone), without(came, up))...)
	for _, f := range up {
		list = append(list, one(CameUp, f))
	}
	return list
}

func saidOf(f finding.Finding) string { return f.Severity.String() + f.Rule + " " + f.Message }

var number = regexp.MustCompile(`\d[\d.,]*`)

// saidOfAny is what is said, whatever its figures.
func saidOfAny(f finding.Finding) string { return number.ReplaceAllString(saidOf(f), "0") }

// apartBy gives those of each side that have no partner on the other, by a key: of several
// that say the same the last.
func apartBy(old, new []finding.Finding, key func(finding.Finding) string) (went, came []finding.Finding) {
	count := map[string]int{}
	for _, f := range old {
		count[key(f)]++
	}
	for _, f := range new {
		if count[key(f)]--; count[key(f)] < 0 {
			came = append(came, f)
		}
	}
	for _, f := range slices.Backward(old) {
		if count[key(f)] > 0 {
			count[key(f)]--
			went = append(went, f)
		}
	}
	slices.Reverse(went)
	return went, came
}

// without gives those of a list that are not in another, in which no two stand in one place.
func without(list, gone []finding.Finding) (left []finding.Finding) {
	for _, f := range list {
		if !slices.ContainsFunc(gone, func(g finding.Finding) bool { return g.Place == f.Place && saidOf(g) == saidOf(f) }) {
			left = append(left, f)
		}
	}
	return left
}

// stay joins what is said on both sides of other figures.
func stay(old, new []finding.Finding) (list []Finding) {
	before := map[string][]string{}
	for _, f := range old {
		before[saidOfAny(f)] = append(before[saidOfAny(f)], f.Message)
	}
	for _, f := range new {
		both := one(Stays, f)
		if was := before[saidOfAny(f)]; len(was) > 0 {
			both.Before, before[saidOfAny(f)] = was[0], was[1:]
		}
		list = append(list, both)
	}
	return list
}

func one(kind Came, f finding.Finding) Finding {
	return Finding{Kind: kind, Severity: f.Severity.String(), Rule: f.Rule, Message: f.Message, Place: placed(f.Place)}
}
