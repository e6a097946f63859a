package vocabulary

import q "maltwright/lang/quantity"

// AStep is what is asked for where a record names a step by the word that orders it.
const AStep = "a step"

var (
	// recordPlaces are where a temperature of a batch can be read.
	recordPlaces = placesIn(func(Phase) bool { return true })

	whichStep = []Slot{oneOf(AStep, VerbSoak, VerbRest, VerbGerminate, VerbHold, VerbWither, VerbDry, VerbStew, VerbCure, VerbRoast, VerbCool, VerbDeculm),
		optional(single("which of them", q.Number))}

	changedTo = func() Slot {
		s := sensed(Slot{Kind: Amount, Label: "how long, how warm or how much", Dims: []q.Dimension{q.Time, q.Temperature, q.Flow, q.Share, q.Volume, q.Mass}, Range: true, Places: recordPlaces}, changedMuch)
		s.Unless = []string{WithSmoke}
		return s
	}()

	atMoment = Clause{Word: "at", Slots: []Slot{{Kind: Moment, Label: "when"}},
		Doc: "when it was done; the date may be left out if it is that of the line above or the day after"}
	atMomentAlways = Clause{Word: "at", Slots: atMoment.Slots, Required: true, Doc: atMoment.Doc}
)

func kernels(label string) Slot { return single(label, q.Number, q.Count) }

// The record of a batch: what was done and read while it was made.
var batchRows = signed([]Row{
	{Word: "batch", In: blocks(File), Slots: []Slot{{Kind: Text, Label: "its name"}}, Opens: Batch, Grows: true,
		Clauses: []Clause{{Word: "of", Slots: []Slot{named(Process)}, Required: true, Doc: "the process it is made by"}},
		Doc:     "The record of one batch: what was weighed, counted, felt and read while it was made, in the order of the clock.",
		Example: `batch "26-03" of "Loft pale" { began 2026-03-06 07:00 }`},

	{Word: "began", In: blocks(Batch), Slots: []Slot{{Kind: Moment, Label: "date and time of day"}}, Once: true, Needed: true,
		Doc: "When the grain went into the first soak. Times are those of the clock on the wall.", Example: "began 2026-03-06 07:00"},
	{Word: "sample", In: blocks(Batch), Slots: []Slot{single("its weight", q.Mass), filler("dried")}, Once: true,
		Clauses: []Clause{{Word: "to", Slots: []Slot{single("its weight when dry", q.Mass)}, Required: true, Doc: "its weight when drying no longer makes it lighter"}},
		Doc:     "A sample of the raw grain, dried in an oven: the weight that it loses is its moisture.", Example: "sample 20.00 g dried to 17.54 g"},
	bagIn(Batch),
	{Word: "tare", In: blocks(Batch), Slots: []Slot{single("what is weighed along", q.Mass)}, Once: true,
		Doc: "What is weighed with the grain each time: the wet bag where there is one, otherwise the vessel or tray. Every such weight in this record includes it, except one that says what the grain was weighed in.", Example: "tare 8 g"},
	{Word: "weighed", In: blocks(Batch),
		Slots: []Slot{optional(oneOf("of the bag", "bag")), single("its weight", q.Mass), optional(oneOf("without its rootlets", "clean")), filler("malt")},
		Clauses: []Clause{
			{Word: "in", Slots: []Slot{holder}, Doc: "the vessel, floor or kiln that stood on the scale with it; its empty weight is taken off"},
			{Word: "on", Slots: []Slot{named(Scale)}, Doc: "the scale, where the house has several"},
			atMoment, {Word: "after", Slots: whichStep, Doc: "the step that had just ended"}},
		Doc: "The weight of the drained batch, or of the bag; with in, the weight together with the vessel. Clean malt is without its rootlets. The line gives the time, the step, or both.", Example: "weighed 7.48 kg at 2026-03-06 14:00 after soak 1"},
	{Word: "counted", In: blocks(Batch),
		Slots: []Slot{oneOf("what was counted", MeasureChit, MeasureAcrospire), single("chitted, of chit a share too; or no shoot yet", q.Number, q.Count, q.Share),
			optional(kernels("to 1/4")), optional(kernels("to 1/2")), optional(kernels("to 3/4")), optional(kernels("to the whole")), optional(kernels("overgrown"))},
		Clauses: []Clause{{Word: "of", Slots: []Slot{kernels("kernels looked at")}, Doc: "how many kernels were looked at; chit needs it"}, atMomentAlways},
		Doc:     "A count of kernels. For chit, one number or a share, and of how many; for the acrospire six numbers: no shoot yet, up to 1/4 of the kernel, up to 1/2, up to 3/4, up to its whole length, and overgrown.",
		Example: "counted acrospire 2 6 22 55 13 2 at 2026-03-12 08:00"},
	{Word: "felt", In: blocks(Batch), Slots: []Slot{oneOf("how", MeasureRub), oneOf("what it did", RubGummy, RubGritty, RubChalky)}, Clauses: []Clause{atMomentAlways},
		Doc: "How a kernel rubbed out between thumb and finger.", Example: "felt rub chalky at 2026-03-12 08:00"},
	{Word: "read", In: blocks(Batch),
		Slots:   []Slot{placed(Slot{Kind: Amount, Label: "temperature", Dims: []q.Dimension{q.Temperature}, Places: recordPlaces})},
		Clauses: []Clause{atMomentAlways},
		Doc:     "A thermometer, and where it stood.", Example: "read bed 17.2 °C at 2026-03-10 21:00"},
	{Word: "turned", In: blocks(Batch), Clauses: []Clause{atMomentAlways},
		Doc: "The piece was turned.", Example: "turned at 2026-03-10 21:05"},
	{Word: RecordChanged, In: blocks(Batch), NamesStep: true, Slots: whichStep,
		Clauses: []Clause{
			{Word: "to", Slots: []Slot{optional(oneOf("without it", SaidNo)), optional(oneOf("of what", WithAirflow, WithReturns, WithSmoke)), changedTo},
				Required: true, Doc: "what was done instead: for how long, how warm, with how much air or water, in smoke or without"},
			{Word: ClauseBecause, Slots: []Slot{reason}, Required: true, Doc: "why"},
		},
		Doc: "A step that this batch did otherwise than the process says: another time or temperature; on the kiln also airflow 40 m3/h, returns 50 %, smoke or no smoke; and for cool the amount of water.", Example: `changed soak 3 to 5 h because "left for work"`},
})

// bagIn is the marked bag as a record has it, or a process of which every batch has one.
func bagIn(b Block) Row {
	return Row{Word: "bag", In: blocks(b), Slots: []Slot{single("grain in it", q.Mass)}, Once: true,
		Clauses: []Clause{{Word: "at", Slots: []Slot{filler("the"), oneOf("the start", "start")}, Required: true, Doc: "the weight is that of the raw grain"}},
		Doc:     "A marked net bag with a little of the grain, which goes through every step with the batch and is weighed instead of it. The weight is that of the raw grain alone. If the process has a bag, the forecast shows its weight at the end of each step; a record may have another bag.", Example: "bag 100 g at the start"}
}
