package vocabulary

import (
	"slices"

	q "maltwright/lang/quantity"
)

var (
	delivery = bandsOf("a delivery", "1 g to 100000 t", "100 g to 5000 t", practice)

	byPerson = Clause{Word: ClauseBy, Slots: []Slot{{Kind: Text, Label: "who"}}, Doc: "who did it, or wrote it down"}
)

// The lot as it came in, and what a batch has besides its readings.
var recordRows = slices.Concat([]Row{
	bagIn(Process),
	{Word: "delivered", In: blocks(Grain), Aside: true, Slots: []Slot{sensed(single("its weight", q.Mass), delivery)},
		Clauses: []Clause{
			{Word: "from", Slots: []Slot{{Kind: Text, Label: "who grew or sold it"}}, Doc: "who grew or sold it"},
			{Word: "on", Slots: []Slot{{Kind: Date, Label: "the date"}}, Doc: "when it came in"},
			{Word: "as", Slots: []Slot{{Kind: Text, Label: "its number"}}, Doc: "the number of the delivery, as its papers have it"},
		},
		Doc:     "Grain of this lot that came in. The records of batches say how much they took; the rest is the stock.",
		Example: `delivered 2.5 t from "Hill farm" on 2026-02-01 as "L-118"`},
	{Word: VerbStore, In: blocks(Grain), Once: true, Aside: true,
		Clauses: []Clause{{Word: "in", Slots: []Slot{{Kind: Text, Label: "where it lies"}}, Required: true, Doc: "where it lies"}},
		Doc:     "Where the lot lies.", Example: `store in "silo 2"`},
}, signed([]Row{
	{Word: "from", In: blocks(Batch), Slots: []Slot{sensed(single("weight of grain", q.Mass), charge)},
		Clauses: []Clause{{Word: "of", Slots: []Slot{named(Grain)}, Required: true, Doc: "the lot"}},
		Doc:     "The charge and the lot of this batch, instead of those of its process. Several lines are lots of one grain that are mixed.", Example: `from 5.8 kg of "Far field 2026"`},
	{Word: VerbRemark, In: blocks(Batch), Slots: []Slot{{Kind: Text, Label: "what was noticed"}}, Clauses: []Clause{atMomentAlways},
		Doc: "Something that was noticed, in words.", Example: `remark "smells of cucumber" at 2026-03-10 08:00`},
}), []Row{
	{Word: RecordPinned, In: blocks(Batch), Once: true, Slots: []Slot{{Kind: Text, Label: "twelve signs"}},
		Clauses: []Clause{{Word: "from", Slots: []Slot{{Kind: Text, Label: "a revision of git"}}, Doc: "the revision of git that holds this text"}},
		Doc:     "The text of its process when the batch began: a fingerprint of the process and of the parts of the house that it uses. Layout and comments do not count. The command begin writes it.",
		Example: `pinned "3f9a2c71d0e4" from "1a2b3c4"`},
	{Word: "tested", In: blocks(Batch), By: ByValue,
		Slots: []Slot{oneOf("what was tested", analysisWords()...), {Kind: Amount, Label: "what was found", Dims: analysisDims()}},
		Clauses: []Clause{
			{Word: ClauseBy, Slots: []Slot{{Kind: Text, Label: "the method"}}, Doc: "the method"},
			atMomentAlways,
		},
		Doc:     "What a laboratory found in the finished malt.",
		Example: `tested friability 86 % by "EBC 4.15" at 2026-04-01 10:00`},
})

// signed are rows that may end in who did it.
func signed(rows []Row) []Row {
	for i := range rows {
		if slices.Contains(rows[i].In, Batch) {
			rows[i].Clauses = append(slices.Clip(rows[i].Clauses), byPerson)
		}
	}
	return rows
}
