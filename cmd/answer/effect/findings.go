package effect

import (
	"slices"

	"maltwright/lang/finding"
)

// findings tells which went and which came, by rule and words; where one stands in the
// file makes no difference.
func findings(old, new []finding.Finding) []Finding {
	key := func(f finding.Finding) string { return f.Severity.String() + f.Rule + " " + f.Message }
	count := map[string]int{}
	for _, f := range old {
		count[key(f)]++
	}
	var came, went []Finding
	for _, f := range new {
		if count[key(f)]--; count[key(f)] < 0 {
			came = append(came, one(CameUp, f))
		}
	}
	for _, f := range slices.Backward(old) { // of several that say the same the last have gone
		if count[key(f)] > 0 {
			count[key(f)]--
			went = append(went, one(Went, f))
		}
	}
	slices.Reverse(went)
	return append(went, came...)
}

func one(kind Came, f finding.Finding) Finding {
	return Finding{kind, f.Severity.String(), f.Rule, f.Message, placed(f.Place)}
}
