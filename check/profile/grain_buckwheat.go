package profile

// Buckwheat slimes in the steep and is rinsed.
var buckwheat = Grain{
	Name:       "buckwheat",
	Cast:       Band{0.40, 0.47},
	Grows:      Band{15, 20},
	GrowsWarm:  22,
	GrowsHot:   28,
	GrowsCold:  12,
	DeepBed:    0.15,
	Days:       Band{3, 5},
	MostDays:   7,
	CureMost:   60,
	EndMost:    0.06,
	SoakLong:   8,
	SoakLost:   24,
	Water:      Band{12, 16},
	WarmWater:  18,
	HotWater:   24,
	TepidWater: 22,
	TepidLost:  12,
	Rest:       Band{10, 24},
	Sprouts:    0.85,
}
