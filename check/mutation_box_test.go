package check

const (
	badAir  = " air-cannot-hold-bed piece-overheats box-line-idle bed-uneven box-cannot"
	boxLine = "air floor airflow hold germinate until allow"
)

// boxKinds are slips in a bed with air blown through it.
var boxKinds = []kind{
	{"the box without its fan", ofHouse("floor", `\n *airflow 800 m3/h`, ""), "box-cannot", fault, boxLine},
	{"a fan of a tenth", ofHouse("floor", `airflow 800 m3/h`, "airflow 80 m3/h"), badAir + oddFact, caution, boxLine},
	{"the fan's air in litres a minute", ofHouse("floor", `airflow 800 m3/h`, "airflow 800 l/min"), badAir + oddFact, caution, boxLine},
	{"more air than the fan has", inProcess(`airflow 400 m3/h for`, "airflow 4000 m3/h for"), "box-cannot", fault, boxLine},
	{"the box's cooler in W", ofHouse("floor", `cooler  4 kW`, "cooler  4 W"), "box-cannot" + oddFact, caution, "cooler air"},
	{"a box that leads all but all of its air round", ofHouse("floor", `returns 60 %`, "returns 95 %"), "exhaust-stale", caution, "returns floor germinate"},
	{"a box's share led round as a fraction", ofHouse("floor", `returns 60 %`, "returns 60"), "missing-unit", fault, "returns"},
	{"a box of a tenth of its area", ofHouse("floor", `area    1\.8 m2`, "area    0.18 m2"), "piece-too-deep" + oddFact, caution, "area floor germinate from"},
	{"air-on in °F", inProcess(`(air-on 13) °C when`, "$1 °F when"), "out-of-range", fault, "air"},
	{"air-on as warm as the bed may be", inProcess(`(air-on) 13 °C when`, "$1 18 °C when"), badAir, caution, boxLine},
	{"air-on without its place", inProcess(`air-on 13 °C when`, "13 °C when"), "place-of-temperature-missing", fault, "air"},
	{"a fan that starts ten degrees late", inProcess(`bed above 16 °C`, "bed above 26 °C"), badAir, caution, boxLine},
	{"a fan that starts by the °F", inProcess(`bed above 16 °C`, "bed above 16 °F"), badAir + oddFact, caution, boxLine},
	{"the fan's bound turned", inProcess(`bed above 16 °C`, "bed below 16 °C"), badAir, caution, boxLine},
	{"the fan's times changed round", inProcess(`for 15 min every 1 h`, "for 1 h every 15 min"), "fan-times", fault, "air"},
	{"the fan's interval forgotten", inProcess(`for 15 min every 1 h`, "for 15 min"), "fan-times", fault, "air"},
	{"the fan's minutes taken for seconds", inProcess(`every 1 h`, "every 30 s"), "interval-too-short fan-times", fault, "air"},
	{"air that is always on in front of other air", inProcess(` when bed above 16 °C`, ""), "box-line-idle" + badAir, caution, boxLine},
	{"the air of the box dry", inProcess(`humidity air-on 98 %`, "humidity air-on 48 %"), "bed-dries-out piece-overheats bed-uneven" + oddFact, caution, "humidity germinate sprinkle"},
	{"the air of the box with a point too many", inProcess(`humidity air-on 98 %`, "humidity air-on 9.8 %"), "bed-dries-out" + oddFact, caution, "humidity germinate sprinkle"},
	{"sprinkled without saying when", inProcess(` when moisture below 42 %`, ""), "sprinkle-unclear", fault, "sprinkle"},
	{"sprinkled by a moisture that never is", inProcess(`moisture below 42 %`, "moisture below 4.2 %"), "box-line-idle bed-dries-out", caution, "sprinkle germinate"},
	{"sprinkled by the kilogram in place of the tonne", inProcess(`sprinkle to moisture .*`, "sprinkle 20 l/kg every 24 h"), tooMuchWater, caution, "sprinkle"},
	{"sprinkled twice over", inProcess(`sprinkle to moisture`, "sprinkle 20 l to moisture"), "sprinkle-unclear", fault, "sprinkle"},
}

// harmlessBox are changes of such a bed.
var harmlessBox = []harmless{
	{"turned by machine", inProcess(`(turn +every \d+ h)\n`, "$1 by machine\n"), note},
	{"turned by hand", inProcess(`(turn +every \d+ h) by machine\n`, "$1\n"), note},
	{"sprinkled by the tonne", inProcess(`sprinkle to moisture .*`, "sprinkle 22 l/t every 24 h"), note},
	{"the box held by its band alone", without(`air +at air-on`), note},
	{"the box's air in cfm", ofHouse("floor", `airflow 800 m3/h`, "airflow 471 cfm"), note},
	{"the humidity over the bed", inProcess(`humidity air-on 98 %`, "humidity 96 to 99 %"), note},
	{"the air's clauses in another order", inProcess(`(at air-on 15 °C) (with airflow 400 m3/h) (for 15 min) (every 1 h)`, "$4 $3 $2 $1"), note},
	{"fresh air alone", ofHouse("floor", `\n *returns 60 %`, ""), note},
}
