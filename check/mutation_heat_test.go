package check

// heatKinds are slips in what a kiln is said to be, and in what a step on it is with.
var heatKinds = []kind{
	{"a fan of one point", says("kiln", "fan 900 m3/h at 0 Pa"), "fan-curve", fault, "fan kiln"},
	{"a fan of air and no pressure", says("kiln", "fan 900 m3/h"), "fan-curve", fault, "fan"},
	{"a curve that rises", says("kiln", "fan 900 m3/h at 0 Pa\n  fan 1200 m3/h at 300 Pa"), "fan-curve", fault, "fan"},
	{"the power of the fan with a pressure", says("kiln", "fan 200 W at 300 Pa"), "fan-curve", fault, "fan"},
	{"a fan's pressure in mm", says("kiln", "fan 900 m3/h at 0 Pa\n  fan 600 m3/h at 30 mm"), "wrong-dimension fan-curve", fault, "fan"},
	{"a fan's power in place of its pressure", says("kiln", "fan 900 m3/h at 300 W"), "wrong-dimension", fault, "fan"},
	{"a chimney of as many mm", says("kiln", "chimney 600 mm"), "unusual-figure out-of-range facts-clash", caution, "chimney draught"},
	{"a chimney without its unit", says("kiln", "chimney 6"), "missing-unit", fault, "chimney"},
	{"a chimney with its height named", says("kiln", "chimney height 6 m"), "wrong-dimension", fault, "chimney"},
	{"an efficiency of eight times the fuel", ofHouse("kiln", `(heater +[\d.]+ kW)`, "$1 at 850 %"), "out-of-range", fault, "heater"},
	{"an efficiency with a point too many", ofHouse("kiln", `(heater +[\d.]+ kW)`, "$1 at 8.5 %"), "out-of-range", fault, "heater"},
	{"an efficiency beside the power", ofHouse("kiln", `(heater +[\d.]+ kW)`, "$1 85 %"), "bad-number", fault, "heater"},
	{"an efficiency on a line of its own", says("kiln", "efficiency 85 %"), "unknown-word", fault, "efficiency"},
	{"all of the heat recovered", says("kiln", "recovers 95 %"), "unusual-figure out-of-range", caution, "recovers"},
	{"the heat recovered as a fraction", says("kiln", "recovers 0.35"), "missing-unit", fault, "recovers"},
	{"the recovery by its noun", says("kiln", "recovery 35 %"), "unknown-word", fault, "recovery"},
	{"walls of concrete", says("kiln", "walls concrete 24 m2"), "unknown-word", fault, "walls"},
	{"the area of the walls in cm2", says("kiln", "walls brick 24 cm2"), "out-of-range unusual-figure out-of-proportion", caution, "walls"},
	{"insulation without its clause", says("kiln", "walls brick insulated"), "words-too-many", fault, "walls"},
	{"a door a metre ajar", says("kiln", "door ajar 100 cm"), "out-of-range", fault, "door"},
	{"a door that is open", says("kiln", "door open 3 cm"), "unknown-word", fault, "door"},
	{"a volume and no drum", says("kiln", "holds 200 l"), "missing-statement", fault, "holds"},
	{"a drum that stands", says("kiln", "holds 200 l\n  tumbles no"), "facts-clash", fault, "holds"},
	{"air from a kiln that is not there", says("kiln", `air from "lower flor"`), "unknown-name", fault, "air"},
	{"fired with peat", says("kiln", "fired with peat by direct"), "value-needed clause-unexpected", fault, "fired"},

	{"a lot that was kilned, and is steeped", says("grain", "already kilned malt"), "kilned-already lots-differ", fault, "steep from"},
	{"returns of a step as a fraction", inProcess(`(dry +at [a-z-]+ [\d.]+ °C)( until| for)`, "$1 with returns 0.5$2"), "missing-unit", fault, "dry"},
	{"a step that leads all of its air back", inProcess(`(dry +at [a-z-]+ [\d.]+ °C)( until| for)`, "$1 with returns 100 %$2"), "out-of-range", fault, "dry"},
	{"returns of a step in m3/h", inProcess(`(dry +at [a-z-]+ [\d.]+ °C)( until| for)`, "$1 with returns 40 m3/h$2"), "wrong-dimension", fault, "dry"},
	{"a step with recirculation", inProcess(`(dry +at [a-z-]+ [\d.]+ °C)( until| for)`, "$1 with recirculation 40 %$2"), "unknown-word", fault, "dry"},
	{"airflow and returns in two clauses", inProcess(`(dry +at [a-z-]+ [\d.]+ °C)( until| for)`, "$1 with airflow 40 m3/h with returns 40 %$2"), "two-of-a-clause", fault, "dry"},
	{"a roast without its words", inProcess(`cure( +at [a-z-]+) [\d.]+ °C for [\d.]+ (?:h|min)`, "roast 175 °C 50 min"), "words-too-many", fault, "roast"},
	{"a quench on a line of its own", inProcess(`\n( *)cool [^\n]*`, "\n${1}quench with 2 l"), "unknown-word", fault, "quench"},
	{"the water of the quench in front of its word", inProcess(`(cool to [a-z-]+ [\d.]+ °C)`, "$1 with 2 l water"), "wrong-dimension", fault, "cool"},
}

// harmlessHeat are such facts as they may be.
var harmlessHeat = []harmless{
	{"an efficiency", ofHouse("kiln", `(heater +[\d.]+ kW)`, "$1 at 85 %"), note},
	{"an efficiency of all of it", ofHouse("kiln", `(heater +[\d.]+ kW)`, "$1 at 100 %"), note},
	{"a kiln that says it is no drum", says("kiln", "tumbles no"), note},
}
