package vocabulary

import q "maltwright/lang/quantity"

// Slots and clauses that several rows share.

var (
	duration = Slot{Kind: Amount, Label: "how long", Dims: []q.Dimension{q.Time}}
	moisture = []q.Dimension{q.Share, q.DryShare}

	durationRange = Slot{Kind: Amount, Label: "earliest and latest", Dims: []q.Dimension{q.Time}, Range: true, Bound: true}
	conditionSlot = Slot{Kind: Condition, Label: "what must hold"}
	reason        = Slot{Kind: Text, Label: "the reason"}

	until = Clause{Word: "until", Slots: []Slot{conditionSlot}, Doc: "ends the step when this condition is met"}
	allow = Clause{Word: "allow", Slots: []Slot{durationRange},
		Doc: "the earliest time and the latest time at which the step may end"}
	forTime = Clause{Word: "for", Slots: []Slot{duration}, Doc: "how long the step takes"}
	every   = Clause{Word: "every", Slots: []Slot{{Kind: Amount, Label: "how often", Dims: []q.Dimension{q.Time}}},
		Required: true, Doc: "the time from one to the next"}
	now      = Clause{Word: "every", Slots: every.Slots, Doc: "the time from one to the next"}
	nowNotAt = Clause{Word: "every", Not: "at", Slots: every.Slots, Doc: now.Doc}
	while    = Clause{Word: "when", Slots: []Slot{conditionSlot}, Doc: "only while this condition is met"}

	// blown is what air that a fan blows through the bed can say beside its warmth.
	blown = []Clause{
		{Word: "with", Slots: []Slot{oneOf("airflow", "airflow"), sensed(single("how much", q.Flow), airflow)}, Doc: "another airflow than the fan's own; from air-on alone"},
		while,
		{Word: "for", Slots: []Slot{duration}, Doc: "how long the fan runs each time"},
		{Word: "every", Slots: every.Slots, Doc: "from one start of the fan to the next"},
	}
)

// atHours says at which times of day something is done.
var atHours = Clause{Word: "at", Not: "every", Joins: true, Slots: []Slot{{Kind: Hour, Label: "a time of day"}},
	Doc: "the times of day. A forecast with a start uses them; a forecast without one takes as many at even intervals"}

// kilnPlaces are where a kiln's temperature can be taken.
var kilnPlaces = placesIn(func(p Phase) bool { return p == Drying })

func temperature(label string, places ...string) Slot {
	return Slot{Kind: Amount, Label: label, Dims: []q.Dimension{q.Temperature}, Range: true, Places: places}
}

// placedAt is the slot with places that may stand in front of its value.
func placedAt(s Slot, places ...string) Slot {
	s.Places = places
	return s
}

func placed(s Slot) Slot {
	s.Placed = true
	return s
}

func filler(words ...string) Slot {
	return Slot{Kind: Literal, Words: words, Optional: true}
}

func oneOf(label string, words ...string) Slot {
	return Slot{Kind: Choice, Label: label, Words: words}
}

func single(label string, dims ...q.Dimension) Slot {
	return Slot{Kind: Amount, Label: label, Dims: dims}
}

func ranged(label string, dims ...q.Dimension) Slot {
	return Slot{Kind: Amount, Label: label, Dims: dims, Range: true}
}

func named(b Block) Slot { return Slot{Kind: Name, Label: "a " + string(b), Of: b} }

// holder is the name of whatever grain can be weighed in.
var holder = Slot{Kind: Name, Label: "a vessel, floor or kiln", Of: Vessel, Or: blocks(Floor, KilnFacts)}

func optional(s Slot) Slot {
	s.Optional = true
	return s
}

func blocks(list ...Block) []Block { return list }
