package grain

// rye and triticale. Bulk density, kernel weight: handbook, from memory. Uptake:
// calibrated so that 43–45 % comes in about half of barley's hours in water.
// Growth: calibrated to 45 %, 16 °C, 5 days (a published craft-malting study,
// Fermentation 4:50 [ndsu-2018]) and to 4–5 days at 14–17 °C.
const (
	ryeUptake  = 3.8  // against barley, calibrated
	ryePace    = 0.85 // of barley's clock marks, calibrated
	ryeBreath  = 1.1  // of barley's respiration, calibrated
	ryeLeached = 0.02 // pool of the dry matter, calibrated: rye slimes and clouds the water

	triticaleUptake = 3.5 // against barley, calibrated: between wheat and rye
	triticalePace   = 0.9 // of barley's clock marks, calibrated: between wheat and rye
)

func rye() Profile {
	p := naked(scaled(ryePace, ryeBreath))
	p.Name = "rye"
	p.BulkDensity, p.KernelWeight = 720, 0.032
	p.Uptake, p.LeachPool = ryeUptake, ryeLeached
	p.BaseT, p.BestT, p.CeilingT = 0, 24, 36
	p.Germinates = [6]Germinates{{0, 0.95}, {15, 0.95}, {25, 0.90}, {30, 0.60}, {33, 0.20}, {36, 0}}
	p.RootletShare = 0.04
	p.Malt.Shift = 0.005 // calibrated; its own sorption is not known
	return p
}

func triticale() Profile {
	p := naked(scaled(triticalePace, ryeBreath))
	p.Name = "triticale"
	p.BulkDensity, p.KernelWeight = 700, 0.042
	p.Uptake = triticaleUptake
	p.BaseT, p.BestT, p.CeilingT = 0, 24, 37
	p.Germinates = [6]Germinates{{0, 0.95}, {15, 0.95}, {25, 0.92}, {30, 0.70}, {34, 0.20}, {37, 0}}
	p.RootletShare = 0.038
	p.Malt.Shift = 0.005 // calibrated; its own sorption is not known
	return p
}
