package vocabulary

import q "maltwright/lang/quantity"

// The facts of a house that are of heat and of the air that carries it: fans, chimneys,
// walls, drums.
var heatRows = []Row{
	{Word: FactFan, In: blocks(KilnFacts), Slots: []Slot{sensed(single("its air, or the power that it draws", q.Flow, q.Power), fanned)},
		Clauses: []Clause{{Word: "at", Slots: []Slot{sensed(single("the pressure", q.Pressure), fanPressure)}, Doc: "the pressure that it gives this air against"}},
		Doc: "The fan of the kiln. Two to five lines are its curve, each an airflow and the pressure that the fan gives it against: the air that a bed lets through follows from its depth, and airflow is then what is led through it of that. " +
			"One line may give the electric power that the fan draws while it blows; alone, it counts as energy and says nothing about the airflow.", Example: "fan 900 m3/h at 0 Pa"},
	{Word: FactFan, In: blocks(Floor, Vessel), Slots: []Slot{sensed(single("the power that it draws", q.Power), fanDraws)}, Once: true,
		Doc: "The electric power that the fan draws which blows air through the bed.", Example: "fan 2.2 kW"},
	{Word: "chimney", In: blocks(KilnFacts), Slots: []Slot{sensed(single("its height", q.Length), chimney)}, Once: true,
		Doc: "Height of the chimney, from the bed to its top: warm air in it draws fresh air through the bed.", Example: "chimney 6 m"},
	{Word: FactRecovers, In: blocks(KilnFacts), Slots: []Slot{sensed(single("share of the heat", q.Share), recovered)}, Once: true,
		Doc: "How well a heat exchanger warms the air that comes in by the exhaust: its temperature ratio, the share of the way from the outside air to the exhaust by which it is warmer behind it. That much of the sensible heat of the exhaust above the outside air comes back; " +
			"of all that the kiln takes it saves less, while the exhaust is cool and damp.", Example: "recovers 35 %"},
	{Word: "walls", In: blocks(KilnFacts), Slots: []Slot{oneOf("what they are made of", WallsBrick, WallsMetal, WallsWood, WallsStone), optional(sensed(single("their area", q.Area), wallArea))},
		Clauses: []Clause{{Word: "with", Slots: []Slot{oneOf(WithInsulation, WithInsulation)}, Doc: "a layer that keeps the warmth in"}}, Once: true,
		Doc: "What the walls of the kiln are made of, and their area with the ceiling: they take up heat, give it back and lose some.", Example: "walls brick 24 m2 with insulation"},
	{Word: "door", In: blocks(KilnFacts), Slots: []Slot{oneOf(DoorAjar, DoorAjar), sensed(single("how far", q.Length), doorGap)}, Once: true,
		Doc: "How far the door of a still oven stands open, so that moist air leaves by it.", Example: "door ajar 3 cm"},
	{Word: VerbAir, In: blocks(KilnFacts), Clauses: []Clause{{Word: "from", Slots: []Slot{named(KilnFacts)}, Required: true, Doc: "the kiln whose exhaust it is given"}}, Once: true,
		Doc: "The kiln has no fresh air: it gets the exhaust of another kiln, as the upper of two floors does. The charge one cycle before lies on the other kiln.", Example: `air from "lower floor"`},
	{Word: "holds", In: blocks(KilnFacts), Slots: []Slot{sensed(single("its volume", q.Volume), volume)}, Once: true,
		Doc: "Volume of a drum; a drum needs no area.", Example: "holds 20 l"},
}
