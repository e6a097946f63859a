package words

import (
	"slices"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/ledger"
	"maltwright/sim/seasons"
)

// The marks of figures, told below the table where they stand in it.
const (
	reckonedMark = "~"
	overMark     = ">"
	underMark    = "≤"

	impossibleMark = "!"
)

// Mark is what stands in front of a figure that was come by otherwise than by measuring it, "" where nothing does.
func Mark(s seasons.Standing) string { return marks[s] }

var marks = map[seasons.Standing]string{seasons.Reckoned: reckonedMark, seasons.Over: overMark, seasons.Under: underMark, seasons.Impossible: impossibleMark}

// oneProcess tells whether all batches are of one process.
func oneProcess(list []ledger.Batch) bool {
	return !slices.ContainsFunc(list, func(b ledger.Batch) bool { return b.Process != list[0].Process })
}

// measure is a line of the table.
type measure struct {
	group, label string // the unit comes behind the label
	of           func(*ledger.Batch) seasons.Figure
	scale        Scale
	kind         lineKind
}

// lineKind is when a line stands in the table, and whether it is summed up.
type lineKind int

const (
	inAll      lineKind = iota
	tallied             // it is not summed up
	whereKnown          // it is left out where no batch has it
)

// linesOf are the lines of the table of some batches.
func linesOf(h House, list []ledger.Batch) []measure {
	return slices.DeleteFunc(measures(h, float64(list[0].Charge)), func(m measure) bool {
		return m.kind == whereKnown && !slices.ContainsFunc(list, func(b ledger.Batch) bool { return m.of(&b).Standing != seasons.Missing })
	})
}

// measures are the lines of the table, in the order of the batch. Weights are those of the
// first batch.
func measures(h House, charge float64) []measure {
	warmth, weight, energy := h.Warmth(), h.Weights(charge), h.EnergyEach(answer.Kilograms(charge))
	return []measure{
		{"green malt", "moisture as bought", bought(true), Shares, whereKnown},
		{"steep", "raw grain", bought(false), Shares, inAll},
		{"steep", "steep water", func(b *ledger.Batch) seasons.Figure { return b.Water.Plain() }, warmth, inAll},
		{"steep", "to steep-out", func(b *ledger.Batch) seasons.Figure { return b.Cast.Plain() }, Times, inAll},
		{"steep", "at steep-out", func(b *ledger.Batch) seasons.Figure { return b.CastMoisture.Plain() }, Shares, inAll},
		{"floor", "chitted", func(b *ledger.Batch) seasons.Figure { return b.Chit.Plain() }, Shares, inAll},
		{"floor", "counted after", func(b *ledger.Batch) seasons.Figure { return b.ChitCounted.Plain() }, Times, inAll},
		{"floor", "warmest bed", func(b *ledger.Batch) seasons.Figure { return b.BedWarmest.Plain() }, warmth, inAll},
		{"floor", "to acrospire 3/4", func(b *ledger.Batch) seasons.Figure { return b.ThreeQuarters.Plain() }, Times, inAll},
		{"floor", "acrospire at last", func(b *ledger.Batch) seasons.Figure { return b.Acrospire.Plain() }, Kernels, inAll},
		{"floor", "on the floor", func(b *ledger.Batch) seasons.Figure { return b.Floor.Plain() }, Times, inAll},
		{"floor", "green malt", func(b *ledger.Batch) seasons.Figure { return b.GreenMalt.Plain() }, weight, inAll},
		{"kiln", "to the break", func(b *ledger.Batch) seasons.Figure { return b.Break.Plain() }, Times, inAll},
		{"kiln", "on the kiln", func(b *ledger.Batch) seasons.Figure { return b.Kiln.Plain() }, Times, inAll},
		{"malt", "clean malt", func(b *ledger.Batch) seasons.Figure { return b.Malt.Plain() }, weight, inAll},
		{"malt", "yield as is", func(b *ledger.Batch) seasons.Figure { return b.Yield.Plain() }, Shares, inAll},
		{"malt", "yield, dry", func(b *ledger.Batch) seasons.Figure { return b.DryYield.Plain() }, Shares, inAll},
		{"malt", "moisture", func(b *ledger.Batch) seasons.Figure { return b.EndMoisture.Plain() }, Shares, inAll},
		{"malt", "fuel", func(b *ledger.Batch) seasons.Figure { return b.Fuel.Plain() }, energy, whereKnown},
		{"malt", "power", func(b *ledger.Batch) seasons.Figure { return b.Power.Plain() }, energy, whereKnown},
		{"malt", "extract", func(b *ledger.Batch) seasons.Figure { return b.Extract.Plain() }, Shares, whereKnown},
		{"malt", "friability", func(b *ledger.Batch) seasons.Figure { return b.Friability.Plain() }, Shares, whereKnown},
		{"malt", "colour", func(b *ledger.Batch) seasons.Figure { return b.Colour.Plain() }, Colours, whereKnown},
		{"malt", "diastatic power", func(b *ledger.Batch) seasons.Figure { return b.Diastatic.Plain() }, Diastatics, whereKnown},
		{"malt", "beta-glucan", func(b *ledger.Batch) seasons.Figure { return b.Glucan.Plain() }, Dissolved, whereKnown},
		{"malt", "protein", func(b *ledger.Batch) seasons.Figure { return b.Protein.Plain() }, Shares, whereKnown},
		{"malt", "DON", func(b *ledger.Batch) seasons.Figure { return b.DON.Plain() }, Contents, whereKnown},
		{"malt", "NDMA", func(b *ledger.Batch) seasons.Figure { return b.NDMA.Plain() }, Traces, whereKnown},
		{"malt", "whole batch", func(b *ledger.Batch) seasons.Figure { return b.Total.Plain() }, Times, inAll},
		{"record and process", "steps changed", func(b *ledger.Batch) seasons.Figure { return tally(b.StepsChanged) }, Counted, tallied},
		{"record and process", "findings, record", func(b *ledger.Batch) seasons.Figure { return tally(b.RecordFindings) }, Counted, tallied},
		{"record and process", "faults, process", func(b *ledger.Batch) seasons.Figure { return tally(b.ProcessFaults) }, Counted, tallied},
		{"record and process", "cautions, process", func(b *ledger.Batch) seasons.Figure { return tally(b.ProcessCautions) }, Counted, tallied},
	}
}

// bought is the moisture of the lot, of batches that are of bought green malt or of those that
// are not.
func bought(green bool) func(*ledger.Batch) seasons.Figure {
	return func(b *ledger.Batch) seasons.Figure {
		if (b.Written != nil && b.Written.Grain.Grown()) != green {
			return seasons.Figure{}
		}
		return b.RawMoisture.Plain()
	}
}

func tally(n int) seasons.Figure {
	return seasons.Figure{Value: float64(n), Standing: seasons.Measured}
}

// feltBehind is the line behind which the last feel stands.
const feltBehind = "green malt"

func (m measure) head() string {
	label := "  " + m.label
	if m.scale.Unit != "" {
		label += ", " + m.scale.Unit
	}
	return label
}

// cell writes a figure with its mark.
func (m measure) cell(f seasons.Figure) string {
	if f.Standing == seasons.Missing {
		return None
	}
	return marks[f.Standing] + m.scale.Write(f.Value)
}

// summary is a column that sums the batches up.
type summary struct {
	head string
	of   func([]seasons.Figure) seasons.Figure
	more bool // it is a difference
}

// summaries are the columns behind so many batches, or more.
var summaries = [...][]summary{
	2: {{"change", seasons.Change, true}},
	3: {{"mean", seasons.Mean, false}, {"lowest", seasons.Lowest, false}, {"highest", seasons.Highest, false}},
}

// cell sums figures up, with as many digits as the first of them has.
func (c summary) cell(m measure, all []seasons.Figure) string {
	f := c.of(all)
	first := slices.IndexFunc(all, seasons.Figure.Known)
	switch {
	case f.Standing == seasons.Missing:
		return ""
	case c.more:
		return marks[f.Standing] + m.scale.Change(f.Value, all[first].Value)
	}
	return marks[f.Standing] + m.scale.Near(f.Value, all[first].Value)
}
