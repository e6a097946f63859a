package vocabulary

import q "maltwright/lang/quantity"

var (
	soakWith = Clause{Word: "with", Joins: true, Slots: []Slot{oneOf("with what", WithAir, WithLime, WithAirflow, WithOverflow), optional(sensed(single("how much air or water", q.Flow), wetFlow))},
		Doc: "air keeps the water stirred up all the time, airflow blows so much air through it, an overflow lets so much fresh water run in and off again, lime is against mould and husk bitterness"}
	restWith = Clause{Word: "with", Joins: true, Slots: []Slot{oneOf("with what", WithAirflow, WithSpray), optional(sensed(single("how much air or water", q.Flow), wetFlow))},
		Doc: "airflow draws so much air down through the bed, and its carbon dioxide off; a spray keeps the film on the kernels full, and with so much water has the grain as warm as that"}
	onDay = Clause{Word: "on", Slots: []Slot{named(Floor)}, Required: true, Doc: "where the piece lies"}

	kilnAt = Clause{Word: "at", Not: "from", Slots: []Slot{placed(temperature("how warm", kilnPlaces...))},
		Doc: "the temperature and where it is taken"}
	kilnFrom = Clause{Word: "from", Not: "at", Slots: []Slot{placed(temperature("from and to", kilnPlaces...))},
		Doc: "a rise: from one temperature to the other"}
	kilnOver = Clause{Word: "over", Slots: []Slot{duration}, Doc: "the time the rise takes"}
	kilnWith = Clause{Word: "with", Joins: true, Slots: []Slot{oneOf("with what", WithAirflow, WithReturns, WithSmoke), optional(sensed(single("how much", q.Flow, q.Share), stepAir))},
		Doc: "airflow and returns are others than the kiln's own, for this step; smoke is led through the malt"}
	quenched = Clause{Word: "with", Slots: []Slot{oneOf(WithWater, WithWater), sensed(single("how much", q.Volume, q.Mass), quenchWater)},
		Doc: "so much water is sprayed on the hot malt at the start, to end a roast at once"}
	kilnClauses = []Clause{kilnAt, kilnFrom, kilnOver, kilnWith, forTime, until, allow}
)

// The process and its stages.
var stageRows = []Row{
	{Word: "process", In: blocks(File), Slots: []Slot{{Kind: Text, Label: "its name"}}, Opens: Process, Grows: true,
		Doc: "A whole process, from raw grain to stored malt.", Example: `process "Loft pale" { make pale malt }`},
	{Word: "make", In: blocks(Process), Slots: []Slot{oneOf("the malt", malts...), filler("malt")}, Once: true, Needed: true,
		Doc: "The malt that is wanted. Much is judged by it: a caramel malt is stewed on purpose, and green malt is made when it has grown.", Example: "make pale malt"},
	{Word: "from", In: blocks(Process), Slots: []Slot{sensed(single("weight of grain", q.Mass), charge)},
		Clauses: []Clause{{Word: "of", Slots: []Slot{named(Grain)}, Required: true, Doc: "the lot"}}, Needed: true,
		Doc: "The charge: how much grain, or bought green malt, of which lot. Several lines are lots of one grain that are mixed.", Example: `from 6 kg of "Far field 2026"`},
	{Word: "at", In: blocks(Process), Slots: []Slot{named(Site)}, Once: true,
		Doc: "Where and when the batch is made.", Example: `at "Loft, spring"`},

	{Word: VerbSteep, In: blocks(Process), Opens: Steep, Ordered: true,
		Clauses: []Clause{
			{Word: "in", Joins: true, Slots: []Slot{named(Vessel)}, Doc: "the vessel; among several the grain is shared out by what they hold"},
			{Word: "to", Slots: []Slot{filler("moisture"), ranged("the moisture wanted", moisture...)}, Doc: "the moisture wanted at steep-out"},
		},
		Doc: "Soaks and air rests until the grain has the water it needs to grow. A second steep behind a germinate wets the growing grain again; another germinate follows it.", Example: `steep in "blue tub" to moisture 43 to 45 % { soak 7 h in water at 13 °C }`},
	{Word: VerbGerminate, In: blocks(Process), Opens: Germinate, Ordered: true, Phase: Growing,
		Clauses: []Clause{{Word: onDay.Word, Not: "in", Slots: onDay.Slots, Doc: onDay.Doc}, {Word: "in", Not: "on", Slots: []Slot{named(Vessel)}, Doc: "the vessel that it grows in, which needs an area; grain that was steeped in it stays where it is"}, until, allow, forTime},
		Doc:     "The grain grows in a bed that is kept in a band of temperature and turned. Of `on` and `in` one must stand. Where it is moved to another floor, a second germinate says so.", Example: `germinate on "larch floor" { hold bed at 14 to 17 °C; turn every 8 h; until acrospire at least 3/4; allow 4 to 7 days }`},
	{Word: VerbWither, In: blocks(Process), Opens: Wither, Ordered: true, Phase: Growing, Dries: true, Clauses: []Clause{onDay, until, allow, forTime},
		Doc: "The piece loses water in moving room air, before heat is used.", Example: `wither on "larch floor" { air at 18 to 22 °C; until moisture at most 35 %; allow 12 to 36 h }`},
	{Word: VerbKiln, In: blocks(Process), Opens: Kiln, Ordered: true,
		Clauses: []Clause{{Word: "in", Slots: []Slot{named(KilnFacts)}, Required: true, Doc: "the kiln"}},
		Doc:     "The malt is dried gently, then cured. Malt that is moved to another kiln has a stage for each, and waits for it in the cooling of the one before.", Example: `kiln in "tray kiln" { dry at air-on 50 °C until moisture at most 10 % allow 10 to 30 h; cool to malt 30 °C }`},
	{Word: VerbDeculm, In: blocks(Process), Once: true, Ordered: true, Phase: Drying,
		Clauses: []Clause{{Word: "within", Slots: []Slot{duration}, Doc: "the longest wait after the kiln"}},
		Doc:     "Rubs and sieves the rootlets off, while they are still brittle.", Example: "deculm within 12 h"},
	{Word: VerbStore, In: blocks(Process), Once: true, Ordered: true, Leads: forTime.Word,
		Clauses: []Clause{
			{Word: "in", Slots: []Slot{{Kind: Text, Label: "what it is kept in"}}, Doc: "what it is kept in"},
			{Word: "for", Slots: []Slot{{Kind: Amount, Label: "how long", Dims: []q.Dimension{q.Time}, Bound: true, Range: true}}, Doc: "the rest before it is used"},
		},
		Doc: "The malt rests before it is used.", Example: `store in "lidded drum" for at least 3 weeks`},
	{Word: VerbExpect, In: blocks(Process), By: ByValue, Slots: []Slot{conditionSlot},
		Doc: "A promise that the forecast must keep.", Example: "expect final moisture 3.5 to 4.8 %"},
	{Word: VerbAccept, In: blocks(Process, Steep, Repeat, Germinate, Wither, Kiln, Grain, Site, Vessel, Floor, KilnFacts, Scale, Batch), By: ByValue, Aside: true,
		Slots:   []Slot{{Kind: Choice, Label: "the name of a rule"}},
		Clauses: []Clause{{Word: ClauseBecause, Slots: []Slot{reason}, Required: true, Doc: "why it is right here"}},
		Doc:     "Silences one rule in this block; in that of a grain, a site, a vessel, a floor or a kiln also for whatever uses it, in every process. The reason is required.", Example: `accept gate-not-reached because "the last tray is dried on in the oven"`},

	{Word: VerbRepeat, In: blocks(Steep, Repeat), Opens: Repeat, Ordered: true, Clauses: []Clause{until},
		Slots: []Slot{{Kind: Amount, Label: "how many times", Dims: []q.Dimension{q.Count, q.Number}, Bound: true}, filler("times")},
		Doc:   "Does its steps again, so many times or until something holds. What it waits for is looked at after each step.", Example: "repeat at most 3 times until moisture at least 43 % { soak 7 h in water at 13 °C; rest 9 h in air at 14 °C }"},
	{Word: VerbSoak, In: blocks(Steep, Repeat), Ordered: true, Phase: Steeping, Slots: []Slot{optional(duration)},
		Clauses: []Clause{
			{Word: "in", Slots: []Slot{optional(sensed(single("how much of it", q.Volume, q.Mass), soakedIn)), oneOf("water", "water")}, Doc: "in water, of which it may be said how much: grain and water then come to one temperature"},
			{Word: "at", Slots: []Slot{temperature("how warm", PlaceWater)}, Doc: "the temperature of the water"},
			soakWith, forTime, until, allow,
		},
		Doc: "The grain lies under water; each soak begins in fresh water.", Example: "soak 7 h in water at 13 °C"},
	{Word: VerbRest, In: blocks(Steep, Repeat), Ordered: true, Phase: Steeping, Slots: []Slot{optional(duration)},
		Clauses: []Clause{
			{Word: "in", Slots: []Slot{oneOf("air", "air")}, Doc: "in air"},
			{Word: "at", Slots: []Slot{temperature("how warm", PlaceAir, PlaceBed, PlaceRoom)}, Doc: "the temperature of the air"},
			restWith, forTime, until, allow,
		},
		Doc: "The drained grain lies in air and breathes.", Example: "rest 9 h in air at 14 °C"},
	{Word: VerbAerate, In: blocks(Steep), Once: true,
		Clauses: []Clause{
			every,
			{Word: "for", Slots: []Slot{duration}, Required: true, Doc: "how long the air runs each time"},
		},
		Doc:     "Air is blown through the water of each soak at intervals, by a pump on a timer: the first time comes one interval after the soak begins. A soak with air has it all the time.",
		Example: "aerate every 30 min for 5 min"},

	{Word: VerbHold, In: blocks(Germinate), Ordered: true, Phase: Growing, Leads: forTime.Word, Slots: []Slot{optional(oneOf("what is held", PlaceBed, PlaceRoom))},
		Clauses: []Clause{
			{Word: "at", Not: "from", Slots: []Slot{temperature("the band", PlaceBed, PlaceRoom, PlaceAir)}, Doc: "the band"},
			{Word: "from", Not: "at", Slots: []Slot{temperature("from and to", PlaceBed, PlaceRoom, PlaceAir)}, Doc: "a slow change: from one temperature to the other, up or down"},
			{Word: "over", Slots: []Slot{duration}, Doc: "the time that the change takes"},
			forTime, until, allow,
		},
		Doc: "Keeps the bed, or the room, in a band of temperature, or leads it from one to another: hold bed from 17 to 13 °C over 3 days. Several holds follow one another; the last lasts to the end of the stage. " +
			"A bed is held by the turns that are written, by couching it deeper, and by the heater and the cooler of its floor, as far as they can; a room that is held is the promise that it is heated or cooled.",
		Example: "hold bed at 14 to 17 °C"},
	{Word: VerbTurn, In: blocks(Germinate, Wither), Clauses: []Clause{nowNotAt, atHours, {Word: "by", Slots: []Slot{oneOf("machine", ByMachine)}, Doc: "a machine does it, and nobody comes"}}, Once: true,
		Doc: "Turns the piece, which evens out warmth and water and keeps the rootlets apart: at even intervals, or at times of day.", Example: "turn every 8 h"},
	{Word: VerbSprinkle, In: blocks(Germinate), Slots: []Slot{optional(single("how much water", q.Volume, q.Mass, q.Dose))},
		Clauses: []Clause{
			{Word: "to", Slots: []Slot{filler("moisture"), single("the moisture wanted", moisture...)}, Doc: "as much as brings the piece there"},
			now, while,
		}, Once: true,
		Doc:     "Sprinkles water over the piece and turns it in: so much, or as much as brings it to a moisture; at intervals, or as soon as something holds. Litres for each tonne or kilogram are of the raw grain.",
		Example: "sprinkle 0.3 l every 24 h"},
	{Word: "humidity", In: blocks(Germinate, Wither), Slots: []Slot{sensed(placedAt(ranged("relative humidity", q.Share), PlaceAirOn), pieceHumidity)},
		Doc:     "Relative humidity of the air right over the piece; with air-on in front of it, of the air that a fan blows through the bed. A growing piece that is covered with damp cloth, or lies in a closed box, has 95 % and more. Either stands once.",
		Example: "humidity 95 to 98 %"},
	{Word: VerbAir, In: blocks(Germinate), Ranked: true,
		Clauses: append([]Clause{{Word: "at", Slots: []Slot{placed(temperature("how warm", PlaceAirOn))}, Required: true, Doc: "the temperature of the air as it comes on to the bed"}}, blown...),
		Doc:     "Air that a fan blows through the bed of a floor that has an airflow. Of several lines the first is on whose time and condition hold; where none does, the fan stands.",
		Example: "air at air-on 13 to 14 °C with airflow 1200 m3/h when bed above 15 °C"},
	{Word: VerbAir, In: blocks(Wither), Ranked: true,
		Clauses: append([]Clause{{Word: "at", Slots: []Slot{temperature("how warm", PlaceRoom, PlaceAir, PlaceAirOn)}, Required: true, Doc: "the temperature of the room air, or of the air as it comes on to the bed"}}, blown...),
		Doc:     "The air that passes over the piece, once; or, at air-on, what a fan blows through it, in as many lines as in germinate.", Example: "air at 18 to 22 °C"},
	{Word: "until", In: blocks(Steep), Slots: []Slot{conditionSlot}, Once: true,
		Doc: "Ends the stage when this holds.", Example: "until moisture at least 43 %"},
	{Word: "until", In: blocks(Germinate, Wither), Slots: []Slot{conditionSlot}, Once: true,
		Doc: "Ends the stage when this holds.", Example: "until acrospire at least 3/4 and rub is chalky"},
	{Word: "allow", In: blocks(Germinate, Wither), Slots: []Slot{durationRange}, Once: true,
		Doc: "The guard of the stage: the earliest and the latest time at which it may end.", Example: "allow 4 to 7 days"},
	{Word: "for", In: blocks(Germinate, Wither), Slots: []Slot{duration}, Once: true,
		Doc: "How long the stage takes.", Example: "for 5 days"},

	{Word: VerbDry, In: blocks(Kiln), Ordered: true, Phase: Drying, Dries: true, Leads: forTime.Word, Clauses: kilnClauses,
		Doc: "Dries the malt at one temperature or in a rise.", Example: "dry at air-on 50 °C until moisture at most 25 % allow 6 to 14 h"},
	{Word: VerbStew, In: blocks(Kiln), Ordered: true, Phase: Drying, Leads: forTime.Word, Clauses: kilnClauses,
		Doc: "Keeps the green malt warm and wet, with the air shut off, so that it sugars inside.", Example: "stew at malt 65 °C for 90 min"},
	{Word: VerbCure, In: blocks(Kiln), Ordered: true, Phase: Drying, Dries: true, Leads: forTime.Word, Clauses: kilnClauses,
		Doc: "Heats the dry malt for colour, flavour and keeping.", Example: "cure at air-on 82 °C for 4 h"},
	{Word: VerbRoast, In: blocks(Kiln), Ordered: true, Phase: Drying, Dries: true, Leads: forTime.Word, Clauses: kilnClauses,
		Doc: "Heats malt far beyond what a cure does, for the colour and the taste of roast: in a drum, which keeps it moving. Its time counts from the beginning of the step, warming and all: " +
			"of malt that is to be so long at one warmth let a step before it wait until it is that warm.", Example: "roast at malt 175 °C for 50 min"},
	{Word: VerbCool, In: blocks(Kiln), Ordered: true, Phase: Drying, Clauses: []Clause{
		{Word: "to", Slots: []Slot{placed(temperature("how cool", kilnPlaces...))}, Required: true, Doc: "the temperature to cool to"}, quenched, allow},
		Doc: "Cools the malt with room air; of a roast with water as well.", Example: "cool to malt 30 °C"},
	{Word: VerbStir, In: blocks(Kiln), Clauses: []Clause{every}, Once: true,
		Doc: "Mixes the bed.", Example: "stir every 2 h"},
	{Word: VerbGate, In: blocks(Steep, Germinate), Ordered: true, By: ByValue, Slots: []Slot{conditionSlot}, Clauses: []Clause{allow},
		Doc: "A hold point: the process goes on only when this holds. Before the first hold the piece waits as that has it; behind the last, or behind what ended the steep, it is waited for at the end of the stage.", Example: "gate chit at least 80 %"},
	{Word: VerbGate, In: blocks(Wither, Kiln), Ordered: true, By: ByValue, Slots: []Slot{conditionSlot}, Clauses: []Clause{allow},
		Doc: "A hold point: the process goes on only when this holds.", Example: "gate moisture at most 10 %"},
}
