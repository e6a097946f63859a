package grain

import "maltwright/sim/drying"

// Grains of warm countries: the growth clock counts from a higher base. Base,
// best and ceiling temperature of millet: published [garcia-huidobro-1982],
// from memory; of sorghum and maize: handbook, from memory. Uptake: calibrated.
// Growth: calibrated to sorghum 5 days at 25–28 °C (published laboratory
// study), pearl millet 3–5 days at 25–30 °C [csir-millet], maize 5–6 days at 27
// °C (common practice, from memory).
const (
	tropicalDryStop   = 0.26 // wet basis, calibrated: these grains are cast drier
	tropicalMoistFull = 0.38 // wet basis, calibrated to cast moistures of 38 to 45 %
	tropicalT         = 25.0 // °C, temperature of their respiration table
	// tropicalBreath, of barley's respiration at 16 °C: calibrated so that a full acrospire
	// costs them at 25 °C about what it costs barley at 16 °C, 4 to 6 % of the dry matter (common
	// practice).
	tropicalBreath = 1.0

	// tropicalDrowns, s: calibrated to common practice, soaks of a day and more.
	tropicalDrowns = 48 * 3600.0

	sorghumUptake = 0.57 // against barley, calibrated: 40 % and more after 22 h, a rest and 22 h at 25 °C
	sorghumPace   = 0.84 // of barley's clock marks, calibrated
	milletUptake  = 1.15 // against barley, calibrated
	milletPace    = 0.60 // of barley's clock marks, calibrated
	maizeUptake   = 1.8  // against barley, calibrated: 40–46 % after 20 h, a rest and 20 h at 22 °C
	maizePace     = 1.05 // of barley's clock marks, calibrated

	// maizeCoreWater, kg/kg dry matter: calibrated so that maize of 12 % comes to 45 % and
	// no farther, to which it is steeped for milling (common practice).
	maizeCoreWater = 0.60
	// maizeUptakeEnergy, J/mol: calibrated to the hours that it takes at 10 and at 20 °C
	// [shull-1924], of which this is the slope.
	maizeUptakeEnergy = 31e3
)

func sorghum() Profile {
	p := tropical("sorghum", sorghumPace)
	p.BulkDensity, p.KernelWeight = 740, 0.028
	p.Malt = maltOf(drying.Sorghum())
	p.Uptake = sorghumUptake
	p.BaseT, p.BestT, p.CeilingT = 9, 32, 45
	p.Germinates = [6]Germinates{{9, 0.30}, {15, 0.85}, {20, 0.95}, {33, 0.95}, {40, 0.60}, {45, 0}}
	p.RootletShare = 0.08
	return p
}

func millet() Profile {
	p := tropical("millet", milletPace)
	p.BulkDensity, p.KernelWeight = 780, 0.009
	p.Uptake = milletUptake
	p.BaseT, p.BestT, p.CeilingT = 11.5, 33, 46
	p.Germinates = [6]Germinates{{11.5, 0.20}, {16, 0.80}, {20, 0.93}, {34, 0.93}, {42, 0.60}, {46, 0}}
	p.RootletShare = 0.06
	return p
}

func maize() Profile {
	p := tropical("maize", maizePace)
	p.BulkDensity, p.KernelWeight = 720, 0.320
	p.Malt = maltOf(drying.Maize())
	p.CoreWater, p.Uptake, p.UptakeEnergy = maizeCoreWater, maizeUptake, maizeUptakeEnergy
	p.BaseT, p.BestT, p.CeilingT = 8, 32, 44
	p.Germinates = [6]Germinates{{8, 0.30}, {13, 0.85}, {20, 0.95}, {32, 0.95}, {40, 0.50}, {44, 0}}
	p.RootletShare = 0.05
	return p
}

func tropical(name string, pace float64) Profile {
	p := naked(scaled(pace, tropicalBreath))
	p.Name = name
	p.DryStop, p.MoistFull = tropicalDryStop, tropicalMoistFull
	p.RespirationT = tropicalT
	p.Drowns = tropicalDrowns
	p.Malt.Shift = 0.005 // calibrated; its own sorption is not known
	return p
}
