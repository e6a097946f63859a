package check

const (
	tooWet    = " soak-too-long oxygen-gone target-overshot first-soak-long-for-water-sensitive-lot"
	tooDry    = " target-not-reached"
	steepAims = " cast-moisture-outside target-overshot target-not-reached"
)

// steepKinds are slips in the steep.
var steepKinds = []kind{
	{"the soak's °C taken for °F", inProcess(`(soak .* )°C`, "${1}°F"), "freezing-water out-of-range", caution, "soak"},
	{"steep water 40 °C warmer", shifted(`soak .* at (\d+) °C`, 40), "steep-water-warm", fault, "soak"},
	{"the first soak doubled", scaled(`soak (\d+) h`, 2), tooWet, caution, "soak steep"},
	{"the first soak trebled", scaled(`soak (\d+) h`, 3), tooWet, caution, "soak steep"},
	{"every soak trebled", everyScaled(`soak (\d+) h`, 3), tooWet, caution, "soak steep"},
	{"no rests", without(`rest `), "no-air-rest water-never-changed" + tooWet, caution, "soak steep repeat"},
	{"the steep's target on the dry basis, said as wet", inProcess(`to moisture \d+ to \d+ %`, "to moisture 75 to 82 %"), "moisture-over-60", fault, "steep"},
	{"the first rest of 99 h", inProcess(`rest \d+ h`, "rest 99 h"), oddTime, caution, "rest"},
	{"the first rest in minutes", inProcess(`(rest \d+) h`, "$1 min"), "no-air-rest" + oddTime + tooWet, caution, "rest soak steep"},
	{"the first rest in days", inProcess(`(rest \d+) h`, "$1 days"), oddTime, caution, "rest"},
	{"the first soak in minutes", inProcess(`(soak \d+) h`, "$1 min"), oddTime + tooDry, caution, "soak steep repeat"},
	{"every soak in minutes", everywhere(`(soak \d+) h`, "$1 min"), oddTime + tooDry, caution, "soak steep repeat"},
	{"the first soak in days", inProcess(`(soak \d+) h`, "$1 days"), tooWet + oddTime, fault, "soak steep"},
	{"the first soak with its point lost", inProcess(`(soak \d+) h`, "${1}0 h"), tooWet + oddTime, fault, "soak steep"},
	{"every soak with a point too many", everywhere(`soak (\d+) h`, "soak 0.$1 h"), oddTime + tooDry, caution, "soak steep repeat"},
	{"the last soak of 30 h", lastOf(`soak \d+ h`, "soak 30 h"), tooWet + oddTime, caution, "soak steep"},
	{"the soak at a tenth of its warmth", scaled(`soak .* at (\d+) °C`, 0.1), "freezing-water", caution, "soak"},
	{"the soak's digits changed round", inProcess(`(soak .* at )1(\d) °C`, "${1}${2}1 °C"), "steep-water-warm", caution, "soak"},
	{"every soak lukewarm", everywhere(`(soak .* at )1\d °C`, "${1}24 °C"), "steep-water-warm", caution, "soak steep"},
	{"the rest's digits changed round", inProcess(`(rest .* at )1(\d) °C`, "${1}${2}1 °C"), "rest-too-cold-or-warm", caution, "rest"},
	{"the rest in frost", inProcess(`(rest .* at )1\d °C`, "${1}1 °C"), "rest-too-cold-or-warm", caution, "rest"},
	{"the rest's °C taken for °F", inProcess(`(rest .* )°C`, "${1}°F"), "rest-too-cold-or-warm out-of-range", caution, "rest"},
	{"the last soak forgotten", lastOf(`\n *soak [^\n]*`, ""), tooDry, caution, "steep soak rest"},
	{"all but the first soak forgotten", each(lastOf(`\n *soak [^\n]*`, ""), lastOf(`\n *soak [^\n]*`, ""), lastOf(`\n *soak [^\n]*`, "")), tooDry + " water-never-changed", caution, "steep soak rest"},
	{"the repeat waits for swapped digits", inProcess(`(repeat .* moisture at least )43 %`, "${1}34 %"), tooDry + heldAlready, caution, "repeat steep"},
	{"the repeat with its bound turned", inProcess(`(repeat .* moisture at) least`, "$1 most"), tooDry + heldAlready + backwards, caution, "repeat steep"},
	{"the repeat but once", inProcess(`at most 3 times`, "at most 1 times"), tooDry, caution, "repeat steep soak"},
	{"the steep aims too dry", inProcess(`(steep .*moisture )\d+ to \d+ %`, "${1}30 to 33 %"), steepAims, caution, "steep soak"},
	{"the steep aims a ten too high", inProcess(`(steep .*moisture )4(\d) to 4(\d) %`, "${1}5$2 to 5$3 %"), steepAims, caution, "steep"},
	{"the steep aims below the raw grain", inProcess(`(steep .*moisture )\d+ to \d+ %`, "${1}10 to 12 %"), steepAims + heldAlready, caution, "steep"},
	{"the steep's target with a point too many", inProcess(`(steep .*moisture )4(\d) to 4(\d) %`, "${1}4.$2 to 4.$3 %"), steepAims + heldAlready, caution, "steep"},
	{"the steep's target marked dry basis", inProcess(`(steep .*moisture \d+ to \d+ %)`, "$1 dry basis"), steepAims + " bases-mixed", caution, "steep"},
	{"the steep's target the wrong way round", inProcess(`(steep .*moisture )(\d+) to (\d+)`, "$1$3 to $2"), backwards, fault, "steep"},
	{"the first rest before the first soak", moved(`rest `, true, `soak `), "no-air-rest rest-before-soak" + oddTime + tooWet, caution, "rest soak steep"},
	{"the first soak of 60 h", inProcess(`soak \d+ h`, "soak 60 h"), tooWet + oddTime, fault, "soak steep"},
	{"steeped in one rest", inProcess(`(?m)^ *soak .*\n`, ""), tooDry + " rest-before-soak no-air-rest", caution, "steep soak rest"},
	{"repeated two and a half times", inProcess(`repeat at most 3 times`, "repeat at most 2.5 times"), "out-of-range bad-number", fault, "repeat"},
	{"lime in the first soak", inProcess(`(soak .*°C)(?: with air)?`, "$1 with lime"), "caustic-steep", caution, "soak"},
	{"the steep of a tonne in the tub", where(`steep in "(steel|cattle)`, used("vessel", "blue tub")), "vessel-too-small" + oddFact, fault, "steep vessel from"},
	{"a soak that waits to be dry", inProcess(`soak \d+ h (.*)`, "soak $1 until moisture at most 43 % allow 1 to 12 h"), heldAlready + backwards + tooDry, caution, "soak steep"},
	{"the two times of air in each other's place", behind(`steep `, "aerate every 5 min for 30 min"), "air-never-stops", fault, "aerate"},
	{"air every 30 h", behind(`steep `, "aerate every 30 h for 5 min"), "air-does-nothing" + oddTime, caution, "aerate"},
	{"air every 30 s", behind(`steep `, "aerate every 30 s for 5 s"), oddTime, fault, "aerate"},
	{"air for 5 s each half hour", behind(`steep `, "aerate every 30 min for 5 s"), oddTime, caution, "aerate"},
	{"the first soak in a cup of water", inProcess(`soak (\d+ h) in water`, "soak $1 in 0.2 l water"), "grain-not-covered forecast-unable", fault, "soak"},
	{"an overflow without how much", inProcess(`(soak .* \d+ °C)`, "$1 with overflow"), "value-needed", fault, "soak"},
	{"the first rest with hardly any air", inProcess(`(rest .* \d+ °C)`, "$1 with airflow 0.1 l/h"), "steep-air-little", caution, "rest"},
	{"a steep by weight below the charge", unless(`repeat`, behind(`soak `, "gate weight at least # kg", 0.8)), heldAlready, caution, "gate"},
}
