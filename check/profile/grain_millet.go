package profile

// The millets are small and grow warm and fast.
var millet = Grain{
	Name:       "millet",
	Cast:       Band{0.33, 0.45},
	Grows:      Band{25, 32},
	GrowsWarm:  34,
	GrowsHot:   40,
	GrowsCold:  20,
	DeepBed:    0.15,
	Days:       Band{2, 5},
	MostDays:   7,
	CureMost:   50,
	EndMost:    0.12, // dried in the sun to 10 to 12 % (common practice, from memory)
	SoakLong:   24,
	SoakLost:   48,
	Water:      Band{25, 30},
	WarmWater:  32,
	HotWater:   36,
	TepidWater: 34,
	TepidLost:  36,
	Rest:       Band{14, 35},
	Sprouts:    0.85,
	MouldCheck: true,
}
