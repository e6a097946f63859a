package records

import "maltwright/lang/finding"

func rule(name string, s finding.Severity, title, why, do, limits, bad, good string) finding.Rule {
	return finding.Rule{Name: name, Severity: s, Title: title, Why: why, Do: do, Limits: limits, Bad: bad, Good: good}
}

var (
	readingImpossible = rule("reading-impossible", finding.Fault, "a weight below the dry matter that is in it, or above what the grain can come to",
		"drying takes water, and no more than there is; malting takes dry matter, and adds none. No mean counts such a weight, and neither follow nor learn goes by it", "look at the number, its unit and the tare",
		"the dry matter left is that of a forecast that keeps to the record; a twentieth less is allowed",
		"weighed 4.43 kg at 18:50 after dry 2", "weighed 5.43 kg at 18:50 after dry 2")
	readingDoubtful = rule("reading-doubtful", finding.Caution, "a reading that the process and the other readings speak against",
		"it is rather a slip of the pen: swapped digits, another unit, the point elsewhere, a tare left out; and what is reckoned from it is wrong",
		"look at the number, and at what stands in the book; if it is right, accept it and say why",
		"it speaks from five standard deviations on, of the reading and of what is open about lot, house and weather, so a small slip passes; follow gives the odds. A weight is held against what its scale shows, and holds, only where the line names the scale or what it was weighed in",
		"weighed 6.86 kg at 2026-03-07 06:00 after soak 2", "weighed 8.66 kg at 2026-03-07 06:00 after soak 2")
	recordOutOfOrder = rule("record-out-of-order", finding.Caution, "a line that is not in the order of the work",
		"growing begins when the steep is over, and drying when the growing is; what is reckoned from the record takes it at its word", "look at the step and the time of both lines",
		"", "weighed 8.66 kg at 14:00 after soak 2\nweighed 7.41 kg at 2026-03-07 06:00 after soak 1", "weighed 7.41 kg at 14:00 after soak 1\nweighed 8.66 kg at 2026-03-07 06:00 after soak 2")
	writtenTwice = rule("written-twice", finding.Caution, "a reading, or a change of a step, that is written twice",
		"it counts for two, and mostly one of them was meant for another step or time", "take one of them out, or put it right",
		"two weighings of one step that differ are left alone; of the clean malt it is noted which one counts", "weighed 7.41 kg at 14:00 after soak 1\nweighed 7.41 kg at 14:00 after soak 1", "weighed 7.41 kg at 14:00 after soak 1")
	timeDoubtful = rule("time-doubtful", finding.Caution, "a step that took far longer or shorter by the clock than the process gives it",
		"a date is easily a day off, and every line below it without a date follows", "look at both dates; what was done otherwise is written with changed",
		"fourteen hours more or less are left alone, and so is what waits for a condition within its allowance; of a step with a time of its own that took two and a half times that, it speaks of six hours more",
		"weighed 7.52 kg at 2026-03-17 09:20 after wither\nweighed 4.90 kg clean malt at 2026-03-18 02:07", "weighed 7.52 kg at 2026-03-14 09:20 after wither\nweighed 4.90 kg clean malt at 2026-03-15 02:07")
	pieceUnturned = rule("piece-unturned", finding.Caution, "a growing piece of which nothing says that it was turned",
		"the rootlets mat, and the middle of the piece gets warm and short of air (common practice)", "note each turn, and look at the dates above and below",
		"a record that notes a few turns and no more is left alone, and so is one without any that has less than eight looks at the piece over two days", "turned at 22:00\nread bed 15.7 °C at 2026-03-10 06:20", "turned at 22:00\nread bed 16.1 °C at 2026-03-09 06:20\nturned at 06:30\nread bed 15.8 °C at 14:20\nturned at 14:30\nread bed 16.4 °C at 21:50\nturned at 22:00\nread bed 15.7 °C at 2026-03-10 06:20")
	changeDoubtful = rule("change-doubtful", finding.Caution, "a change to a time, a heat or the water of a step that is out of sense for it",
		"forecasts of the batch go by it", "look at the number and its unit",
		"", `changed soak 3 to 60 h because "it had its weight early"`, `changed soak 3 to 6 h because "it had its weight early"`)
	sampleDoubtful = rule("sample-doubtful", finding.Caution, "a sample by which the raw grain is soaking or bone dry",
		"grain keeps at 10 to 15 % moisture; below 6 % it was roasted, and above 22 % it heats and moulds in days (common practice); every moisture of the batch is reckoned from it", "look at both weights, and whether the dish is in one of them",
		"", "sample 20.00 g dried to 14.57 g", "sample 20.00 g dried to 17.54 g")
	maltNotWeighed = rule("malt-not-weighed", finding.Note, "a batch that is cured, and its malt not weighed", // a caution where it is cooled or deculmed
		"without that weight there is no yield, and nothing to learn from the batch", "rub the rootlets off and weigh it: weighed 4.90 kg clean malt",
		"a batch whose last line is of the kiln may still lie on it", "weighed 5.11 kg at 2026-03-15 00:40 after cool", "weighed 4.90 kg clean malt at 2026-03-15 02:07")
	processChanged = rule("process-changed", finding.Caution, "a process that is no longer the one by which the batch was begun", // a note where the text of then is at hand
		"a record that is held beside another process than it was made by tells something else", "put the text of the process back, or commit it to git before a batch is begun, so that the record can go by it",
		"layout, comments and other processes of the file do not count; a batch that is not pinned says nothing of it",
		"pinned \"000000000000\"\nread water 13.6 °C at 07:01", "read water 13.6 °C at 07:01")
	contaminantHigh = rule("contaminant-high", finding.Caution, "more of a poison in malt than law usually allows",
		"DON comes from mould in the ear, NDMA from flue gas in the kiln; the limits are those of the European Union for unprocessed cereals and of the United States for malt, from memory", "ask what holds where the malt is sold, and sell or brew none of it before; look at ergot, mould and the firing of the kiln",
		"what your law allows is not known here, and may be less",
		"weighed 4.90 kg clean malt at 2026-03-15 02:07\ntested don 1.4 mg/kg by \"ELISA\" at 2026-04-01 10:00", "weighed 4.90 kg clean malt at 2026-03-15 02:07")
)
