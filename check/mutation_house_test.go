package check

import "fmt"

// houseKinds are slips in the facts of the house that a process uses. What comes of
// one in the process is a fitting catch too where its sentence leads back to the fact.
var houseKinds = []kind{
	{"raw grain of 72 %", ofHouse("grain", `(moisture +)1(\d)`, "${1}7$2"), "moisture-over-60" + oddFact, fault, "grain moisture"},
	{"a lot of 21 %", ofHouse("grain", `(moisture +)1(\d)\.\d`, "${1}21"), oddFact, caution, "grain moisture from"},
	{"a lot with its point one place left", ofHouse("grain", `(moisture +)1(\d)\.(\d)`, "${1}1.$2$3"), oddFact, caution, "grain moisture from"},
	{"a lot with its point lost", ofHouse("grain", `(moisture +)1(\d)\.(\d)`, "${1}1$2$3"), "moisture-over-60" + oddFact, fault, "grain moisture from"},
	{"a lot of unknown moisture", ofHouse("grain", `\n *moisture[^\n]*`, ""), "lot-moisture-unknown", note, "grain from"},
	{"kernels of a tenth", timesOfHouse("grain", `kernel-weight +(\d+)`, 0.1), oddFact, caution, "grain kernel-weight"},
	{"kernels of ten times", timesOfHouse("grain", `kernel-weight +(\d+)`, 10), oddFact, caution, "grain kernel-weight"},
	{"kernels in mg", ofHouse("grain", `(kernel-weight +\d+) g`, "$1 mg"), oddFact, caution, "grain kernel-weight"},
	{"a delivery of a thousandth", ofHouse("grain", `species `, "delivered 0.25 kg on 2026-02-01\n  species "), "lot-overdrawn" + oddFact, caution, "grain delivered from"},
	{"protein of 22 %", ofHouse("grain", `(protein +)[\d.]+`, "${1}22"), oddFact, caution, "grain protein"},
	{"protein with its point one place left", ofHouse("grain", `(protein +)(\d)(\d)\.(\d)`, "$1$2.$3$4"), oddFact, caution, "grain protein"},
	{"a lot of 70 % germination", ofHouse("grain", `germination +9\d %`, "germination 70 %"), "germination-low", caution, "grain germination from"},
	{"a lot of 9.7 % germination", ofHouse("grain", `germination +9(\d) %`, "germination 9.$1 %"), "germination-low" + oddFact, fault, "grain germination from"},
	{"a germination test of twenty kernels", ofHouse("grain", `of \d+ kernels`, "of 20 kernels"), "germination-test-small", note, "grain germination from"},
	{"a germination test in the thirteenth month", ofHouse("grain", `2026-02-`, "2026-13-"), "bad-time", fault, "grain germination"},
	{"the two germination tests changed round", ofHouse("grain", `(?s)at 4 ml(.*)at 8 ml`, "at 8 ml${1}at 4 ml"), "germination-low first-soak-long-for-water-sensitive-lot" + oddFact, caution, "grain germination from"},
	{"treated seed", ofHouse("grain", `treated +no`, "treated yes"), "treated-seed", danger, "grain treated from"},
	{"treatment not known", ofHouse("grain", `treated +no`, "treated unknown"), "treated-unknown", caution, "grain treated from"},
	{"mouldy grain", each(ofHouse("grain", `\n *mould[^\n]*`, ""), ofHouse("grain", `(treated +no)`, "$1\n  mould found")), "mould-found", danger, "grain mould from"},
	{"grain with ergot", ofHouse("grain", `(treated +no)`, "$1\n  ergot found"), "ergot-found", danger, "grain ergot from"},
	{"barley's lot written down as sorghum", ofHouse("grain", `species( +)\w+`, "species${1}sorghum"), "bed-too-cold cast-moisture-outside too-short-to-modify acrospire-goal-odd" + oddFact, caution, "grain species hold until germinate"},
	{"species misspelt in the house", ofHouse("grain", `species`, "speices"), "unknown-word missing-statement", fault, "grain"},
	{"a decimal comma", ofHouse("grain", `(moisture +1\d)\.`, "$1,"), "bad-number stray-character", fault, "grain"},

	{"the site's range the wrong way round", ofHouse("site", `(air +)(\d+) to (\d+)`, "$1$3 to $2"), backwards, fault, "site"},
	{"tap water of 48 to 54 °C", ofHouse("site", `water .*`, "water    48 to 54 °C"), oddFact + " steep-water-warm", caution, "site water soak"},
	{"tap water of 9 to 12 °F", ofHouse("site", `(water .*)°C`, "$1°F"), oddFact + " freezing-water", caution, "site water"},
	{"tap water warmer than the soaks", ofHouse("site", `water .*`, "water    19 to 22 °C"), "steep-water-warm tap-warmer-than-soak", caution, "site water soak"},
	{"the room's humidity 5 %", ofHouse("site", `humidity .*`, "humidity 5 %"), oddFact, caution, "site humidity"},
	{"the room's humidity with its points lost", ofHouse("site", `humidity (\d+) to (\d+)`, "humidity ${1}0 to ${2}0"), oddFact, fault, "site humidity"},
	{"the room's humidity as a fraction", ofHouse("site", `humidity (\d+) to (\d+)`, "humidity 0.$1 to 0.$2"), oddFact, caution, "site humidity"},
	{"a frozen room under a warm bed", ofHouse("site", `air .*`, "air      -12 to -5 °C"), coldRoom + oddFact, caution, "site air hold rest"},
	{"a cold shed, and nothing that heats the floor", unless(`Mill pale|hold +room`, each(ofHouse("floor", `; heater \d+ W`, ""), ofHouse("site", `air .*`, "air      -2 to 4 °C"))), coldRoom, caution, "site air hold"},
	{"a hot room over a cool bed", ofHouse("site", `air .*`, "air      27 to 34 °C"), "room-too-warm-for-bed piece-overheats box-cannot" + oddFact, caution, "site air hold germinate"},
	{"the room's °C taken for °F", ofHouse("site", `(air .*)°C`, "$1°F"), coldRoom + oddFact, caution, "site air hold"},
	{"the room of 80 to 150 °C", ofHouse("site", `air +(\d+) to (\d+)`, "air ${1}0 to ${2}0"), oddFact + " room-too-warm-for-bed", fault, "site air"},
	{"a loft at 14 km", ofHouse("site", `altitude .*`, "altitude 14000 m"), oddFact, fault, "site altitude"},
	{"awake by night alone", ofHouse("site", `awake .*`, "awake    22:30 to 06:30"), "visit-at-night" + backwards + oddFact, note, "site awake germinate soak rest"},
	{"two shifts of the same hours", ofHouse("site", `(awake +\d.*)`, "$1\n  $1"), "unusual-figure", caution, "awake"},
	{"days away the wrong way round", ofHouse("site", `(awake +\d.*)`, "$1\n  away 2026-04-06 to 2026-04-03"), backwards, fault, "away"},
	{"awake for half an hour", ofHouse("site", `awake .*`, "awake    06:30 to 07:00"), "visit-at-night" + oddFact, note, "site awake germinate turn soak rest"},

	{"a vessel of a tenth", timesOfHouse("vessel", `holds +([\d.]+)`, 0.1), "vessel-too-small" + oddFact, fault, "steep vessel from"},
	{"a vessel in ml", ofHouse("vessel", `(holds \d+) l`, "$1 ml"), "vessel-too-small" + oddFact, fault, "steep vessel from"},
	{"a tub of as many kilograms", ofHouse("vessel", `(weighs [\d.]+) g`, "$1 kg"), oddFact, caution, "vessel"},
	{"a tub of a thousandth", ofHouse("vessel", `(weighs [\d.]+) g`, "$1 mg"), oddFact, caution, "vessel"},
	{"a scale that shows kilograms", anywhere(`(division \d+) g`, "$1 kg"), oddFact, caution, "scale"},
	{"a scale for grams", anywhere(`(holds 15) kg`, "$1 g"), oddFact, caution, "scale"},
	{"a scale without its division", anywhere(`division 5 g; `, ""), "missing-statement", fault, "scale"},
	{"a scale too small for the batch", unless(`bag `, each(anywhere(`holds 15 kg`, "holds 2 kg"), anywhere(`scale "weighbridge" .*\n`, ""))), "scale-too-small", caution, "scale soak rest"},
	{"a floor in square centimetres", ofHouse("floor", `(area [\d.]+) m2`, "$1 cm2"), "piece-too-deep" + oddFact, caution, "floor germinate from"},
	{"a floor of a hundred times", timesOfHouse("floor", `area +([\d.]+)`, 100), oddFact + " bed-dries-out air-cannot-hold-bed", caution, "floor germinate hold"},
	{"the floor's area without its unit", ofHouse("floor", `(area +[\d.]+) m2`, "$1"), "missing-unit", fault, "floor"},

	{"a kiln of a tenth of its area", timesOfHouse("kiln", `area +([\d.]+)`, 0.1), tooDeep, caution, "kiln area from dry"},
	{"a charge of half a tonne on each square metre", tooSmallAKiln(500), tooDeep, caution, "kiln area from dry"},
	{"a kiln in square centimetres", ofHouse("kiln", `(area +[\d.]+) m2`, "$1 cm2"), oddFact + tooDeep, caution, "kiln area"},
	{"a kiln of a hundred times its area", timesOfHouse("kiln", `area +([\d.]+)`, 100), oddFact, caution, "kiln area"},
	{"a kiln's area without its unit", ofHouse("kiln", `(area +[\d.]+) m2`, "$1"), "missing-unit", fault, "kiln"},
	{"the kiln's air in litres a minute", ofHouse("kiln", `(airflow +\d+) m3/h`, "$1 l/min"), oddFact + kilnAsked, caution, "kiln airflow dry"},
	{"the kiln's air in cubic metres a second", ofHouse("kiln", `(airflow +\d+) m3/h`, "$1 m3/s"), oddFact + kilnAsked, caution, "kiln airflow"},
	{"the kiln with a hundred times its air", timesOfHouse("kiln", `airflow +([\d.]+)`, 100), oddFact + kilnAsked, caution, "kiln airflow dry"},
	{"the heater in W", ofHouse("kiln", `(heater +[\d.]+) kW`, "$1 W"), oddFact + kilnAsked, caution, "kiln heater dry cure"},
	{"the heater a thousand times as strong", timesOfHouse("kiln", `heater +([\d.]+)`, 1000), oddFact, caution, "kiln heater"},
	{"the kiln's reach in °F", ofHouse("kiln", `(reaches .*)°C`, "$1°F"), kilnAsked + oddFact, fault, "kiln reaches dry cure stew"},
	{"the kiln's reach the wrong way round", ofHouse("kiln", `reaches (\d+) to (\d+)`, "reaches $2 to $1"), backwards, fault, "reaches"},
	{"the kiln reaches ten times its heat", ofHouse("kiln", `reaches (\d+) to (\d+)`, "reaches $1 to ${2}0"), oddFact, caution, "kiln reaches"},
	{"a fire of which nothing says where its smoke goes", says("kiln", "fired wood"), noFlue, caution, "kiln fired"},
	{"a gas fire of which nothing says where its smoke goes", says("kiln", "fired gas"), noFlue + " gas-oven-indoors", caution, "kiln fired"},
	{"a fire through the malt", says("kiln", "fired wood by direct"), "direct-fired", caution, "kiln fired"},
	{"heated by the sun, at night too", says("kiln", "fired solar"), sunAtNight, caution, "kiln fired dry cure"},
	{"a kiln without a fan that draws as if it had one", unless(`wall oven`, says("kiln", "draught still")), kilnAsked + oddFact + otherKiln, caution, "kiln draught airflow dry stew"},
	{"a fan's air in a still oven", where(`wall oven`, ofHouse("kiln", `airflow 6 m3/h`, "airflow 120 m3/h")), kilnAsked + oddFact, caution, "kiln airflow dry cure"},
	{"all of the air led back", says("kiln", "returns 99 %"), kilnAsked + oddFact + notDried, caution, "kiln returns dry"},
}

// tooSmallAKiln gives the kiln so little area that it bears so many kg/m².
func tooSmallAKiln(load float64) change {
	return func(p *pair) bool {
		return ofHouse("kiln", `(area +)[\d.]+`, "${1}"+fmt.Sprintf("%.3g", charge(p)/load))(p)
	}
}

// limitKinds move a threshold of the house beyond sense.
var limitKinds = []kind{
	limited("bed-temperature at most 200 °C"),
	limited("moisture at most 99 %"),
	limited("soak-time at most 999 h"),
	limited("steep-water at most 95 °C"),
	limited("rise-rate at most 900 °C/h"),
	limited("end-moisture at most 40 %"),
	limited("deculm-wait at most 52 weeks"),
	limited("turn-gap at most 30 days"),
	limited("store-rest at least 1 min"),
	limited("withering-time at most 900 h"),
	limited("airless-time at most 30 days"),
	limited("bed-temperature at most 2 °C"),
	limited("soak-time at most 1 min"),
	{"a limit that lets a soak of three days by", each(behind(`at `, "limits { soak-time at most 90 h; airless-time at most 90 h }"), scaled(`soak (\d+) h`, 10)),
		oddLimit + tooWet, fault, "limits soak"},
	{"a limit that lets wet malt be stored", where(`(?s)gate moisture.*gate moisture`, each(behind(`at `, "limits { end-moisture at most 20 % }"), lastOf(`gate moisture at most [\d.]+ %`, "gate moisture at most 18 %"))),
		oddLimit + gates, caution, "limits gate"},
}

func limited(to string) kind {
	return kind{"limits " + to, behind(`at `, "limits { "+to+" }"), oddLimit, caution, "limits"}
}
