package profile

// Buckwheat slimes in the steep and is rinsed.
var buckwheat = Grain{
	Name:      "buckwheat",
	Cast:      Band{0.40, 0.47},
	Grows:     Band{15, 20},
	GrowsWarm: 22,
	GrowsHot:  28,
	Days:      Band{3, 5},
	MostDays:  7,
	CureMost:  60,
	SoakLong:  8,
	SoakLost:  20,
	WarmWater: 18,
	Slimes:    true,
}
