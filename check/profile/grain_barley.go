package profile

// Barley, the grain the rules were made for; its husk hides the acrospire.
var barley = Grain{
	Name:      "barley",
	Cast:      Band{0.38, 0.48},
	Grows:     Band{12, 18},
	GrowsWarm: 20,
	GrowsHot:  28,
	Days:      Band{4, 7},
	MostDays:  12,
	CureMost:  105,
	SoakLong:  10,
	SoakLost:  24,
	WarmWater: 16,
}
