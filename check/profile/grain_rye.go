package profile

// Rye is naked, wets fast, and may carry ergot and DON.
var rye = Grain{
	Name:       "rye",
	Cast:       Band{0.44, 0.48},
	Grows:      Band{14, 17},
	GrowsWarm:  20,
	GrowsHot:   28,
	Days:       Band{4, 5},
	MostDays:   8,
	CureMost:   85,
	SoakLong:   8,
	SoakLost:   20,
	WarmWater:  16,
	Naked:      true,
	ErgotRisk:  true,
	MouldCheck: true,
}
