package profile

// Wheat is naked and wets fast; it packs tight on the floor.
var wheat = Grain{
	Name:       "wheat",
	Cast:       Band{0.41, 0.45},
	Grows:      Band{14, 17},
	GrowsWarm:  20,
	GrowsHot:   28,
	GrowsCold:  10,
	DeepBed:    0.20,
	Acrospire:  Band{0.5, 1},
	Days:       Band{4, 6},
	MostDays:   9,
	CureMost:   85,
	EndMost:    0.06,
	SoakLong:   8,
	SoakLost:   24,
	Water:      Band{12, 15},
	WarmWater:  16,
	HotWater:   20,
	TepidWater: 18,
	TepidLost:  12,
	Rest:       Band{8, 20},
	Sprouts:    0.95,
	MouldCheck: true,
	Converts:   true,
}
