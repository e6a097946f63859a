package read

import "strings"

// batchOf is a record of a batch, for the examples.
func batchOf(lines string) string {
	return shortest + shortKiln + "}\nbatch \"26-03\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n" + lines + "}\n"
}

// lotOf is a process of 6 kg of a lot of which so much came in, for the examples.
func lotOf(in string) string {
	of := strings.Replace(shortest, "Far field 2026", "Hill field 2026", 1)
	return of + shortKiln + "}\ngrain \"Hill field 2026\" { species barley; moisture 12.4 %; delivered " + in + " on 2026-02-01 }\n"
}

// tubThatWeighs is a vessel in which a batch can be weighed, for the examples.
const tubThatWeighs = "vessel \"tub\" { holds 25 l; weighs 990 g }\n"

// sharedOut is a record of a batch that is steeped in two vessels, for the examples.
func sharedOut(line string) string {
	two := strings.Replace(shortest, `in "blue tub" {`, `in "tub" and "second tub" {`, 1)
	return tubThatWeighs + "vessel \"second tub\" { holds 25 l; weighs 990 g }\n" + two + shortKiln + "}\nbatch \"26-03\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n" + line + "}\n"
}

// The rules of a record.
var (
	timeGoesBack = rule("time-goes-back", fault, "a reading whose time lies before that of the line above",
		"the lines after it would fall on the wrong day", "write the date if another day is meant, or put the lines in the order of the clock",
		batchOf("  turned at 2026-03-10 21:05\n  turned at 2026-03-10 20:15\n"), batchOf("  turned at 2026-03-10 21:05\n  turned at 06:15\n"))
	readingBeforeBegan = rule("reading-before-began", fault, "a reading whose time lies before the batch began",
		"a batch has no readings before it begins", "look at both dates",
		batchOf("  read water 12 °C at 2026-03-05 07:10\n"), batchOf("  read water 12 °C at 2026-03-06 07:10\n"))
	countsDiffer = rule("counts-do-not-add-up", fault, "a count of kernels that does not add up",
		"a number was left out, or written wrong", "count again, or look at the slip it was written on",
		batchOf("  counted chit 84 of 80 at 2026-03-08 07:10\n"), batchOf("  counted chit 84 of 100 at 2026-03-08 07:10\n"))
	lotOverdrawn = rule("lot-overdrawn", caution, "more taken of a lot than came in of it",
		"a delivery or a charge is written wrong, or the batch is of another lot", "look at the weights and their units; write each delivery of the lot",
		lotOf("2 kg"), lotOf("2 t"))
	driedAboveWet = rule("dried-above-wet", fault, "a sample that weighs more when it is dry than before",
		"drying takes water away; the two weights may be swapped, or the dish weighed along once", "look at both weights",
		batchOf("  sample 17.54 g dried to 20.00 g\n"), batchOf("  sample 20.00 g dried to 17.54 g\n"))
	tareBesideIn = rule("tare-beside-in", caution, "a record with a tare, and weights that say in what the grain was weighed",
		"the vessel is taken off a weight that names one, and the tare off every other weight: the program cannot know which of the two a number includes",
		"name for each weight what it was weighed in; then no tare is needed",
		tubThatWeighs+batchOf("  tare 990 g\n  weighed 8.33 kg in \"tub\" after soak 1\n"), tubThatWeighs+batchOf("  weighed 8.33 kg in \"tub\" after soak 1\n"))
	partOfBatch = rule("part-of-batch", caution, "a weight of one of several vessels that a steep is shared out among",
		"the share of the grain in that vessel is not known well enough to give the moisture of all of it, so the weight is left out",
		"weigh the grain in each vessel, and write the sum of the drained grain without in; or weigh a marked bag",
		sharedOut("  weighed 4.66 kg in \"tub\" after soak 1\n"), sharedOut("  weighed 7.34 kg after soak 1\n"))
)
