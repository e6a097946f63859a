package vocabulary

import "slices"

// Gloss says what a word is that a file can hold, or that the program says, for somebody
// who stands before it: what it is, and how it looks and feels.
type Gloss struct {
	Word    string
	Doc     string   // what it is; "" where the row or the measure of the word says so
	Looks   string   // how it looks, feels and smells; common practice
	Drawing []string // of at most 36 columns
}

// Glossary lists the words.
func Glossary() []Gloss {
	return slices.Concat(seenGlosses, placeGlosses, factGlosses, maltGlosses, joinGlosses, termGlosses)
}

// GlossOf gives what there is to say of a word.
func GlossOf(word string) (Gloss, bool) {
	list := Glossary()
	i := slices.IndexFunc(list, func(g Gloss) bool { return g.Word == word })
	if i < 0 {
		return Gloss{}, false
	}
	return list[i], true
}

// seenGlosses are of what is judged by eye and hand.
var seenGlosses = []Gloss{
	{Word: MeasureChit, Looks: "a white point as small as a pinhead comes out at the root end of the kernel; a kernel has chitted when you see it, however short it is",
		Drawing: []string{
			"   ________        ________",
			"  /        \\      /        \\",
			" (          )    (          )o",
			"  \\________/      \\________/",
			"   not yet         chitted"}},
	{Word: MeasureAcrospire, Looks: "slit the husk along the back of the kernel with a nail, or look through the wet husk: the shoot lies there as a pale ridge, from the root end on. Take its length as a part of the kernel's; count how far each of 50 to 100 kernels has grown",
		Drawing: []string{
			"root end",
			"  [====            ]   1/4",
			"  [========        ]   1/2",
			"  [============    ]   3/4",
			"  [================]   1, whole",
			"  [================]== overgrown"}},
	{Word: MeasureRub, Looks: "halve a kernel, take the inside between thumb and finger and rub it out, from the root end to the tip; try ten"},
	{Word: RubGummy, Doc: "the inside smears like dough or rolls into a ball: wet, and not broken down yet"},
	{Word: RubGritty, Doc: "the inside leaves hard grains between the fingers: partly broken down, most often hard at the tip"},
	{Word: RubChalky, Doc: "the inside rubs out to a soft white paste that leaves a mark like chalk, from end to end: broken down"},
	{Word: MeasureBreak, Looks: "while the bed holds free water, the air leaves it cool and damp. When the drying front comes through at the top, air-off warms and no longer fogs a cold glass: that is the break",
		Drawing: []string{
			"air-on   ______________________",
			"                          _____",
			"                         /",
			"air-off  _______________/",
			"                       ^ the break",
			"         hours ->"}},
	{Word: MeasureMoisture, Looks: "steeped grain of 43 to 46 % can be bent over a nail and pressed flat with a white smear; dry malt of 5 % cracks between the teeth"},
	{Word: VerbWither, Looks: "the rootlets shrivel and turn brown, the piece loses its gloss and smells of cucumber, then of hay"},
	{Word: VerbDeculm, Looks: "rootlets that are dry and brittle break off when malt is rubbed between the palms; they are bitter and draw water"},
	{Word: "turned", Looks: "lift and loosen the piece from the bottom up, until no two rootlets hold together: it cools, and the air between the kernels is fresh"},
}

// placeGlosses are of places where a temperature is taken.
var placeGlosses = []Gloss{
	{Word: PlaceAirOn, Doc: "the air that goes into the bed, warm and dry; its thermometer hangs right below the malt, or where the warm air comes in",
		Drawing: []string{
			"  ^   ^   ^   ^    air-off",
			" ~~~~~~~~~~~~~~~   cool, damp",
			" |  wet  malt  |",
			" |- - front - -|",
			" |  dry  malt  |",
			" ===============   floor",
			"  ^   ^   ^   ^    air-on",
			"                   warm, dry"}},
	{Word: MeasureAirOff, Looks: "hold a hand over the bed: cool and damp as long as the malt is wet. Its thermometer hangs just above the malt"},
	{Word: PlaceOven, Doc: "the air of an oven without a fan, or what its dial is set to; the malt stays cooler until it is dry"},
	{Word: MeasureMalt, Looks: "push a thin probe into the middle of the malt; on trays let it lie flat in it"},
	{Word: MeasureBed, Looks: "push a thin probe into the middle of the piece, not to the bottom and not into a heap's edge"},
	{Word: PlaceRoom, Doc: "the air of the room in which the grain grows, away from the piece and from a heater"},
	{Word: PlaceWater, Looks: "the water of a soak, stirred; measured at the start and at the end"},
}

// factGlosses are of words that facts of a house can be.
var factGlosses = []Gloss{
	{Word: WallsBrick, Doc: "walls of brick: they take up heat at the start, and give it back when the fire is out"},
	{Word: WallsMetal, Doc: "walls of sheet metal: warm at once, and they lose heat fast where nothing insulates them"},
	{Word: WallsStone, Doc: "walls of stone or concrete: much heat goes into them at the start"},
	{Word: WithInsulation, Doc: "a layer behind the walls that keeps the heat in"},
	{Word: DoorAjar, Doc: "the door of an oven stands open by a gap, so that damp air leaves; a wooden spoon makes 2 to 3 cm"},
	{Word: FiredElectric, Doc: "heated by electricity"},
	{Word: FiredGas, Doc: "heated by a gas burner: carbon monoxide and fire are its dangers, and local codes come first"},
	{Word: FiredOil, Doc: "heated by an oil burner: carbon monoxide and fire are its dangers, and local codes come first"},
	{Word: FiredPeat, Doc: "heated by a peat fire, whose smoke may go through the malt"},
	{Word: FiredSolar, Doc: "heated by the sun"},
	{Word: FiredWood, Doc: "heated by a wood fire; of walls, boards or planks"},
	{Word: FlueDirect, Doc: "the gas of the fire passes through the malt; with a hot clean flame nitrosamines (NDMA) form in it"},
	{Word: FlueIndirect, Doc: "the fire heats the air through a wall, and its gas leaves by a flue"},
	{Word: DraughtNatural, Doc: "warm air rises through the bed by itself"},
	{Word: DraughtStill, Doc: "no fan: an oven whose damp air leaves by a vent or a gap of the door"},
	{Word: SaidYes, Doc: "it is so"}, {Word: SaidNo, Doc: "not so; before smoke: without it"},
	{Word: SaidNone, Doc: "it was looked for, and not found"},
	{Word: SaidFound, Doc: "it was found: such grain is not malted for food"},
	{Word: SaidUnknown, Doc: "it is not known; the checker says what to do then"},
	{Word: MaltKilned, Doc: "malt that is dried already, bought or made before; its process only roasts it"},
	{Word: "lime", Doc: "slaked lime in the first soak, against mould and the bitterness of husks. It burns eyes and skin: goggles and gloves"},
	{Word: WithSpray, Doc: "water sprayed on the draining grain in a rest, which cools it and keeps its film of water full"},
	{Word: WithOverflow, Doc: "fresh water runs in at the bottom, and the old water off at the top"},
	{Word: WithSmoke, Doc: "smoke of peat or wood passes through the malt in this step; most stays on damp malt"},
	{Word: ByMachine, Doc: "a machine does it, and nobody must come"},
	{Word: "start", Doc: "the raw grain, before the first soak"},
	{Word: "dried", Doc: "of a sample: weighed again after the oven"},
	{Word: "clean", Doc: "of malt: without its rootlets"},
	{Word: "bag", Doc: "a marked bag of the raw grain, steeped and weighed with the batch, which shows the moisture without an oven"},
	{Word: "barley", Doc: "the usual malting grain; a husk on each kernel"}, {Word: "wheat", Doc: "has no husk, drinks fast and lies dense"},
	{Word: "spelt", Doc: "a wheat in its husk"}, {Word: "rye", Doc: "small kernels without husk, sticky when wet"}, {Word: "triticale", Doc: "a cross of wheat and rye"},
	{Word: "oats", Doc: "a thick husk, much of the weight"}, {Word: "sorghum", Doc: "a grain of hot lands; it wants warm water and a warm bed, and its rootlets hold cyanide: take them all off"},
	{Word: "millet", Doc: "very small kernels of hot lands"}, {Word: "maize", Doc: "corn in some lands; very large kernels that drink slowly, grown warm"},
	{Word: "buckwheat", Doc: "no cereal; soft wet kernels that slime when steeped long"},
}

// maltGlosses are of malts that a process can make.
var maltGlosses = []Gloss{
	{Word: "pilsner", Doc: "the palest malt: cured gently"}, {Word: "pale", Doc: "pale malt for most beers, cured at 80 to 85 °C or so"},
	{Word: "vienna", Doc: "cured warmer than pale malt; golden"}, {Word: "munich", Doc: "grown longer and cured hot while still a little damp; amber in the glass, bready"},
	{Word: MaltGreen, Doc: "malt that has grown and is not dried: it spoils within a day or two"},
	{Word: "smoked", Doc: "dried in the smoke of wood or peat"}, {Word: "acid", Doc: "malt soured by lactic acid bacteria"},
	{Word: "caramel", Doc: "stewed wet and warm until the inside turns to sugar, then dried hot; also called crystal"}, {Word: "crystal", Doc: "as caramel malt: glassy and sweet inside"},
	{Word: "amber", Doc: "pale malt roasted lightly; biscuit"}, {Word: "brown", Doc: "roasted further than amber; toast and coffee"},
	{Word: MaltChocolate, Doc: "roasted dark brown in a drum; fire and smoke are its dangers"}, {Word: MaltBlack, Doc: "roasted nearly black in a drum; it can catch fire within a minute"},
	{Word: MaltRoasted, Doc: "any malt that is roasted in a drum"},
	{Word: "distilling", Doc: "dried cool, so that its enzymes stay"},
}

// joinGlosses are of the words that join a line.
var joinGlosses = []Gloss{
	{Word: "after", Doc: "behind which step it was done"}, {Word: "as", Doc: "under which mark of the supplier"}, {Word: ClauseAt, Doc: "how warm, or when"},
	{Word: "batches", Doc: "how many batches it was learnt from"}, {Word: ClauseBecause, Doc: "why it was done otherwise"}, {Word: ClauseBy, Doc: "who did it, or how"},
	{Word: "error", Doc: "how sure a figure that was learnt is"}, {Word: "scatter", Doc: "by how much batches differ"}, {Word: "every", Doc: "the time from one to the next"},
	{Word: "for", Doc: "how long it takes"}, {Word: "from", Doc: "where it begins: a temperature, a supplier; or how much of which lot"}, {Word: "to", Doc: "where it ends, or what is wanted"},
	{Word: "in", Doc: "what it lies in"}, {Word: "of", Doc: "what it belongs to, or out of how many"}, {Word: "on", Doc: "on which day, floor or scale"}, {Word: "over", Doc: "how long a rise takes"},
	{Word: "until", Doc: "the condition that ends the step"}, {Word: "when", Doc: "done as long as this condition is met"}, {Word: "with", Doc: "what is added or done beside"}, {Word: "within", Doc: "the longest time until it is done"},
	{Word: "allow", Doc: "the earliest time and the latest time of a step that waits for a condition"}, {Word: And, Doc: "both"}, {Word: "the", Doc: "only makes the line read well"}, {Word: "times", Doc: "how often"},
	{Word: "at least", Doc: "this or more; also written >="}, {Word: "at most", Doc: "this or less; also written <="}, {Word: "above", Doc: "more than this; also written >"}, {Word: "below", Doc: "less than this; also written <"}, {Word: "is", Doc: "exactly this"},
}

// termGlosses are of words that the program says.
var termGlosses = []Gloss{
	{Word: "steep-out", Doc: "the end of the steep: the grain is drained and laid out to grow"},
	{Word: "piece", Doc: "the grain that grows together on a floor or in a box; also called a bed", Looks: "good: fresh smell of cucumber, white curled rootlets, cool to the hand. Bad: sour or musty smell, matted rootlets, warm, grey or pink mould"},
	{Word: "rootlets", Doc: "the little roots that the grain grows, also called culms; they are rubbed off when dry"},
	{Word: "modification", Doc: "how far the inside of the kernel is broken down: the length of the acrospire and the rub show it"},
	{Word: "gate moisture", Doc: "the moisture that must be reached before the kiln gets hotter: heat kills enzymes in damp malt, and at 10 % and below they are mostly safe"},
	{Word: "guard", Doc: "the earliest time and the latest time that allow gives a step: whatever its condition, it ends between them"},
	{Word: "green malt", Doc: "grain that has grown and is still wet"},
	{Word: "wet basis", Doc: "a moisture as a share of the whole weight, water and all: 100 g of steeped grain at 44 % hold 44 g of water. Every moisture here is so unless it says dry basis"},
	{Word: "dry basis", Doc: "water as a share of the dry matter alone: 44 % of the whole weight are 79 % dry basis"},
	{Word: "charge", Doc: "how much raw grain goes into a batch"},
	{Word: "lot", Doc: "grain of one field, delivery or sack, with one moisture and one germination"},
	{Word: "tare", Doc: "what the empty vessel weighs"},
	{Word: "gross", Doc: "with the vessel that stood on the scale"},
	{Word: "spread", Doc: "how far a figure can lie to either side of the forecast, because lot, house and weather are not fully known"},
	{Word: "visit", Doc: "a time at which somebody must be there"},
	{Word: "EBC", Doc: "the scale of colour of the European Brewery Convention; EBC = 2.65 Lovibond - 1.2 for malt, about"},
	{Word: "Lovibond", Doc: "the older scale of colour; written in full here, because °L can mean Lintner too"},
	{Word: "diastatic", Doc: "of enzymes: the power to turn starch into sugar"}, {Word: "extract", Doc: "the share of the malt that goes into solution in a laboratory mash"},
	{Word: "friability", Doc: "the share of the malt that crumbles in a laboratory mill"}, {Word: "glucan", Doc: "beta-glucan of a laboratory mash, in mg/l: gum of cell walls that were not broken down"},
	{Word: "don", Doc: "deoxynivalenol (DON), a poison of the mould Fusarium on grain, in µg/kg; grain with it is not malted for food"}, {Word: "ndma", Doc: "a nitrosamine that direct fire leaves in malt, in µg/kg"}, {Word: "colour", Doc: "of a laboratory wort"},
	{Word: "enzymes", Doc: "what turns starch into sugar in the mash; grown in the piece, killed by heat as long as the malt is damp"},
	{Word: "DMS precursor", Doc: "what turns into dimethyl sulphide, a smell of cooked cabbage; curing drives it out"},
	{Word: "DMS", Doc: "dimethyl sulphide, a smell of cooked cabbage in beer; it comes of a precursor in the malt, which curing drives out: see DMS precursor"},
	{Word: "CO2", Doc: "carbon dioxide: growing grain gives it off, and it gathers low in a closed room, where it suffocates without a warning. Air the room before anybody bends down, and measure it"},
	{Word: "CO", Doc: "carbon monoxide, a poison without smell, of any fire that burns badly: a flue, a draught and an alarm in the room"},
	{Word: "alpha", Doc: "alpha-amylase: the enzyme that cuts starch into short pieces in the mash. It is made while the grain grows, and stands more heat than the others"},
	{Word: "dormancy", Doc: "sound grain that does not sprout yet, as it often is in the weeks after harvest: store it dry for some weeks, and test it again"},
	{Word: "water sensitivity", Doc: "grain that sprouts well in a little water and badly in much: give it short soaks and long rests in air; told by two germination tests side by side, with 4 and with 8 ml of water"},
	{Word: "germ", Doc: "the living part at one end of the kernel, the embryo: rootlets and acrospire grow out of it. As a stage of a process: germinate"},
	{Word: "kernel", Doc: "a single grain of barley or another cereal; moistures, counts and weights go by kernels"},
	{Word: "husk", Doc: "the tough skin around a kernel of barley or oats, which wheat and rye leave in the field"},
	{Word: "endosperm", Doc: "the white inside of the kernel, its store of starch; it is what malting makes soft"},
	{Word: "mealy", Doc: "of a kernel that is cut: white and floury inside, it takes up water easily and breaks down evenly; of the rub the word is chalky", Looks: "white and dull, crumbles under a nail"},
	{Word: "glassy", Doc: "of a kernel that is cut: grey and hard inside, dense with protein or dried too wet; it takes up water slowly", Looks: "grey, half clear as horn, hard under a nail"},
	{Word: "steely", Doc: "another word for glassy"},
	{Word: "overgrown", Doc: "of a kernel whose acrospire has come out beyond the tip; also called overshot or bushy. It has lost much of its starch to growth: more than a few of 100 say that the bed was too warm or grew too long"},
	{Word: "overshot", Doc: "another word for overgrown"}, {Word: "bushy", Doc: "another word for overgrown; also of rootlets that have grown long and tangled"},
	{Word: "casting", Doc: "emptying the steep on to the floor or into the box to grow, also called casting out: to cast. Nothing is written for it: the germinate stage that follows the steep says where the grain goes"},
	{Word: "cast", Doc: "to empty the steep on to the floor or into the box; see casting"},
	{Word: "couch", Doc: "grain heaped deep after the steep so that it warms and starts to grow; written as a germinate stage of its own, on a small floor"},
}
