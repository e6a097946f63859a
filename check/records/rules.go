package records

import "maltwright/lang/finding"

func rule(name string, s finding.Severity, title, why, do, limits, bad, good string) finding.Rule {
	return finding.Rule{Name: name, Severity: s, Title: title, Why: why, Do: do, Limits: limits, Bad: bad, Good: good}
}

var (
	readingImpossible = rule("reading-impossible", finding.Fault, "a weight below its dry matter, or above what the grain can weigh",
		"drying takes only water, and malting only loses dry matter. Such a weight counts in no mean, and follow and learn leave it out", "look at the number, its unit and the tare",
		"it takes the dry matter of a forecast that follows the record, and allows a twentieth less",
		"weighed 4.43 kg at 18:50 after dry 2", "weighed 5.43 kg at 18:50 after dry 2")
	readingDoubtful = rule("reading-doubtful", finding.Caution, "a reading that contradicts the process and the other readings",
		"it is probably a slip of the pen: swapped digits, another unit, a misplaced point, a forgotten tare; and every figure from it is wrong",
		"compare the number with your notes; if it is right, accept it with the reason",
		"it reports a reading from five standard deviations on, of the reading and of what is unknown about lot, house and weather, so a small slip passes; follow gives the odds. A weight is compared with the division and the capacity of its scale only where the line names the scale or the vessel",
		"weighed 6.86 kg at 2026-03-07 06:00 after soak 2", "weighed 8.66 kg at 2026-03-07 06:00 after soak 2")
	recordOutOfOrder = rule("record-out-of-order", finding.Caution, "a line that is not in the order of the work",
		"growing begins after the steep, and drying after the growing; every figure of the record takes its lines as they are written", "look at the step and the time of both lines",
		"", "weighed 8.66 kg at 14:00 after soak 2\nweighed 7.41 kg at 2026-03-07 06:00 after soak 1", "weighed 7.41 kg at 14:00 after soak 1\nweighed 8.66 kg at 2026-03-07 06:00 after soak 2")
	writtenTwice = rule("written-twice", finding.Caution, "a reading, or a change of a step, that is written twice",
		"it counts twice, and mostly one of the two was meant for another step or time", "remove one of them, or correct it",
		"of two different weights of one step it reports those of one minute, from a hundredth apart on; for clean malt it says which one counts", "weighed 7.41 kg at 14:00 after soak 1\nweighed 7.41 kg at 14:00 after soak 1", "weighed 7.41 kg at 14:00 after soak 1")
	timeDoubtful = rule("time-doubtful", finding.Caution, "a step that took much longer or shorter than the process gives it",
		"a date is easily a day off, and every line below it without a date follows", "look at both dates; if the step was done differently, write changed",
		"it does not report fourteen hours more or less, nor a step that met its condition between its earliest and its latest time; it reports six hours more where a step with a time of its own took two and a half times as long",
		"weighed 7.52 kg at 2026-03-17 09:20 after wither\nweighed 4.90 kg clean malt at 2026-03-18 02:07", "weighed 7.52 kg at 2026-03-14 09:20 after wither\nweighed 4.90 kg clean malt at 2026-03-15 02:07")
	pieceUnturned = rule("piece-unturned", finding.Caution, "the record does not say that the growing piece was turned",
		"the rootlets mat, and the middle of the piece gets warm and short of air (common practice)", "note each turn, and look at the dates above and below",
		"it does not judge a record that notes only a few turns, nor one with no turns and fewer than eight readings of the piece over two days", "turned at 22:00\nread bed 15.7 °C at 2026-03-10 06:20", "turned at 22:00\nread bed 16.1 °C at 2026-03-09 06:20\nturned at 06:30\nread bed 15.8 °C at 14:20\nturned at 14:30\nread bed 16.4 °C at 21:50\nturned at 22:00\nread bed 15.7 °C at 2026-03-10 06:20")
	changeDoubtful = rule("change-doubtful", finding.Caution, "a changed time, temperature or water of a step that makes no sense",
		"the forecasts of the batch use it", "look at the number and its unit",
		"", `changed soak 3 to 60 h because "it had its weight early"`, `changed soak 3 to 6 h because "it had its weight early"`)
	sampleDoubtful = rule("sample-doubtful", finding.Caution, "a sample that makes the raw grain soaking wet or bone dry",
		"grain keeps at 10 to 15 % moisture; below 6 % it was roasted, and above 22 % it heats and moulds in days (common practice); every moisture of the batch is calculated from the sample", "look at both weights, and whether one of them includes the dish",
		"", "sample 20.00 g dried to 14.57 g", "sample 20.00 g dried to 17.54 g")
	maltNotWeighed = rule("malt-not-weighed", finding.Note, "a batch is cured, and its malt was not weighed", // a caution where it is cooled or deculmed
		"without that weight there is no yield, and nothing to learn from the batch", "rub the rootlets off and weigh it: weighed 4.90 kg clean malt",
		"a batch whose last line is of the kiln may still lie on the kiln", "weighed 5.11 kg at 2026-03-15 00:40 after cool", "weighed 4.90 kg clean malt at 2026-03-15 02:07")
	processChanged = rule("process-changed", finding.Caution, "the process has changed since the batch began", // a note where the text of then is at hand
		"compared with another process, a record shows something else", "put the text of the process back, or commit it to git before a batch is begun, so that the record can go by it",
		"layout, comments and other processes of the file do not count; a batch that is not pinned is not judged",
		"pinned \"000000000000\"\nread water 13.6 °C at 07:01", "read water 13.6 °C at 07:01")
	contaminantHigh = rule("contaminant-high", finding.Caution, "more of a poison in malt than law usually allows",
		"DON comes from mould in the ear, NDMA from flue gas in the kiln; the limits are those of the European Union for unprocessed cereals and of the United States for malt, from memory", "ask for the limits where the malt is sold, and sell or brew none of it before; look at ergot, mould and the firing of the kiln",
		"the limit of your country is not known here, and may be lower",
		"weighed 4.90 kg clean malt at 2026-03-15 02:07\ntested don 1.4 mg/kg by \"ELISA\" at 2026-04-01 10:00", "weighed 4.90 kg clean malt at 2026-03-15 02:07")
	remarkAlarms = rule("remark-alarms", finding.Danger, "a remark tells of mould, ergot, gas or smoke, or of grain that goes bad or has pests", // a caution where it is only the grain that is lost
		"what is written as a remark is easily read past; mould and ergot hold poisons that outlast malting, and carbon monoxide and carbon dioxide kill without a smell (common practice)", "do what is said here first of all; where the remark means something else, write it in other words",
		"it knows a few English words, and what is said not to be there (no mould, mould-free); smoke is not told of where the malt is dried in smoke, nor a sour smell of acid malt",
		`remark "pink mould on the bed" at 07:00`, `remark "smells of cucumber, no mould" at 07:00`)
)
