package report

import (
	"math"
	"slices"

	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
	"maltwright/sim/seasons"
)

// Astray tells that hardly any forecast agrees with all of the readings.
func (b Batch) Astray() bool { return b.Progress != nil && !b.Progress.Posterior.Trusted }

// inDoubt are the readings of the record that are in doubt: by the forecasts, or by a finding of check.
func (b Batch) inDoubt() (list []model.Reading) {
	lines := map[int]bool{}
	if b.Progress != nil {
		for _, r := range b.Progress.Readings {
			lines[r.Line] = lines[r.Line] || r.Doubt != "" || r.Struck
		}
	}
	for _, x := range b.Batch.Readings {
		place := x.Place()
		found := slices.ContainsFunc(b.Found, func(f finding.Finding) bool { return f.Place.Within(place) })
		if found || lines[lineOf(place)] {
			list = append(list, x)
		}
	}
	return list
}

func lineOf(place source.Place) int { return place.File.Position(place.Start, source.Characters).Line }

// Doubtful are the figures of the batch, by the names of their rows, that come from a reading in doubt.
func (b Batch) Doubtful() map[string]bool {
	out := map[string]bool{}
	mark := func(names ...string) {
		for _, n := range names {
			out[n] = true
		}
	}
	warmest := math.Inf(-1)
	for _, x := range b.Batch.Readings {
		if t := model.Thermometer(x); t != nil && t.Where == vocabulary.PlaceBed {
			warmest = max(warmest, t.Low.SI)
		}
	}
	for _, x := range b.inDoubt() {
		switch t, after := model.Thermometer(x), model.After(x); {
		case t != nil && t.Where == vocabulary.PlaceWater:
			mark("steep water")
		case t != nil && t.Where == vocabulary.PlaceBed && t.Low.SI == warmest:
			mark("warmest bed")
		case model.Clean(x):
			mark("clean malt", "yield as is", "yield, dry", vocabulary.MeasureMoisture)
		case after != nil && after.Kind.Text == string(model.GerminateStage):
			mark("green malt")
		case after != nil && after.Kind.Text == string(model.SoakStep):
			mark("at steep-out")
		case b.last(x, func(x model.Reading) bool { return model.CountOf(x, model.Chit) != nil }):
			mark("chitted")
		case b.last(x, func(x model.Reading) bool { _, ok := seasons.Middle(x); return ok }):
			mark("acrospire at last", "to acrospire 3/4")
		case b.last(x, func(x model.Reading) bool { return model.Rub(x) != "" }):
			mark("rub at last")
		}
	}
	for _, d := range b.Ledger.Doubtful {
		if d.What == ledger.AtCast {
			mark("at steep-out")
		} else {
			mark("clean malt", "yield as is", "yield, dry", vocabulary.MeasureMoisture)
		}
	}
	return out
}

// last tells whether a reading is the last of its kind.
func (b Batch) last(x model.Reading, kind func(model.Reading) bool) bool {
	for i := len(b.Batch.Readings) - 1; i >= 0; i-- {
		if y := b.Batch.Readings[i]; kind(y) {
			return x == y
		}
	}
	return false
}

// standing is how a figure was come by, as the record has it.
func (b Batch) standing(r words.LedgerRow, doubtful map[string]bool) string {
	said := r.Standing
	if lot := r.Label == "raw grain" || r.Label == "moisture as bought"; lot && b.Batch.Sample == nil && b.Ledger.RawMoisture.Standing == seasons.Measured {
		said = "as the house says of the lot; no sample of it was dried for this batch"
	}
	if r.Label == vocabulary.MeasureMoisture && b.Ledger.EndMoisture.Standing == seasons.Reckoned {
		said = "reckoned from the weight of the clean malt"
	}
	if doubtful[r.Label] {
		said = words.Joined(", ", said, "in doubt")
	}
	return said
}

// untilNow is the readings of progress by their lines.
func untilNow(r *progress.Result) map[int]progress.Reading {
	out := map[int]progress.Reading{}
	if r != nil {
		for _, x := range r.Readings {
			out[x.Line] = x
		}
	}
	return out
}
