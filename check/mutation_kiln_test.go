package check

const (
	tooHot   = " hot-while-wet equipment-cannot cure-too-hot-for-claim ramp-too-steep"
	notDried = " gate-not-reached guard-came-first equipment-cannot end-moisture-high"
	curing   = " cure-without-gate hot-while-wet gate-not-reached"
	gates    = " gate-order gate-not-reached end-moisture-high end-moisture-very-low"
)

// kilnKinds are slips in what the kiln is to do, and after it.
var kilnKinds = []kind{
	{"the first drying step's °C taken for °F", inProcess(`(dry .*?\d )°C`, "${1}°F"), kilnAsked + notDried, fault, "dry"},
	{"the cure's °C taken for °F", inProcess(`(cure .* )°C`, "${1}°F"), kilnAsked + notAsMade, caution, "cure"},
	{"the first drying step 40 °C hotter", shifted(`dry +at [a-z-]+ (\d+) °C`, 40), tooHot + notAsMade, caution, "dry"},
	{"the cure 40 °C hotter", shifted(`cure at [a-z-]+ (\d+) °C`, 40), tooHot, caution, "cure"},
	{"the gate before the cure left out", inProcess(`\n *gate moisture [^\n]*(\n *(?:dry from [^\n]*\n *)?cure)`, "$1"), curing, caution, "cure dry kiln"},
	{"the first drying step without its guard", inProcess(`(dry .*?) allow .*`, "$1"), "missing-guard", fault, "dry"},
	{"a heater of a tenth", timesOfHouse("kiln", `heater +([\d.]+)`, 0.1), kilnAsked + notDried + oddFact, caution, "dry cure kiln heater gate stew"},
	{"a kiln with a tenth of its air", timesOfHouse("kiln", `airflow +([\d.]+)`, 0.1), kilnAsked + notDried + oddFact, caution, "dry kiln airflow gate"},
	{"the cure before the drying", moved(`cure `, true, `dry `), curing + tooHot + notAsMade, caution, "cure"},
	{"the first drying step in a tenth of its time", inProcess(`(dry .* allow )\d+ to \d+ h`, "${1}0.5 to 1 h"), notDried, caution, "dry gate"},
	{"the cure 25 °C cooler", shifted(`cure at [a-z-]+ (\d+) °C`, -25), notAsMade, caution, "cure make"},
	{"the gates' moistures changed round", gatesTurned, gates, caution, "gate"},
	{"the malt not cooled", without(`cool `), "no-cooling", caution, "kiln cure gate"},
	{"the deculming left out", without(`deculm `), "deculm-missing", caution, "kiln store process"},

	{"the first drying's bound turned", inProcess(`(dry .*moisture) at most`, "$1 at least"), heldAlready + backwards + " hot-while-wet", caution, "dry"},
	{"the first drying done before it begins", inProcess(`(dry .*moisture at most )\d+`, "${1}55"), heldAlready + " gate-order hot-while-wet", caution, "dry"},
	{"the first drying ends by the figure on the dry basis", inProcess(`(dry .*moisture at most )\d+ %`, "${1}120 % dry basis"), heldAlready + " bases-mixed gate-order hot-while-wet", caution, "dry"},
	{"the first drying ends at a tenth", inProcess(`(dry .*moisture at most )(\d)(\d) %`, "$1$2.$3 %"), notDried + heldAlready + " gate-order", caution, "dry gate"},
	{"the first gate of the kiln turned", inProcess(`gate moisture at most`, "gate moisture at least"), heldAlready + backwards + curing, caution, "gate cure"},
	{"the gate before the cure a tenth", inProcess(`gate moisture at most 10 %`, "gate moisture at most 1 %"), gates, caution, "gate"},
	{"the gate before the cure above 60 %", inProcess(`gate moisture at most 10 %`, "gate moisture at most 65 %"), "moisture-over-60" + heldAlready, caution, "gate"},
	{"the gate before the cure wet enough for anything", inProcess(`gate moisture at most 10 %`, "gate moisture at most 40 %"), heldAlready + curing, caution, "gate cure"},
	{"a gate of 10 % behind the cure", lastOf(`gate moisture at most [\d.]+ %`, "gate moisture at most 10 %"), heldAlready + gates, caution, "gate cool"},
	{"the last gate without its point", inProcess(`gate moisture at most (\d)(?:\.(\d))? %`, "gate moisture at most ${1}5 %"), heldAlready + gates + " moisture-over-60", caution, "gate"},
	{"the last gate a tenth", inProcess(`gate moisture at most (\d)(?:\.(\d))? %`, "gate moisture at most 0.$1 %"), gates, caution, "gate cool"},
	{"a weight gate above the charge", ahead(`cool `, "gate weight at most # kg", 1.3), heldAlready, caution, "gate"},
	{"a weight gate of what the raw grain weighed", ahead(`cool `, "gate weight at most # kg", 1), heldAlready + " original-weight-stop weight-gate-ignores-loss", caution, "gate"},
	{"a weight gate below the dry matter", ahead(`cool `, "gate weight at most # kg", 0.5), neverReached + " weight-gate-ignores-loss", caution, "gate"},
	{"the drying's guard in minutes", inProcess(`(dry .* allow .*) h`, "$1 min"), notDried + oddTime, caution, "dry gate"},
	{"the drying's guard in days", inProcess(`(dry .* allow .*) h`, "$1 days"), heldAlready + oddTime, caution, "dry"},
	{"the drying's earliest time far past its test", inProcess(`(dry .* allow )[\d.]+ to \d+ h`, "${1}60 to 90 h"), heldAlready + oddTime, caution, "dry"},
	{"the drying's guard the wrong way round", inProcess(`(dry .* allow )([\d.]+) to (\d+) h`, "$1$3 to $2 h"), "guard-upside-down" + backwards, fault, "dry"},
	{"the drying at a tenth of its heat", scaled(`dry +at [a-z-]+ (\d+) °C`, 0.1), kilnAsked, fault, "dry"},
	{"the drying at ten times its heat", scaled(`dry +at [a-z-]+ (\d+) °C`, 10), tooHot + " out-of-range", fault, "dry"},
	{"the first drying as hot as a cure", inProcess(`(dry +at [a-z-]+ )\d+ °C`, "${1}82 °C"), tooHot + curing, caution, "dry"},
	{"the drying for 200 h", inProcess(`(dry +at [a-z-]+ \d+ °C) until .*`, "$1 for 200 h"), oddTime, caution, "dry"},
	{"the second drying forgotten", lastOf(`\n *dry [^\n]*`, ""), notDried + curing + " gate-waits-long", caution, "dry gate cure"},
	{"the place of the drying's heat left out", inProcess(`(dry +at )[a-z-]+ `, "$1"), "place-of-temperature-missing", fault, "dry"},

	{"the rise falls", inProcess(`(from air-on )(\d+) to (\d+)`, "$1$3 to $2"), backwards, caution, "dry"},
	{"the rise in minutes", inProcess(`(from air-on .* over \d+) h`, "$1 min"), "ramp-too-steep" + notDried + oddTime, caution, "dry gate"},
	{"the rise in days", inProcess(`(from air-on .* over \d+) h`, "$1 days"), oddTime, caution, "dry"},
	{"the rise begins at a tenth", inProcess(`from air-on (\d)(\d) to`, "from air-on $1.$2 to"), kilnAsked, fault, "dry"},
	{"the rise ends above the kiln's reach", inProcess(`(from air-on \d+ to )\d+`, "${1}150"), kilnAsked, fault, "dry"},
	{"the cure a little above the kiln's reach", beyondReach("cure", "", 3), kilnAsked, fault, "cure"},
	{"the cure's malt a little above the kiln's reach", beyondReach("cure", "malt", 3), kilnAsked, fault, "cure"},
	{"the cure's air-off a little above the kiln's reach", unless(`wall oven`, beyondReach("cure", "air-off", 3)), kilnAsked, fault, "cure"},
	{"the first drying a little below the kiln's reach", beyondReach("dry", "", -3), kilnAsked, fault, "dry"},
	{"the first drying's malt a little below the kiln's reach", beyondReach("dry", "malt", -3), kilnAsked, note, "dry"}, // wet malt is cooler than its air, and can be held so
	{"the stew a little below the kiln's reach", beyondReach("stew", "", -3), kilnAsked, fault, "stew"},
	{"ten times the kiln's air in a step", unless(`wall oven`, tenTimesTheAir), kilnAsked, caution, "dry"},
	{"a step's air in cubic metres a second", unless(`wall oven`, inProcess(`(dry +at [a-z-]+ \d+ °C)`, "$1 with airflow 60 m3/s")), kilnAsked + oddFact, caution, "dry"},
	{"air through a still oven", where(`wall oven`, inProcess(`(dry +at [a-z-]+ \d+ °C)`, "$1 with airflow 120 m3/h")), kilnAsked, caution, "dry"},
	{"air-on in a still oven", where(`wall oven`, everywhere(`at oven `, "at air-on ")), kilnAsked + otherKiln, caution, "dry cure"},
	{"an oven's heat in a kiln with a fan", unless(`wall oven|barn`, inProcess(`(dry +at )air-on`, "${1}oven")), kilnAsked + otherKiln, caution, "dry"},

	{"the cure of 10 min", inProcess(`(cure .* for )\d+ h`, "${1}10 min"), oddTime + notAsMade, caution, "cure make"},
	{"the cure of 60 h", inProcess(`(cure .* for )\d+ h`, "${1}60 h"), oddTime + notAsMade + " end-moisture-very-low", caution, "cure"},
	{"the cure in days", inProcess(`(cure .* for \d+) h`, "$1 days"), oddTime + notAsMade + " end-moisture-very-low", caution, "cure"},
	{"the cure's digits changed round", inProcess(`(cure at [a-z-]+ )8(\d) °C`, "$1${2}8 °C"), kilnAsked + notAsMade, caution, "cure make"},
	{"cured at 55 °C", inProcess(`(cure at [a-z-]+ )\d+ °C`, "${1}55 °C"), notAsMade, caution, "cure make"},
	{"the cure forgotten", without(`cure `), notAsMade, caution, "make kiln"},
	{"cooled to 80 °C", inProcess(`cool to malt \d+`, "cool to malt 80"), "no-cooling", caution, "cool"},
	{"cooled to a tenth", inProcess(`cool to malt (\d)(\d)`, "cool to malt $1.$2"), kilnAsked + neverReached, caution, "cool"},

	{"the stew of 2 min", inProcess(`(stew .* for )\d+ h`, "${1}2 min"), oddTime + notAsMade, caution, "stew make"},
	{"the stew of two days", inProcess(`(stew .* for )\d+ h`, "${1}48 h"), oddTime, caution, "stew"},
	{"the stew behind the drying", moved(`stew `, false, `dry `), notAsMade, caution, "stew dry make"},
	{"the stew at 95 °C", inProcess(`(stew at [a-z-]+ )\d+`, "${1}95"), tooHot + notAsMade, caution, "stew make"},
	{"the stew at a tenth of its heat", scaled(`stew at [a-z-]+ (\d+)`, 0.1), kilnAsked, fault, "stew"},
	{"a crystal's stew in a pale malt", where(`make pale`, ahead(`dry `, "stew at malt 65 °C for 2 h")), tooHot + notAsMade, caution, "stew make"},
	{"stirred every half minute", inProcess(`stir every \d+ \w+`, "stir every 0.5 min"), oddTime, caution, "stir"},
	{"stirred every so many days", inProcess(`stir every (\d+) \w+`, "stir every $1 days"), oddTime + " never-stirred", caution, "stir cure dry"},
	{"the roast never stirred", where(`120 °C`, without(`stir `)), "never-stirred", caution, "kiln cure"},

	{"deculmed within days", inProcess(`deculm within 12 h`, "deculm within 12 days"), "deculm-late", caution, "deculm"},
	{"deculmed before the kiln", moved(`deculm `, true, `kiln in`), "stage-order", fault, "deculm kiln"},
	{"stored for minutes", inProcess(`for at least (\d+) weeks`, "for at least $1 min"), "rest-short" + oddTime, note, "store"},
	{"stored for days", inProcess(`for at least (\d+) weeks`, "for at least $1 days"), "rest-short" + oddTime, note, "store"},
	{"stored in the open", inProcess(`(store +in )"[^"]*"`, `$1"open trough"`), "store-open", caution, "store"},
	{"stored before the kiln", moved(`store `, true, `kiln in`), "stage-order", fault, "store kiln"},
}

// claimKinds are malts that are claimed and not made.
var claimKinds = []kind{
	{"crystal claimed, never stewed", unless(`stew|make distilling`, inProcess(`make \w+ malt`, "make crystal malt")), notAsMade, caution, "make kiln cure dry"},
	{"crystal's stew forgotten", where(`make crystal`, without(`stew `)), notAsMade + " hot-while-wet", caution, "make kiln dry cure"},
	{"munich claimed, cured pale", where(`make pale`, inProcess(`make \w+ malt`, "make munich malt")), notAsMade, caution, "make kiln cure steep"},
	{"munich cured as pale", where(`make munich`, inProcess(`cure at air-on 85 °C for 5 h`, "cure at air-on 72 °C for 2 h")), notAsMade, caution, "make kiln cure"},
	{"brown claimed, cured pale", unless(`make crystal`, inProcess(`make \w+ malt`, "make brown malt")), notAsMade, caution, "make kiln cure"},
	{"amber claimed, cured pale", unless(`make crystal`, inProcess(`make \w+ malt`, "make amber malt")), notAsMade, caution, "make kiln cure"},
	{"pale claimed for another process", where(`make (munich|crystal)`, inProcess(`make \w+ malt`, "make pale malt")), notAsMade + " hot-while-wet cast-moisture-outside", caution, "make kiln cure stew steep"},
	{"distilling claimed, cured pale", unless(`make (distilling)`, inProcess(`make \w+ malt`, "make distilling malt")), notAsMade, caution, "make kiln cure"},
	{"chit claimed, grown out", inProcess(`make \w+ malt`, "make chit malt"), notAsMade + " too-long-to-modify acrospire-goal-odd cast-moisture-outside", caution, "make germinate until steep allow"},
	{"pilsner claimed for a roast", where(`make crystal`, inProcess(`make \w+ malt`, "make pilsner malt")), notAsMade + " hot-while-wet", caution, "make kiln cure stew dry"},
	{"pale claimed, dried only", where(`make distilling`, inProcess(`make \w+ malt`, "make pale malt")), notAsMade, caution, "make kiln"},
	{"munich with its enzymes gone", where(`make munich`, inProcess(`stew at air-on 40 °C`, "stew at air-on 75 °C")), notAsMade + " hot-while-wet", caution, "make stew kiln"},
}
