package profile

// Maize is soaked for 18 to 24 hours at a stretch.
var maize = Grain{
	Name:       "maize",
	Cast:       Band{0.40, 0.46},
	Grows:      Band{20, 30},
	GrowsWarm:  32,
	GrowsHot:   38,
	GrowsCold:  16,
	DeepBed:    0.25,
	Days:       Band{3, 10},
	MostDays:   12,
	CureMost:   50,
	EndMost:    0.12, // as sorghum
	SoakLong:   24,
	SoakLost:   48,
	Water:      Band{25, 30},
	WarmWater:  30,
	HotWater:   34,
	TepidWater: 32,
	TepidLost:  36,
	Rest:       Band{12, 33},
	Sprouts:    0.90,
	MouldCheck: true,
}
