package profile

// Barley, the grain the rules were made for; its husk hides the acrospire.
var barley = Grain{
	Name:       "barley",
	Cast:       Band{0.38, 0.48},
	Grows:      Band{12, 18},
	GrowsWarm:  20,
	GrowsHot:   28,
	GrowsCold:  10,
	DeepBed:    0.25,
	Acrospire:  Band{0.5, 1},
	Days:       Band{4, 7},
	MostDays:   12,
	CureMost:   105,
	Precursor:  true,
	SoakLong:   10,
	SoakLost:   24,
	Water:      Band{12, 15},
	WarmWater:  16,
	HotWater:   20,
	TepidWater: 18,
	TepidLost:  12,
	Rest:       Band{8, 20},
	Sprouts:    0.95,
	Converts:   true,
}
