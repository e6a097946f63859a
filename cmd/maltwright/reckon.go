package main

import (
	"errors"

	"maltwright/cmd/answer/sums"
	"maltwright/cmd/words"
	"maltwright/cmd/write/json"
	"maltwright/cmd/write/text"
	"maltwright/lang/quantity"
	"maltwright/sim/reckon"
)

// Reckon does the sums of the scale and the counting board.
type Reckon struct {
	Format string `enum:"text,json" default:"text" help:"How to write: text or json."`

	Moisture    ReckonMoisture    `cmd:"" help:"Moisture of samples weighed before and after the oven."`
	Target      ReckonTarget      `cmd:"" help:"The weight at which a batch holds the moisture you want."`
	Weight      ReckonWeight      `cmd:"" help:"The moisture of a batch from its weight."`
	Basis       ReckonBasis       `cmd:"" help:"A moisture on the whole weight as one on the dry basis, or back."`
	Yield       ReckonYield       `cmd:"" help:"What became of the barley: yield and dry matter lost."`
	Germination ReckonGermination `cmd:"" help:"What a count of germinated kernels says about the lot."`
}

// Help is the longer help of the command.
func (Reckon) Help() string {
	return `Each answer stands in the unit you gave, with its working below, so that it can
be followed with pencil and paper. Any unit of weight will do: see
maltwright explain units. A moisture is of the whole weight unless it says dry
basis. Write a quantity in one piece (6kg), in quotes ("5 lb 4 oz") or apart
(6 kg); the words at, to and of may stand between.

Examples:

  maltwright reckon moisture 20.00g 17.54g
  maltwright reckon target 6kg 12.4% 44%
  maltwright reckon weight 9.1kg --from 6kg 12.4%

With --format json: "reckoning" names the sum; the figures stand by their keys, in
kg and per cent; "working" and "notes" hold the lines of the text.

Exit code: 0 reckoned, 2 the command line cannot be understood, or what it says
cannot be.`
}

// ReckonMoisture is the oven sample.
type ReckonMoisture struct {
	Weights typed       `arg:"" name:"weight" help:"Wet weight and dried weight, of one sample or of several in turn."`
	Tare    oneQuantity `help:"Weight of the empty dish that stands in both." placeholder:"WEIGHT"`
}

// Help is the longer help of the command.
func (ReckonMoisture) Help() string {
	return `Grind a sample, weigh it, dry it in the oven until it gets no lighter, and weigh
it again: what went was water. Several samples give the mean and their spread.

Examples:

  maltwright reckon moisture 20.00g 17.54g
  maltwright reckon moisture 20.00g 17.54g 21.10g 18.47g
  maltwright reckon moisture 45.20g 42.74g --tare 25.20g

Keys of the figures: moisture_wb_pct, lowest_wb_pct, highest_wb_pct, deviation_pct,
samples_wb_pct.`
}

// Run reckons and writes.
func (c ReckonMoisture) Run(w *World, all *Reckon) error {
	list, err := c.Weights.read(func(n int) bool { return n > 0 && n%2 == 0 }, "a wet and a dried weight for each sample")
	if err == nil {
		err = gramsMissing(list)
	}
	if err != nil {
		return err
	}
	tare, err := c.Tare.read("--tare")
	if err != nil {
		return err
	}
	var samples []reckon.Sample
	for i := 0; i < len(list); i += 2 {
		samples = append(samples, reckon.Sample{Wet: list[i], Dried: list[i+1]})
	}
	r, err := sums.OfSamples(samples, tare)
	return all.answer(w, r, err)
}

// ReckonTarget is the weight to wait for.
type ReckonTarget struct {
	Batch typed       `arg:"" name:"quantity" help:"Weight and moisture of the batch now, and the moisture wanted."`
	Lost  oneQuantity `help:"Dry matter lost on the way, such as 1 %; none if left out." placeholder:"SHARE"`
}

// Help is the longer help of the command.
func (ReckonTarget) Help() string {
	return `Shows what the scale reads when the moisture you want is reached: in the steep,
where the batch gains water, and in the kiln, where it loses it. Drain the batch
before you weigh it. A steep washes out about 1 % of the dry matter.

Examples:

  maltwright reckon target 6kg 12.4% 44%
  maltwright reckon target 6 kg at 12.4 % to 44 % --lost 1%
  maltwright reckon target "13 lb 4 oz" 12.4% 44%
  maltwright reckon target 8.9kg 43% 4.5% --lost 6%

Keys of the figures: weight_kg, change_kg (below 0 where weight is lost),
dry_matter_kg.`
}

// Run reckons and writes.
func (c ReckonTarget) Run(w *World, all *Reckon) error {
	list, err := c.Batch.read(exactly(3), "a weight, its moisture and the moisture wanted")
	if err == nil {
		err = unitsMissing("target", list, func(i int) bool { return i > 0 })
	}
	if err != nil {
		return err
	}
	lost, err := c.Lost.read("--lost")
	if err != nil {
		return err
	}
	r, err := sums.ToMoisture(reckon.Start{Weight: list[0], Moisture: list[1]}, list[2], lost)
	return all.answer(w, r, err)
}

// ReckonWeight is what a weight tells of the moisture.
type ReckonWeight struct {
	Now  typed       `arg:"" name:"weight" help:"Weight of the drained batch now."`
	From startWords  `required:"" help:"Weight and moisture of the same batch earlier, such as --from 6kg 12.4%." placeholder:"WEIGHT MOISTURE"`
	Lost oneQuantity `help:"Dry matter lost since, such as 5 %; none if left out." placeholder:"SHARE"`
}

// Help is the longer help of the command.
func (ReckonWeight) Help() string {
	return `Water comes and goes, but the dry matter of the batch is what it was, less what
the growing kernels have burnt and washed out. Grain that has grown and is reckoned
without that loss seems drier than it is.

Examples:

  maltwright reckon weight 9.1kg --from 6kg 12.4%
  maltwright reckon weight 5.3kg --from 6kg 12.4% --lost 8%

Keys of the figures: moisture_wb_pct, water_kg, dry_matter_kg.`
}

// Run reckons and writes.
func (c ReckonWeight) Run(w *World, all *Reckon) error {
	now, err := c.Now.read(exactly(1), "the weight now")
	if err != nil {
		return err
	}
	from, err := typed(c.From).read(exactly(2), "--from with a weight and its moisture")
	if err == nil {
		err = unitsMissing("weight", []quantity.Quantity{now[0], from[0], from[1]}, func(i int) bool { return i == 2 }, "--from")
	}
	if err != nil {
		return err
	}
	lost, err := c.Lost.read("--lost")
	if err != nil {
		return err
	}
	r, err := sums.OfWeight(now[0], reckon.Start{Weight: from[0], Moisture: from[1]}, lost)
	return all.answer(w, r, err)
}

func exactly(want int) func(int) bool { return func(n int) bool { return n == want } }

// answer writes the answer, or says what cannot be.
func (r *Reckon) answer(w *World, a sums.Result, err error) error {
	var refusal *reckon.Error
	switch {
	case errors.As(err, &refusal):
		return usage("%w", err)
	case err != nil:
		return err
	case r.Format == "json":
		err = json.Write(w.Out, a, words.House{}.Say)
	default:
		err = text.Sums(w.Out, a, w.options())
	}
	if err != nil {
		return failed("cannot write: %v", err)
	}
	return nil
}
