package main

import (
	"strings"

	"maltwright/cmd/answer/sums"
	"maltwright/sim/reckon"
)

// ReckonBasis turns one basis of moisture into the other.
type ReckonBasis struct {
	Moisture typed `arg:"" name:"moisture" help:"A moisture: 12.4% of the whole weight, or \"14.2 % dry basis\"."`
}

// Help is the longer help of the command.
func (ReckonBasis) Help() string {
	return `A maltster counts the water in 100 kg of grain; a drying table often counts it
for 100 kg of dry matter, which gives the larger number.

Examples:

  maltwright reckon basis 12.4%
  maltwright reckon basis "14.2 % dry basis"

Keys of the figures: moisture_wb_pct, moisture_db_pct.`
}

// Run reckons and writes.
func (c ReckonBasis) Run(w *World, all *Reckon) error {
	list, err := c.Moisture.read(exactly(1), "one moisture")
	if err != nil {
		return err
	}
	r, err := sums.Bases(list[0])
	return all.answer(w, r, err)
}

// ReckonYield compares malt with its barley.
type ReckonYield struct {
	Batch typed `arg:"" name:"quantity" help:"Weight and moisture of the barley, then of the malt made of it."`
}

// Help is the longer help of the command.
func (ReckonYield) Help() string {
	return `Weigh the malt without its rootlets. Weights of a thousand kernels before and after
serve as well as those of the batch, and forget what was spilt or thrown away.

Examples:

  maltwright reckon yield 42g 15% 32g 2%
  maltwright reckon yield 6 kg at 12.4 % 4.9 kg at 4.5 %

Keys of the figures: yield_as_is_pct, yield_dry_malt_pct, yield_dry_pct,
dry_matter_lost_pct.`
}

// Run reckons and writes.
func (c ReckonYield) Run(w *World, all *Reckon) error {
	list, err := c.Batch.read(exactly(4), "weight and moisture of the barley, then of the malt")
	if err != nil {
		return err
	}
	r, err := sums.OfMalt(reckon.Start{Weight: list[0], Moisture: list[1]}, reckon.Start{Weight: list[2], Moisture: list[3]})
	return all.answer(w, r, err)
}

// ReckonGermination is the counting of kernels.
type ReckonGermination struct {
	Counts typed `arg:"" name:"count" help:"Germinated kernels, and all kernels counted: 95 of 100."`
}

// Help is the longer help of the command.
func (ReckonGermination) Help() string {
	return `A hundred kernels are a sample: the lot may well be better or worse. The interval
shows by how much, and so whether it is worth counting more.

Examples:

  maltwright reckon germination 95 of 100
  maltwright reckon germination 381 of 400

Keys of the figures: germination_pct, low_pct, high_pct.`
}

// Run reckons and writes.
func (c ReckonGermination) Run(w *World, all *Reckon) error {
	counts := c.Counts
	if len(counts) == 1 { // 95/100 would read as a fraction
		counts = strings.SplitN(counts[0], "/", 2)
	}
	list, err := counts.read(exactly(2), "the germinated kernels and all kernels, such as 95 of 100")
	if err != nil {
		return err
	}
	r, err := sums.OfCount(list[0], list[1])
	return all.answer(w, r, err)
}
