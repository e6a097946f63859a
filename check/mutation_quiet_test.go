package check

import "maltwright/lang/finding"

// A harmless change is one that a maltster may well make; nothing may be said of it
// that is worse than its severity.
type harmless struct {
	name string
	do   change
	most finding.Severity
}

var harmlessKinds = []harmless{
	{"awake round the clock", ofHouse("site", `awake .*`, "awake    00:00 to 24:00"), note},
	{"wheat that stands 23 h at 13 °C in water changed daily", where(`Loft wheat`, everywhere(`soak \d h in water at 12`, "soak 23 h in water at 13")), caution},
	{"a single soak of 22 h at 13 °C", unless(`Loft oats|Loft pale|Mill bend|Loft Munich|Mill pale`, steepOf("    soak 22 h in water at 13 °C\n    rest 20 h in air at 14 °C\n    soak 4 h in water at 13 °C\n")), caution},
	{"the soaks in °F", everywhere(`(soak .* at) 13 °C`, "$1 55.4 °F"), note},
	{"the bed in °F", inProcess(`hold +bed at 14 to 17 °C`, "hold bed at 57.2 to 62.6 °F"), note},
	{"the cure in °F", inProcess(`(cure at [a-z-]+) 82 °C`, "$1 179.6 °F"), note},
	{"the charge in pounds", inProcess(`from 6 kg`, "from 13 lb 3.6 oz"), note},
	{"the charge in grams", inProcess(`from ([\d]+) kg`, "from ${1}000 g"), note},
	{"the soaks in minutes", everywhere(`soak 7 h`, "soak 420 min"), note},
	{"the soak's clauses in another order", everywhere(`(soak) (\d+ h) in water at (\d+ °C)`, "$1 at $3 for $2 in water"), note},
	{"the drying's clauses in another order", inProcess(`(dry +)(at [a-z-]+ \d+ °C) (until .*) (allow .*)`, "$1$4 $2 $3"), note},
	{"the bed a degree cooler", shifted(`hold +bed at (\d+) to \d+ °C`, -1, `hold +bed at \d+ to (\d+) °C`), note},
	{"air at intervals", behind(`steep `, "aerate every 30 min for 5 min"), note},
	{"two shifts", ofHouse("site", `awake +06:30 to 22:30`, "awake 06:30 to 14:30 with 2 hands\n  awake 14:30 to 22:30 with 1 hand"), note},
	{"turned at times of day", inProcess(`(turn +)every 8 h`, "${1}at 06:30 and 14:30 and 22:30"), note},
	{"fresh water that runs through the first soak", inProcess(`(soak .* \d+ °C)`, "$1 with overflow 0.5 l/min"), note},
	{"half an hour less of the first soak", inProcess(`soak 7 h`, "soak 6 h 30 min"), note},
	{"a rest an hour longer", inProcess(`rest 9 h`, "rest 10 h"), note},
	{"turned a little more often", inProcess(`(turn +every) 8 h`, "$1 7 h"), note},
	{"the malt left a fortnight longer", inProcess(`at least \d+ weeks`, "at least 6 weeks"), note},
	{"the deculming sooner", inProcess(`deculm within 12 h`, "deculm within 6 h"), note},
	{"the cure a degree hotter", shifted(`cure at [a-z-]+ (\d+) °C`, 1), note},
	{"a twentieth less grain", scaled(`from ([\d.]+) k?[gt]`, 0.95), note},
	{"the lot's moisture on the dry basis", ofHouse("grain", `moisture +12\.4 %`, "moisture 14.16 % dry basis"), note},
	{"the kiln's area in square feet", ofHouse("kiln", `area +0\.5 m2`, "area 5.38 ft2"), note},
	{"the vessel in gallons", ofHouse("vessel", `holds 25 l`, "holds 6.6 gal-us"), note},
	{"the tub's weight in pounds", ofHouse("vessel", `weighs 990 g`, "weighs 2 lb 3 oz"), note},
	{"a tray that says what it weighs", unless(`steel tank|cattle`, ofHouse("floor", ` *\}`, "; weighs 2 kg }")), note},
	{"a scale of a laboratory", anywhere(`(\nscale "kitchen")`, "\nscale \"balance\" { division 0.001 g; holds 300 g }$1"), note},
	{"a marked bag", unless(`bag `, behind(`at `, "bag 100 g at the start")), note},
	{"the kiln's air in cfm", ofHouse("kiln", `airflow 60 m3/h`, "airflow 35.3 cfm"), note},
	{"a delivery, and where it lies", ofHouse("grain", `species `, "delivered 2500 t from \"Hill farm\" on 2026-02-01 as \"L-118\"\n  store in \"silo 2\"\n  species "), note},
	{"at the sea", ofHouse("site", `altitude .*`, "altitude 0 m"), note},
	{"a damp cloth over the piece", behind(`hold `, "humidity 95 to 98 %"), note},
	{"the bed led a degree down", unless(`Mill pale|Tonne of pale`, inProcess(`hold +bed at 14 to 17 °C`, "hold  bed from 16 to 15 °C over 3 days")), note},
	{"the bed held without saying that it is the bed", inProcess(`hold +bed at`, "hold at"), note},
	{"a stronger heater under the floor", ofHouse("floor", `heater 30 W`, "heater 40 W"), note},
	{"a heater a tenth stronger", timesOfHouse("kiln", `heater +([\d.]+)`, 1.1), note},
	{"a floor a tenth larger", timesOfHouse("floor", `area +([\d.]+)`, 1.1), note},
	{"the cure in a stage of its own", unless(`stir`, inProcess(`(kiln in "[^"]*" \{\n)((?s:.*?))( *cure )`, "$1$2  }\n\n  $1$3")), note},
	{"the growing begun by itself", inProcess(`(germinate on "[^"]*" \{\n)((?s:.*?)hold .*\n)((?s:.*?)( *turn .*\n))`, "$1$2$4    for 12 h\n  }\n\n  $1$2$3"), note},
	{"a gate that the step before it has met", where(`10 %\n *gate moisture at most 10 %\n`, inProcess(`(gate moisture at most 10 %)`, "$1 allow 0 to 12 h")), note},
	{"a guard with more room", scaled(`dry .* allow [\d.]+ to (\d+)`, 1.25), note},
	{"a limit a little wider", behind(`at `, "limits { turn-gap at most 14 h }"), note},
	{"comments and empty lines", everywhere(`\n( *)(soak|hold|dry)`, "\n\n$1# as always\n$1$2"), note},
	{"the lines of another system", everywhere(`\n`, "\r\n"), note},
}

// steepOf gives the steep other steps.
func steepOf(steps string) change {
	return inStage("steep", inProcess(`(?s)(\{\n).*(  \}\n)`, "$1"+steps+"$2"))
}

// harmlessRecords are records as they may well be written.
var harmlessRecords = []harmless{
	{"a weight in pounds", inProcess(`weighed 7\.(\d\d) kg`, "weighed 16.3 lb"), note},
	{"a weight in grams", inProcess(`weighed (\d)\.(\d\d) kg`, "weighed ${1}${2}0 g"), note},
	{"a bed in °F, converted", inProcess(`read +bed 15\.8 °C`, "read bed 60.4 °F"), note},
	{"a date written out", inProcess(`(began +(2026-\d\d-\d\d)(?s:.*?)weighed [^\n]*?at )(\d)`, "$1$2 $3"), note},
	{"one more reading of the bed", inProcess(`(turned  at 14:30\n)`, "$1  read bed 17.0 °C at 17:00\n"), note},
	{"turned two hours late", inProcess(`turned  at 14:30`, "turned  at 16:30"), note},
	{"one turn not written down", inProcess(`\n *turned  at 14:30`, ""), note},
	{"no turn noted, and the bed read once a day", everywhere(`(?m)^ *(turned|counted|felt) .*at \d\d:\d\d\n|^ *read +bed .* at \d\d:.*\n`, ""), note},
	{"a batch that has begun to soak", inProcess(`(?s)\n *weighed.*`, "\n}\n"), note},
	{"a batch that grows", inProcess(`(?s)\n *weighed [^\n]*after germinate.*`, "\n}\n"), note},
	{"a batch on the kiln", inProcess(`(?s)\n *weighed [^\n]*after dry 2.*`, "\n}\n"), note},
	{"a batch whose malt waits to be cleaned", inProcess(`\n *weighed [^\n]*clean malt[^\n]*`, ""), note},
	{"a soak cut short", changedTo("soak 2 to 6 h"), note},
	{"a cure a little hotter", changedTo("cure to air-on 84 °C"), note},
	{"a somewhat drier lot", inProcess(`dried to 17\.\d+ g`, "dried to 17.80 g"), note},
	{"no sample", without(`sample `), note},
	{"a step not weighed", each( // a date that stood there moves on to the next line
		inProcess(`\n *weighed \S+ kg at (\d{4}-\S+ )\S+ after wither(\s+read +\S+ \S+ °C at )(\d\d:)`, "$2$1$3"),
		inProcess(`\n *weighed [^\n]*after wither`, "")), note},
	{"its own charge, of the same lot", inProcess(`(sample .*\n)`, "$1  from 5.9 kg of \"Far field 2026\"\n"), note},
	{"signed", everywhere(`(?m)^( *(?:weighed|turned|counted|read|felt) .*)$`, `$1 by "AK"`), note},
	{"a remark", inProcess(`(turned  at 14:30\n)`, "$1  remark \"smells of cucumber\" at 14:40 by \"AK\"\n"), note},
	{"analysed", each(tested("friability 86 % by \"EBC 4.15\""), tested("colour 2 °L"), tested("don 300 µg/kg"), tested("glucan 180 mg/l"), tested("diastatic 280 °WK"), tested("moisture 4.4 %")), note},
	{"a weight in the tub", inProcess(`weighed 7\.41 kg`, `weighed 8.40 kg in "blue tub" on "kitchen"`), note},
	{"a tare", inProcess(`(sample .*\n)`, "$1  tare 20 g\n"), note},
}
