package profile

// Wheat is naked and wets fast; it packs tight on the floor.
var wheat = Grain{
	Name:       "wheat",
	Cast:       Band{0.41, 0.45},
	Grows:      Band{14, 17},
	GrowsWarm:  20,
	GrowsHot:   28,
	Days:       Band{4, 6},
	MostDays:   9,
	CureMost:   85,
	SoakLong:   8,
	SoakLost:   20,
	WarmWater:  16,
	Naked:      true,
	MouldCheck: true,
}
