package grain

import "maltwright/sim/drying"

// wheat and spelt shed their husk in threshing, so they hold less loose water
// and their cores drink sooner. Bulk density, kernel weight: handbook, from
// memory. Uptake: calibrated so that 41–44 % takes two thirds to four fifths
// of barley's hours in water; its activation energy published [becker-1960], of spelt taken as of
// wheat. Growth: calibrated to 4–6 days at 14–17 °C.
const (
	wheatUptakeEnergy = 51e3 // J/mol, published [becker-1960]

	nakedHuskWater = 0.02 // kg/kg dry matter, calibrated: bran and seed coat only
	nakedFilmWater = 0.07 // kg/kg dry matter, calibrated: as barley, smoother skin

	// nakedCoreWater, kg/kg dry matter: calibrated so that wheat and rye of 12 % come to some
	// 46 % in three days of water and 48 % in ten (common practice: a steep of them that
	// is left too long ends in the high forties).
	nakedCoreWater = 0.70

	wheatUptake = 2.6  // against barley, calibrated
	wheatPace   = 0.95 // of barley's clock marks, calibrated
	wheatBreath = 1.0  // of barley's respiration, calibrated
)

func wheat() Profile {
	p := naked(scaled(wheatPace, wheatBreath))
	p.Name = "wheat"
	p.BulkDensity, p.KernelWeight = 770, 0.042
	p.Uptake, p.UptakeEnergy = wheatUptake, wheatUptakeEnergy
	p.BaseT, p.BestT, p.CeilingT = 0, 25, 38
	p.Germinates = [6]Germinates{{0, 0.95}, {15, 0.95}, {25, 0.93}, {30, 0.80}, {35, 0.20}, {38, 0}}
	p.RootletShare = 0.035
	p.Malt = maltOf(drying.Wheat())
	return p
}

// spelt out of its glumes; with them on it is neither malted nor stored alike.
func spelt() Profile {
	p := wheat()
	p.Name = "spelt"
	p.BulkDensity, p.KernelWeight = 750, 0.045
	p.Malt = drying.Malt{Shift: 0.005} // calibrated; its own sorption is not known
	return p
}

// naked takes the husk off a profile.
func naked(p Profile) Profile {
	p.CoreWater = nakedCoreWater
	p.HuskWater, p.FilmWater = nakedHuskWater, nakedFilmWater
	return p
}
