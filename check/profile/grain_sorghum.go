package profile

// Sorghum grows warm. Its shoots and roots hold a poison (dhurrin) and are always taken off.
var sorghum = Grain{
	Name:       "sorghum",
	Cast:       Band{0.40, 0.48},
	Grows:      Band{25, 30},
	GrowsWarm:  32,
	GrowsHot:   38,
	Days:       Band{4, 6},
	MostDays:   8,
	CureMost:   50,
	SoakLong:   24,
	SoakLost:   48,
	WarmWater:  30,
	Naked:      true,
	RootsOff:   true,
	MouldCheck: true,
}
