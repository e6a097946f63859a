package profile

// Rye is naked, wets fast, and may carry ergot and DON.
var rye = Grain{
	Name:       "rye",
	Cast:       Band{0.44, 0.48},
	Grows:      Band{14, 17},
	GrowsWarm:  20,
	GrowsHot:   28,
	GrowsCold:  10,
	DeepBed:    0.20,
	Acrospire:  Band{0.5, 1},
	Days:       Band{4, 5},
	MostDays:   8,
	CureMost:   85,
	EndMost:    0.06,
	SoakLong:   8,
	SoakLost:   24,
	Water:      Band{12, 16},
	WarmWater:  16,
	HotWater:   20,
	TepidWater: 18,
	TepidLost:  12,
	Rest:       Band{8, 20},
	Sprouts:    0.90,
	ErgotRisk:  true,
	MouldCheck: true,
	Converts:   true,
}
