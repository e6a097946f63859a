package words

import (
	"slices"
	"strings"

	"maltwright/check/tell"
	"maltwright/cmd/answer/outlook"
	"maltwright/sim/forecast"
)

// Hazards names in one line what can hurt somebody in a process, whose word comes before it, and
// which flag tells more.
func Hazards(list []outlook.Caution) string { return HazardNames(list) + " (--cautions)" }

// HazardNames names in one line what can hurt somebody in a process, and whose word comes before it.
func HazardNames(list []outlook.Caution) string {
	var names []string
	last := ""
	for _, c := range list {
		if name := tell.Hazard(forecast.Caution(c)); forecast.Caution(c) == forecast.LocalCodes {
			last = "; " + name
		} else if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return strings.Join(names, ", ") + last
}
