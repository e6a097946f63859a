package profile

// Sorghum grows warm. Its shoots and roots hold a poison (dhurrin) and are always taken off.
var sorghum = Grain{
	Name:       "sorghum",
	Cast:       Band{0.40, 0.48},
	Grows:      Band{25, 30},
	GrowsWarm:  32,
	GrowsHot:   38,
	GrowsCold:  20,
	DeepBed:    0.20,
	Days:       Band{4, 6},
	MostDays:   8,
	CureMost:   50,
	EndMost:    0.12, // dried in the sun to 10 to 12 % (common practice, from memory)
	SoakLong:   24,
	SoakLost:   48,
	Water:      Band{25, 30},
	WarmWater:  30,
	HotWater:   34,
	TepidWater: 32,
	TepidLost:  36,
	Rest:       Band{14, 33},
	Sprouts:    0.90,
	RootsOff:   true,
	MouldCheck: true,
}
