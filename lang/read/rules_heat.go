package read

import "maltwright/lang/finding"

// kilnOf is a kiln with its facts, for an example.
func kilnOf(facts string) string {
	return "kiln \"tower\" { area 12 m2; reaches 20 to 95 °C; heater 60 kW; fired gas by indirect; " + facts + " }"
}

// boughtMalt is a process whose lot is malt, with a stage in front of the kiln.
func boughtMalt(stage string) string {
	return "use \"loft.malt\"\ngrain \"Bought pale\" { species barley; already kilned malt; moisture 4.5 % }\nkiln \"roaster\" { holds 20 l; tumbles yes; reaches 60 to 240 °C; heater 5 kW; fired gas by indirect }\n" +
		"process \"Chocolate\" {\n  make chocolate malt\n  from 8 kg of \"Bought pale\"\n" + stage + "  kiln in \"roaster\" {\n    roast at malt 210 °C for 60 min\n    cool to malt 30 °C with water 0.5 l\n  }\n}"
}

var (
	fanCurve = rule("fan-curve", fault, "the lines of a fan make no curve",
		"a fan gives less air against more pressure; two points are enough to find its airflow through a bed of this depth",
		"write two to five lines, each an airflow and its pressure, less air at more pressure: fan 6000 m3/h at 0 Pa and fan 4000 m3/h at 400 Pa; the power that it draws is a line of its own",
		kilnOf("fan 6000 m3/h at 0 Pa"), kilnOf("fan 6000 m3/h at 0 Pa; fan 4000 m3/h at 400 Pa"))
	factsClash = rule("facts-clash", fault, "two facts of a kiln that cannot both be",
		"the forecast would use one of the two, and nobody would know which",
		"take one of the two out",
		kilnOf("draught natural; fan 2.2 kW"), kilnOf("draught fan; fan 2.2 kW"))
	airflowBesideFan = rule("airflow-beside-fan", note, "the fan of a kiln has a curve, and the kiln has an airflow too", // a caution where the fan does not give so much
		"with a curve alone, the air follows from the resistance of the bed; with an airflow too, the air is throttled to it, as far as the fan gives it",
		"leave it so if the air is throttled; else take the airflow out",
		kilnOf("airflow 3000 m3/h; fan 6000 m3/h at 0 Pa; fan 4000 m3/h at 400 Pa"), kilnOf("fan 6000 m3/h at 0 Pa; fan 4000 m3/h at 400 Pa"))
	airInCircle = rule("air-in-circle", fault, "the air of a kiln comes from itself",
		"with no fresh air nothing dries", "let one of the kilns take fresh air: take its line air from out",
		`kiln "upper floor" { area 10 m2; air from "upper floor" }`, `kiln "upper floor" { area 10 m2; air from "lower floor" } kiln "lower floor" { area 10 m2; heater 60 kW }`)
	kilnedAgain = rule("kilned-already", fault, "bought malt is steeped, grown or withered",
		"it was dried by its maker, and does not grow again: it would only take up water and spoil",
		"take the stage out, or the line already out of the lot",
		boughtMalt("  steep in \"blue tub\" { soak 7 h in water at 13 °C }\n"), boughtMalt(""))
)

// heatRules are the rules of this file.
var heatRules = []finding.Rule{fanCurve, factsClash, airflowBesideFan, airInCircle, kilnedAgain, changeUnfit}
