package read

import (
	"slices"
	"strings"

	"maltwright/lang/finding"
)

func rule(name string, s finding.Severity, title, why, do, bad, good string) finding.Rule {
	return finding.Rule{Name: name, Severity: s, Title: title, Why: why, Do: do, Bad: bad, Good: good}
}

// Rules lists what this stage finds.
func Rules() []finding.Rule {
	return slices.Concat(stepRules(), boundRules, blownRules, heatRules, []finding.Rule{
		useMissing, useOutside, useCircle, useTooMany,
		unknownWord, wordOutOfPlace, unknownClause, twoOfAClause, saidTwice, valueNeeded, wordsTooMany,
		wrongDimension, missingUnit, unknownUnit, badNumber, rangeUpsideDown, rangeUnexpected, boundUnexpected, boundMissing,
		placeMissing, badTime, blockUnexpected, blockMissing,
		unknownName, nameUsedTwice, unusedDefinition, stageOutOfOrder, missingStage, grownAlready, greenGoesOn, missingStatement, missingGuard, guardUpsideDown,
		moistureOver60, outOfRange, unusualFigure, outOfProportion, stepNeedsTemperature, stepNeedsEnd, acceptWithoutReason, limitsChanged, mergeUnsettled,
		lotsDiffer, timeGoesBack, readingBeforeBegan, countsDiffer, driedAboveWet, lotOverdrawn, tareBesideIn, partOfBatch, noFrame,
	})
}

const (
	fault   = finding.Fault
	caution = finding.Caution
	note    = finding.Note
)

// shortest and shortKiln are the shortest process, which the examples share.
const (
	shortest = `use "loft.malt"
process "Loft pale" {
  make pale malt
  from 6 kg of "Far field 2026"
  steep in "blue tub" { soak 7 h in water at 13 °C }
  germinate on "larch floor" { hold bed at 14 to 17 °C; for 5 days }
`
	shortKiln = `  kiln in "tray kiln" { dry at air-on 50 °C for 12 h }
`
)

var (
	useMissing = rule("use-missing", fault, "a used file cannot be read",
		"what it defines is not known", "write the path from this file's folder",
		`use "lofft.malt"`, `use "loft.malt"`)
	useOutside = rule("use-outside", fault, "a used file lies outside the folder of the process",
		"a process must read the same on every machine, and must not reach into other folders",
		"put the file below the folder of the process and write the path from there",
		`use "../loft.malt"`, `use "loft.malt"`)
	useCircle = rule("use-circle", fault, "files use each other in a circle",
		"no order could be found in which to read them", "take out one of the use lines", ``, ``)
	useTooMany = rule("use-too-many", fault, "more than 64 files are used, or more than 8 MiB in all",
		"a house needs a handful", "put the definitions in fewer files, and use none that holds anything else", ``, ``)

	unknownWord = rule("unknown-word", fault, "a word the language does not know",
		"the program would not do what it asks for", "see the words that stand here with explain",
		`site "Loft" { watter 9 to 12 °C }`, `site "Loft" { water 9 to 12 °C }`)
	wordOutOfPlace = rule("word-out-of-place", fault, "a statement that stands in the wrong block",
		"here it would mean nothing", "move it to the block it belongs to",
		`site "Loft" { species barley }`, `grain "Far field" { species barley }`)
	unknownClause = rule("clause-unexpected", fault, "a clause that the statement does not take",
		"the program would leave it out", "see the statement's form with explain",
		`site "Loft" { water 9 to 12 °C every 8 h }`, `site "Loft" { water 9 to 12 °C }`)
	twoOfAClause = rule("two-of-a-clause", fault, "a clause stands twice in one statement",
		"only one of the two can be true", "keep the one that is meant",
		`grain "Far field" { species barley; germination 97 % of 200 kernels of 100 kernels }`, `grain "Far field" { species barley; germination 97 % of 200 kernels }`)
	saidTwice = rule("said-twice", fault, "a fact is given twice in one block",
		"only one of the two can be true", "keep the one that is meant",
		`site "Loft" { water 9 °C; water 12 °C }`, `site "Loft" { water 9 to 12 °C }`)
	valueNeeded = rule("value-needed", fault, "a statement or clause lacks a value",
		"without it the statement says nothing", "add the value",
		`site "Loft" { water }`, `site "Loft" { water 9 to 12 °C }`)
	wordsTooMany = rule("words-too-many", fault, "words that the statement has no place for",
		"the program would leave them out", "see the statement's form with explain; write a remark behind #",
		`site "Loft" { water 9 to 12 °C cold }`, `site "Loft" { water 9 to 12 °C }`)
	wrongDimension = rule("wrong-dimension", fault, "a value of the wrong kind",
		"one thing cannot stand for another, such as a time for a temperature", "see the statement's form with explain",
		`site "Loft" { water 9 h }`, `site "Loft" { water 9 °C }`)
	missingUnit = rule("missing-unit", fault, "a number without its unit",
		"a number alone does not say what it counts", "write the unit behind the number",
		`site "Loft" { water 9 to 12 }`, `site "Loft" { water 9 to 12 °C }`)
	unknownUnit = rule("unknown-unit", fault, "a unit the language does not know",
		"the value cannot be read without it", "write a unit from the list that explain units shows",
		`vessel "tub" { holds 25 buckets }`, `vessel "tub" { holds 25 l }`)
	badNumber = rule("bad-number", fault, "a number or quantity that cannot be read",
		"the value would not be certain", "write it as 12.4, 3/4 or 8 1/3, with its unit",
		`grain "Far field" { species barley; moisture 12,4 % }`, `grain "Far field" { species barley; moisture 12.4 % }`)
	rangeUpsideDown = rule("range-upside-down", fault, "a range whose first value is above its second",
		"nothing lies between the two", "swap the two values",
		`site "Loft" { water 12 to 9 °C }`, `site "Loft" { water 9 to 12 °C }`)
	rangeUnexpected = rule("range-unexpected", fault, "a range where one value is wanted",
		"the statement needs one value to work with", "choose one of them",
		`vessel "tub" { holds 20 to 25 l }`, `vessel "tub" { holds 25 l }`)
	boundUnexpected = rule("bound-unexpected", fault, "a bound where a plain value is wanted",
		"the statement needs a value, not a limit", "give the value itself; what must at least or at most hold is said with until or expect",
		`vessel "tub" { holds at least 25 l }`, `vessel "tub" { holds 25 l }`)
	boundMissing = rule("bound-missing", fault, "a condition that does not say on which side it holds",
		"at least and at most tell on which side it holds; a falling moisture passes every value once",
		"write at least, at most, above, below or is in front of the value, or give a range",
		`dry at air-on 50 °C until moisture 10 % allow 10 to 30 h`, `dry at air-on 50 °C until moisture at most 10 % allow 10 to 30 h`)
	placeMissing = rule("place-of-temperature-missing", fault, "a temperature that does not say where it is taken",
		"the air under the bed, the air above it and the malt can be tens of degrees apart while the malt is wet",
		"write air-on, air-off, malt or oven in front of it",
		`cure at 82 °C for 4 h`, `cure at air-on 82 °C for 4 h`)
	badTime = rule("bad-time", fault, "a date or a time of day that does not exist",
		"when it was, or when it is due, would not be known", "write a date as 2026-03-06 and a time as 07:30 or 7:30 am",
		`site "Loft" { awake 06:30 to 25:30 }`, `site "Loft" { awake 06:30 to 22:30 }`)
	blockUnexpected = rule("block-unexpected", fault, "a block behind a statement that takes none",
		"the program would leave it out", "move what stands in the braces to the block it belongs in",
		`site "Loft" { water 9 °C { air 8 °C } }`, `site "Loft" { water 9 °C }`)
	blockMissing = rule("block-missing", fault, "a statement that needs a block has none",
		"its facts stand in its block", "write { and } behind it, with its statements between",
		`vessel "tub"`, `vessel "tub" { holds 25 l }`)

	unknownName = rule("unknown-name", fault, "a name that nothing defines",
		"the program does not know what it stands for", "define it, or bring its definition in with use",
		`at "Loft, sprign"`, `at "Loft, spring"`)
	nameUsedTwice = rule("name-used-twice", fault, "two definitions of one kind have the same name",
		"the program cannot know which of them is meant", "give one of them another name",
		`vessel "tub" { holds 25 l } vessel "tub" { holds 30 l }`, `vessel "tub" { holds 25 l }`)
	unusedDefinition = rule("unused-definition", note, "a definition that no process of this file uses",
		"it may be left over, or its name may be spelt otherwise below", "name it in a process, or move it to the file of the house",
		"vessel \"old tub\" { holds 20 l }\n"+shortest+shortKiln+"}", shortest+shortKiln+"}")
	stageOutOfOrder = rule("stage-order", fault, "the stages stand in another order than grain goes through them",
		"steep, germinate, wither, kiln, deculm, store is the order of the work", "move the stage",
		shortest+"  deculm within 12 h\n"+shortKiln+"}", shortest+shortKiln+"  deculm within 12 h\n}")
	missingStage = rule("missing-stage", fault, "a stage without which there is no malt",
		"grain is steeped, grown and kilned", "add the stage",
		shortest+"}", shortest+shortKiln+"}")
	grownAlready = rule("grown-already", fault, "bought green malt is steeped, or grown once more",
		"it was steeped and grown by its maker; the forecast takes it as grown, and a second growth makes it overgrow",
		"take the stage out, or the line already out of the lot",
		"use \"loft.malt\"\ngrain \"Bought green\" { species barley; already green malt; moisture 44 % }\nprocess \"Loft pale\" {\n  make pale malt\n  from 10 kg of \"Bought green\"\n  steep in \"blue tub\" { soak 7 h in water at 13 °C }\n"+shortKiln+"}",
		"use \"loft.malt\"\ngrain \"Bought green\" { species barley; already green malt; moisture 44 % }\nprocess \"Loft pale\" {\n  make pale malt\n  from 10 kg of \"Bought green\"\n"+shortKiln+"}")
	greenGoesOn = rule("green-malt-goes-on", fault, "green malt is made, and goes on to the kiln, to deculming or to store",
		"green malt is ready when it has grown; when it is dried it is another malt, and the rest of the process is judged by that malt",
		"name the malt that is made, or take the stage out",
		strings.Replace(shortest, "pale malt", "green malt", 1)+shortKiln+"}", strings.Replace(shortest, "pale malt", "green malt", 1)+"}")
	missingStatement = rule("missing-statement", fault, "a block lacks a statement it cannot do without",
		"the block is of no use without it", "add it",
		`grain "Far field" { moisture 12.4 % }`, `grain "Far field" { species barley; moisture 12.4 % }`)
	missingGuard = rule("missing-guard", fault, "a step that waits for a condition has no latest time",
		"if the condition is never met, the step never ends", "add allow with the earliest time and the latest time, such as allow 6 to 14 h",
		`dry at air-on 50 °C until moisture at most 10 %`, `dry at air-on 50 °C until moisture at most 10 % allow 10 to 30 h`)
	guardUpsideDown = rule("guard-upside-down", fault, "the earliest time of a step is after its latest time",
		"the step could never end", "swap the two values",
		`dry at air-on 50 °C until moisture at most 10 % allow 30 to 10 h`, `dry at air-on 50 °C until moisture at most 10 % allow 10 to 30 h`)
	moistureOver60 = rule("moisture-over-60", fault, "a moisture above 60 % of the whole weight",
		"living grain does not hold so much water; the value may be on the dry basis",
		"if it is, write % dry basis",
		`grain "Far field" { species barley; moisture 72 % }`, `grain "Far field" { species barley; moisture 13.6 % dry basis }`)
	outOfRange = rule("out-of-range", fault, "a value that cannot be",
		"the value lies outside what the thing it describes can have", "look at the number and its unit",
		`site "Loft" { humidity 55 to 180 % }`, `site "Loft" { humidity 55 to 80 % }`)
	unusualFigure = rule("unusual-figure", caution, "a value that is possible, but very unusual",
		"most such values are slips of the pen: °F for °C, grams for kilograms, a misplaced decimal point; and every figure of the forecast goes by them",
		"look at the number, its decimal point and its unit; if it is right, accept it with the reason",
		`grain "Far field" { species barley; kernel-weight 4.6 g }`, `grain "Far field" { species barley; kernel-weight 46 g }`)
	outOfProportion = rule("out-of-proportion", caution, "two facts that hardly go together, such as much grain on a small floor", // a fault where they cannot
		"each may be right for another house; together, one of them is a slip of the pen, and every figure from them is wrong",
		"look at both numbers and their units; if they are right, accept it with the reason",
		shortest+"  kiln in \"cupboard\" { dry at air-on 50 °C for 12 h }\n}\nkiln \"cupboard\" { area 0.5 m2; airflow 1.2 m3/h }",
		shortest+"  kiln in \"cupboard\" { dry at air-on 50 °C for 12 h }\n}\nkiln \"cupboard\" { area 0.5 m2; airflow 60 m3/h }")
	stepNeedsTemperature = rule("step-needs-temperature", fault, "a step that does not say how warm",
		"nobody can do or forecast the step without it", "add at with the temperature and its place",
		`dry for 12 h`, `dry at air-on 50 °C for 12 h`)
	stepNeedsEnd = rule("step-needs-end", fault, "a step that does not say when it ends",
		"it would last for ever", "add for with a time, or until with a condition and allow with the latest time",
		`dry at air-on 50 °C`, `dry at air-on 50 °C for 12 h`)
	acceptWithoutReason = rule("accept-without-reason", fault, "a rule is silenced without a reason",
		"next season nobody knows why", "say between the quotes why it is right",
		`accept visit-at-night because ""`, `accept visit-at-night because "the night turn is done by the neighbour"`)
	limitsChanged = rule("limits-changed", note, "a threshold was changed for this house",
		"the rules that use it judge otherwise than usual", "",
		`limits { bed-temperature at most 22 °C }`, ``)
)
