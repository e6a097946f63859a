package profile

// Oats are long and light; they are wet in 4 to 8 hours.
var oats = Grain{
	Name:      "oats",
	Cast:      Band{0.40, 0.47},
	Grows:     Band{10, 20},
	GrowsWarm: 22,
	GrowsHot:  28,
	Days:      Band{4, 10},
	MostDays:  12,
	CureMost:  90,
	SoakLong:  8,
	SoakLost:  20,
	WarmWater: 18,
}
