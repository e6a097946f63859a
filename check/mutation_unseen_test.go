package check

// The slips below were written down before any of them was run, by somebody who had
// read how a process is written and the titles of the rules, and no rule: they measure
// what tuning by the others cannot. As they were written 67.6 % of the cases of processes
// and 80.0 % of those of records were caught. What fits six of the kinds was made wider
// after that, where what was said was right: those name it in a comment behind. Once a
// rule has been changed for one of them they are unseen no more.

// unseenKinds are slips in a process or its house.
var unseenKinds = []kind{
	{"the vessel's gallons written as litres", where(`from (?:6|5|4|150) kg|from 1.25 t`, timesOfHouse("vessel", `holds +([\d.]+)`, 0.264)), "vessel-too-small" + oddFact, fault, "steep vessel from"},
	{"twice the grain", where(`from (?:6|5|4|150) kg|from 1.25 t`, scaled(`from ([\d.]+)`, 2)), "vessel-too-small withering-slow" + tooDeep + tooLongIn + notDried, caution, "steep vessel germinate floor turn kiln area dry gate"},
	{"the rests of a warm kitchen", everywhere(`(rest .* at )1\d °C`, "${1}27 °C"), "rest-too-cold-or-warm", caution, "rest steep"},
	{"the first rest left out", unless(`repeat`, where(`(?s)rest .*rest `, inProcess(`\n *rest [^\n]*`, ""))), "no-air-rest" + tooWet + tooDry, caution, "soak steep"}, // wider by target-not-reached
	{"a gate of chit before the first soak", unless(`repeat`, ahead(`soak `, "gate chit at least 80 % allow 0 to 6 h")), "rest-before-soak stage-order" + neverReached, caution, "gate steep soak"},
	{"the steep aims a few points too high", where(`make (?:pale|distilling)`, inProcess(`(steep .*moisture )\d+ to \d+ %`, "${1}48 to 50 %")), steepAims, caution, "steep soak"},
	{"rests of an hour", everywhere(`rest \d+ h`, "rest 1 h"), "no-air-rest guard-came-first" + oddTime + tooWet + tooDry, caution, "rest soak steep"}, // wider by target-not-reached, guard-came-first
	{"the bed of a warm kitchen", inProcess(`(hold +bed at )\d+ to \d+`, "${1}23 to 26"), "bed-too-warm room-too-cold-for-bed piece-overheats", caution, "hold turn"},
	{"the room heated over the piece", inProcess(`hold +bed at \d+ to \d+`, "hold  room at 28 to 31"), "bed-too-warm room-too-cold-for-bed piece-overheats", caution, "hold turn germinate"},
	{"sprinkled every half hour", unless(`Mill pale`, behind(`turn `, "sprinkle # l every 30 min", 0.05)), tooMuchWater + oddTime, caution, "sprinkle germinate"},
	{"the acrospire's per cent without its sign", inProcess(`acrospire at least \d/\d`, "acrospire at least 75"), "acrospire-goal-odd missing-unit out-of-range" + neverReached + tooLong, caution, "until germinate"},
	{"the rub in a word of the bakery", inProcess(`rub is chalky`, "rub is mealy"), "unknown-word value-needed wrong-dimension words-too-many", fault, "until"},
	{"the dry air of a heated winter room", ofHouse("site", `humidity .*`, "humidity 18 to 26 %"), "bed-dries-out" + oddFact, caution, "site humidity germinate hold"},
	{"withered for nine days", inStage("wither", each(without(`allow `), inProcess(`until [^\n]*`, "for 9 days"))), "withering-slow" + oddTime + tooLong, caution, "wither for air"},
	{"withered under a damp cloth", inStage("wither", behind(`air `, "humidity 97 to 99 %")), slowAir, caution, "wither humidity until allow"},

	{"cooled before the cure", moved(`cool `, true, `cure `), "no-cooling stage-order", caution, "cool cure kiln gate"},
	{"the cure ends by what holds before it", inProcess(`(cure at \S+ \d+ °C) for \d+ h`, "$1 until moisture at most 12 % allow 1 to 5 h"), "gate-order" + heldAlready + notAsMade, caution, "cure make"}, // wider by gate-order
	{"the drying's lines changed round", moved(`dry +from`, true, `dry +at`), "cure-before-drying cure-without-gate" + heldAlready + tooHot + gates + notDried, caution, "dry gate"},                      // wider by cure-without-gate
	{"the fan nearly shut while it dries", unless(`wall oven`, inProcess(`(dry +at air-on \d+ °C)`, "$1 with airflow 2 m3/h")), "withering-slow kiln-too-deep" + oddFact + notDried, caution, "dry gate"},
	{"most of the air led back", unless(`wall oven`, says("kiln", "returns 92 %")), "withering-slow" + oddFact + notDried, caution, "kiln returns dry gate"},
	{"the kiln's square feet written as square metres", timesOfHouse("kiln", `area +([\d.]+)`, 10.76), oddFact + notDried, caution, "kiln area"},
	{"the malt's heat for the air's", where(`make pale`, unless(`wall oven`, inProcess(`dry +at air-on (\d+) °C`, "dry  at malt $1 °C"))), tooHot + notDried, caution, "dry gate"},
	{"the heat of the air off the bed for that of the air under it", unless(`wall oven`, inProcess(`dry +at air-on (\d+) °C`, "dry  at air-off $1 °C")), tooHot + notDried, caution, "dry gate"},
	{"the rise to a cure's heat while it is wet", inProcess(`from air-on ([45]\d) to \d+ °C over \d+ h`, "from air-on $1 to 88 °C over 2 h"), "cure-before-drying" + tooHot + curing, caution, "dry cure"},
	{"the gate before the cure by the clock", inProcess(`gate moisture at most 10 %.*`, "gate time at least 4 h"), "missing-guard expectation-broken" + curing + heldAlready + neverReached, caution, "gate cure"}, // wider by expectation-broken
	{"a gate of malt hotter than its air", unless(`make crystal`, ahead(`cool `, "gate malt at least 110 °C allow 0 to 6 h")), "gate-waits-long equipment-cannot" + neverReached, caution, "gate"},
	{"the deep bed stirred from the start", where(`kiln in "deep bed"`, ahead(`dry `, "stir every 1 h")), "stir-before-break", caution, "stir"},
	{"deculmed after the store", moved(`deculm `, false, `store `), "stage-order deculm-late", fault, "deculm store"},
	{"stored for at most its weeks", inProcess(`for at least (\d+ weeks)`, "for at most $1"), "bound-unexpected rest-short" + backwards, note, "store"},

	{"barley's lot written down as rye", where(`Far field`, ofHouse("grain", `species +barley`, "species     rye")), "ergot-check-missing mould-check-missing" + steepAims + oddFact, caution, "grain species from"},
	{"a germination test of two years ago", each(ofHouse("grain", `on 2026-02`, "on 2024-02"), ofHouse("grain", `on 2026-02`, "on 2024-02")), "germination-test-old", note, "germination from"},
	{"smoked malt claimed of a kiln without smoke", where(`make pale`, inProcess(`make \w+ malt`, "make smoked malt")), notAsMade, caution, "make kiln fired"},
	{"a promise with its bound turned", inProcess(`expect final moisture (?:at most|[\d.]+ to) ([\d.]+) %`, "expect final moisture at least $1 %"), "expectation-broken expectation-at-risk" + backwards, caution, "expect"},
	{"promised out of the steep in half a day", behind(`at +"`, "expect steep-out time at most 12 h"), "expectation-broken expectation-at-risk stated-total-differs", fault, "expect steep"},
	{"the letter O for a nought", inProcess(`(cure at \S+ \d+)\d °C`, "${1}O °C"), "bad-number unknown-unit missing-unit stray-character", fault, "cure"}, // wider by stray-character
}

// unseenRecords are slips in the record of a batch.
var unseenRecords = []kind{
	{"a piece that is heavier after it grew", inProcess(`weighed \S+ kg (.* after germinate)`, "weighed 9.95 kg $1"), oddWeighing + oddOrder, caution, "weighed"},
	{"the box weighed with the cured malt", inProcess(`weighed 5\.(\d\d) kg (.* after cure)`, "weighed 7.$1 kg $2"), oddWeighing + oddOrder, caution, "weighed"},
	{"begun two days before it began", each(inProcess(`(began +)2026-03-06`, "${1}2026-03-04"), inProcess(`(began +)2026-03-20`, "${1}2026-03-18"), inProcess(`(began +)2026-04-10`, "${1}2026-04-08")), "time-doubtful" + oddOrder + oddReading, caution, "began read weighed"},
	{"the month and the day changed round", inProcess(`(weighed .* at 2026)-(\d\d)-(\d\d) (.*soak 2)`, "$1-$3-$2 $4"), "bad-time time-doubtful" + oddOrder, caution, "weighed read counted turned"},
	{"the cure read twenty degrees too cool", inProcess(`(read +air-on) 8`, "$1 6"), oddReading, caution, "read"},
	{"the piece overgrown on its third day", inProcess(`counted acrospire [\d ]+ at`, "counted acrospire 0 0 2 6 32 60 at"), oddReading + oddOrder, caution, "counted"},
	{"the acrospire's count written from the longest down", inProcess(`counted acrospire (\d+) (\d+) (\d+) (\d+) (\d+) (\d+)`, "counted acrospire $6 $5 $4 $3 $2 $1"), oddReading + oddOrder, caution, "counted"},
	{"the kernels without chit counted for those with it", inProcess(`counted chit \d\d of`, "counted chit 9 of"), oddReading + oddOrder, caution, "counted"},
	{"a sample's loss written for what it dried to", inProcess(`dried to 17\.\d+`, "dried to 2.46"), oddReading, caution, "sample"},
	{"a weight that says neither when nor after what", inProcess(`weighed (\S+ kg) at \S+ after soak 1`, "weighed $1"), "value-needed missing-statement", fault, "weighed batch"},
}

// talliedOf counts what came of these kinds alone.
func talliedOf(kinds []kind, results []result) tally {
	t, names := tally{kinds: len(kinds)}, map[string]bool{}
	for _, k := range kinds {
		names[k.name] = true
	}
	for _, r := range results {
		if names[r.kind.name] {
			t.add(r.verdict)
		}
	}
	return t
}
