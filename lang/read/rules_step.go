package read

import (
	"strings"

	"maltwright/lang/finding"
)

// stepRules are of what one step or one stage says of its end and its warmth.
func stepRules() []finding.Rule {
	return []finding.Rule{guardOfNothing, overWithoutRise, twoTemperatures, riseFalls, lastHoldEnd, boundWrongWay, basesMixed}
}

var (
	guardOfNothing = rule("guard-of-nothing", caution, "allow on a step that waits for no condition",
		"an earliest time and a latest time guard a condition; without a condition the step takes its time or its latest time, and allow does nothing (common practice)",
		"write the condition behind until, or only the time behind for",
		`dry at air-on 50 °C for 12 h allow 10 to 14 h`, `dry at air-on 50 °C until moisture at most 10 % allow 10 to 30 h`)
	overWithoutRise = rule("over-without-rise", caution, "a time for a rise where nothing rises",
		"over is the time from one temperature to another; at one temperature it is only how long the step takes",
		"write for with the time, or the rise as from … to … over …",
		`dry at air-on 50 °C over 12 h`, `dry at air-on 50 °C for 12 h`)
	twoTemperatures = rule("two-temperatures", fault, "a step that gives one temperature and a rise as well",
		"it cannot be kept at the one and follow the other", "take one of them out, or make two steps of it",
		`dry at air-on 50 °C from air-on 52 to 62 °C over 4 h`, `dry from air-on 52 to 62 °C over 4 h`)
	riseFalls = rule("rise-falls", caution, "a rise whose second temperature is below its first",
		"malt gets more heat as it dries; cooler air, as moist as before, carries less water away, and the drying slows down (common practice)",
		"swap the two values, or write cool",
		`dry from air-on 65 to 55 °C over 4 h`, `dry from air-on 55 to 65 °C over 4 h`)
	lastHoldEnd = rule("last-hold-end", caution, "an end of the last hold, which lasts to the end of its stage",
		"the last of the holds goes on until the stage ends, so what it says of its own end is not done",
		"say it of the stage: put for, until or allow on a line of its own",
		strings.Replace(shortest, "17 °C;", "17 °C for 3 days;", 1)+shortKiln+"}", shortest+shortKiln+"}")
	boundWrongWay = rule("bound-wrong-way", fault, "a bound on the side from which the grain comes", // a caution of a gate, a rest in store and a repeat
		"steeping grain takes up water and chits, the acrospire grows longer, drying malt loses water and weight, and time only goes on: the other way round, the condition is met from the start, or never. "+
			"Malt rests for at least some weeks, and steps are repeated at most so often",
		"change at least for at most, or the other way round",
		`dry at air-on 50 °C until moisture at least 10 % allow 10 to 30 h`, `dry at air-on 50 °C until moisture at most 10 % allow 10 to 30 h`)
	basesMixed = rule("bases-mixed", caution, "moistures on the dry basis beside moistures of the whole weight",
		"10 % dry basis is 9.1 % of the whole weight, and 45 % of the whole weight is 82 % dry basis: side by side they cannot be compared by eye, and one is easily a slip",
		"write all of them on one basis; % alone is of the whole weight",
		"dry at air-on 50 °C until moisture at most 10 % allow 10 to 30 h\n  gate moisture at most 10 % dry basis", "dry at air-on 50 °C until moisture at most 10 % allow 10 to 30 h\n  gate moisture at most 10 %")
)
