package profile

// Oats are long and light; they are wet in 4 to 8 hours.
var oats = Grain{
	Name:       "oats",
	Cast:       Band{0.40, 0.47},
	Grows:      Band{10, 20},
	GrowsWarm:  22,
	GrowsHot:   28,
	GrowsCold:  8,
	DeepBed:    0.25,
	Acrospire:  Band{0.5, 1.1},
	Days:       Band{4, 10},
	MostDays:   12,
	CureMost:   90,
	EndMost:    0.06,
	SoakLong:   8,
	SoakLost:   24,
	Water:      Band{12, 16},
	WarmWater:  18,
	HotWater:   22,
	TepidWater: 20,
	TepidLost:  12,
	Rest:       Band{8, 22},
	Sprouts:    0.90,
}
