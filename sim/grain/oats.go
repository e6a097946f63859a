package grain

// oats. Bulk density, kernel weight: handbook, from memory. Uptake: calibrated to
// 40 % and more in 4–8 h under water. Growth: calibrated to 46 %, 17 °C, 8 days
// [munoz-insa-2011] with a full acrospire inside them.
const (
	oatsHuskWater = 0.12 // kg/kg dry matter, calibrated: a quarter of the kernel is husk
	oatsFilmWater = 0.09 // kg/kg dry matter, calibrated
	// oatsCoreWater, kg/kg dry matter of the whole kernel: calibrated, three quarters of nakedCoreWater,
	// since the core is three quarters of the kernel. Oats then end at 47 % (common practice;
	// [munoz-insa-2011] grows them at 46 %).
	oatsCoreWater = 0.525
	oatsUptake    = 4.9  // against barley, calibrated
	oatsPace      = 1.25 // of barley's clock marks, calibrated
	oatsBreath    = 0.9  // of barley's respiration, calibrated
)

func oats() Profile {
	p := scaled(oatsPace, oatsBreath)
	p.Name = "oats"
	p.BulkDensity, p.KernelWeight = 500, 0.034
	p.CoreWater, p.HuskWater, p.FilmWater, p.Uptake = oatsCoreWater, oatsHuskWater, oatsFilmWater, oatsUptake
	p.BaseT, p.BestT, p.CeilingT = 0, 24, 36
	p.Germinates = [6]Germinates{{0, 0.93}, {15, 0.93}, {25, 0.85}, {30, 0.60}, {33, 0.20}, {36, 0}}
	p.RootletShare = 0.04
	p.Malt.Shift = -0.01 // calibrated; its own sorption is not known
	return p
}
