package grain

// buckwheat, in its hull. Bulk density, kernel weight: handbook, from memory.
// Uptake: calibrated to 40 % after some twelve hours in water. Growth: calibrated
// to 3–5 days at 15–20 °C. It slimes, so its pool to wash out is large.
const (
	// buckwheatCoreWater, kg/kg dry matter of the whole kernel: calibrated, four fifths of
	// nakedCoreWater, since the hull is a fifth of the kernel (handbook, from memory).
	buckwheatCoreWater = 0.56

	buckwheatUptake = 3.4  // against barley, calibrated
	buckwheatPace   = 0.60 // of barley's clock marks, calibrated
	buckwheatBreath = 1.0  // of barley's respiration, calibrated
	buckwheatLeach  = 0.03 // pool of the dry matter, calibrated
)

func buckwheat() Profile {
	p := scaled(buckwheatPace, buckwheatBreath)
	p.Name = "buckwheat"
	p.BulkDensity, p.KernelWeight = 600, 0.028
	p.CoreWater, p.Uptake, p.LeachPool = buckwheatCoreWater, buckwheatUptake, buckwheatLeach
	p.BaseT, p.BestT, p.CeilingT = 4, 27, 42
	p.Germinates = [6]Germinates{{4, 0.50}, {10, 0.90}, {15, 0.95}, {30, 0.92}, {37, 0.40}, {42, 0}}
	p.RootletShare = 0.03
	return p
}
