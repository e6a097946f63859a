package profile

// Spelt is malted as wheat is.
var spelt = Grain{
	Name:       "spelt",
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
