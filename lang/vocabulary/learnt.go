package vocabulary

import (
	"slices"

	q "maltwright/lang/quantity"
)

var (
	errorOfFactor = Clause{Word: "error", Slots: []Slot{single("its standard error", q.Number)},
		Doc: "the standard error of the factor; where it is left out the usual spread of the model stays"}
	scatterOfFactor = Clause{Word: "scatter", Slots: []Slot{single("the standard deviation of its batches about it", q.Number)},
		Doc: "by how much batches of this house differ, as a standard deviation about the factor; where it is left out they are taken to differ by half of the usual spread"}
	batchesOfFactor = Clause{Word: "batches", Slots: []Slot{single("how many", q.Number)},
		Doc: "how many batches it rests on; learn --from goes on from there"}
	ofBatches = []Clause{errorOfFactor, scatterOfFactor, batchesOfFactor}
	factor    = single("times as fast as the model", q.Number)
)

// What finished batches taught about a house.
var learntRows = []Row{
	{Word: "house", In: blocks(File), Slots: []Slot{{Kind: Text, Label: "its name"}}, Opens: House, Grows: true,
		Doc:     "What finished batches taught about this house: factors by which its lots and kilns differ from the model. Every forecast that sees the block uses it, and forecast and check say so; there is at most one.",
		Example: `house "Loft" { growth 1.06 error 0.04 }`},
	{Word: "growth", In: blocks(House), Slots: []Slot{factor}, Clauses: ofBatches, Once: true,
		Doc: "How fast grain grows here: 1 as in the model, more is faster; 0.2 to 5.", Example: "growth 1.06 error 0.04 scatter 0.07 batches 12"},
	{Word: "respiration", In: blocks(House), Slots: []Slot{single("times as much as the model", q.Number)}, Clauses: ofBatches, Once: true,
		Doc: "How much the growing grain breathes here, and how much of its substance it burns: 1 as in the model; 0.2 to 5.", Example: "respiration 0.95 error 0.15"},
	{Word: "withering", In: blocks(House), Slots: []Slot{factor}, Clauses: ofBatches, Once: true,
		Doc: "How fast green malt withers here: 1 as in the model, more is faster; 0.2 to 5.", Example: "withering 1.15 error 0.12"},
	{Word: "uptake", In: blocks(House), Slots: []Slot{factor}, By: ByName,
		Clauses: append(slices.Clip(ofBatches), Clause{Word: "of", Slots: []Slot{named(Grain)}, Required: true, Doc: "the lot"}),
		Doc:     "How fast one lot takes up water: 1 as in the model; 0.2 to 5. Once for each lot.", Example: `uptake 1.08 error 0.06 of "Far field 2026"`},
	{Word: "husk-water", In: blocks(House), Slots: []Slot{single("times as much as the model", q.Number)}, By: ByName,
		Clauses: append(slices.Clip(ofBatches), Clause{Word: "of", Slots: []Slot{named(Grain)}, Required: true, Doc: "the lot"}),
		Doc:     "How much water the husk and the surface of one lot hold: 1 as in the model; 0.2 to 5. Once for each lot.", Example: `husk-water 1.12 error 0.09 of "Far field 2026"`},
	{Word: "chit", In: blocks(House), Slots: []Slot{factor}, By: ByName,
		Clauses: append(slices.Clip(ofBatches), Clause{Word: "of", Slots: []Slot{named(Grain)}, Required: true, Doc: "the lot"}),
		Doc:     "How fast one lot chits, apart from how fast it grows: 1 as in the model; 0.2 to 5. Once for each lot.", Example: `chit 0.85 error 0.12 of "Far field 2026"`},
	{Word: "drying", In: blocks(House), Slots: []Slot{factor}, By: ByName,
		Clauses: append(slices.Clip(ofBatches), Clause{Word: "of", Slots: []Slot{named(KilnFacts)}, Required: true, Doc: "the kiln"}),
		Doc:     "How fast malt dries on one kiln: 1 as in the model; 0.2 to 5. Once for each kiln.", Example: `drying 0.91 error 0.05 of "tray kiln"`},
	{Word: "thermometer", In: blocks(House), Slots: []Slot{single("what it shows too much", q.TemperatureDifference)},
		Clauses: []Clause{{Word: "error", Slots: []Slot{single("its standard error", q.TemperatureDifference)}, Doc: "the standard error of the difference"}, batchesOfFactor}, Once: true,
		Doc: "How much too warm the thermometer of the house shows; negative where it shows too cold; at most 10 °C. It corrects the readings of records only: the temperatures of a process are true ones.", Example: "thermometer 0.8 °C error 0.4 °C"},
}
