package main

import (
	"math"
	"slices"

	"maltwright/sim/drying"
	"maltwright/sim/outside/figure"
)

// kernelRadius, m, is half of the diameter of a kernel: how far bound water has to go.
var kernelRadius = drying.Barley().Packing.KernelDiameter / 2

// gas is the gas constant, J/(mol K).
const gas = 8.314

// bound is malt whose bound water has a diffusion coefficient at 20 °C, 10⁻¹² m²/s, and
// an activation energy, kJ/mol, and counts as bound below one moisture and as free above
// another, kg/kg dry basis.
func bound(p []float64) drying.Material {
	c := drying.Barley()
	c.BoundRate = math.Pi * math.Pi * p[0] * 1e-12 / (kernelRadius * kernelRadius)
	c.BoundFall = p[1] * 1e3 / gas
	c.BoundBelow, c.Transition = p[2], p[3]-p[2]
	return drying.Malt{Cereal: &c}
}

// inCode are the same four as the code has them.
func inCode() []float64 {
	c := drying.Barley()
	return []float64{c.BoundRate * kernelRadius * kernelRadius / (math.Pi * math.Pi) * 1e12, c.BoundFall * gas / 1e3, c.BoundBelow, c.BoundBelow + c.Transition}
}

// The rows of a thin layer. A closed band is taken as a rectangular distribution, its
// half-width over √3 [gum-2008], with the half point beside it by which the sorption
// curve lies under its data; that half point alone blurs the end of an open one.
const (
	sorptionError = 0.5 // points
	hoursError    = 0.2 // h, of an open band of hours
)

func rowError(f figure.Figure) float64 {
	switch {
	case f.Unit == "h":
		return hoursError
	case math.IsInf(f.Accepted.Low, -1) || math.IsInf(f.Accepted.High, 1):
		return sorptionError
	}
	return math.Hypot((f.Accepted.High-f.Accepted.Low)/2/math.Sqrt(3), sorptionError)
}

// boundWater is the fit of bound water in the kernel. Before it, water had 1.25 mm to go,
// at 1.6·10⁻¹² m²/s: as if the radius had been that of the kernel and D this.
func boundWater() *problem {
	now := inCode()
	p := &problem{
		name: "Bound water",
		says: "D and its activation energy E of bound water in the kernel, whose radius is 2.0 mm, and the moistures between which it passes from bound to free, fitted to " +
			"thin layers alone. Each is drawn to what is published of it, since so few rows cannot tell all four. Deep beds, hot cures, " +
			"the ale kiln, the small scale and cooling are held out.",
		parameters: []parameter{
			{"boundDiffusion", "10⁻¹² m²/s", 2, 1.6 * math.Pow(2.0/1.25, 2), now[0], 1.6, 0.3, true, "vapour in ground malt, 1.6 [meddings-potter-1974]; steeping of whole kernels gives 1.4 to 3.3 (derived)"},
			{"boundEnergy", "kJ/mol", 1, 26, now[1], 42, 5, false, "wheat in the falling rate, 42 [wheat-falling-rate]; 51 in absorption and vacuum [becker-1960]"},
			{"boundBelow", "kg/kg", 3, 0.12, now[2], 0.1238, 0.0072, false, "green malt slows at 10 to 12 % wet basis [maltings-note]"},
			{"freeAbove", "kg/kg", 3, 0.35, now[3], 0.20, 0.03, false, "the constant of free water is one of barley of some 0.2 to 0.35 (from memory) [ocallaghan-1971]"},
		},
	}
	for _, f := range figure.ThinKilns() {
		p.fitted = append(p.fitted, observation{Figure: f, by: rowError(f), model: of(f)})
	}
	for _, f := range slices.Concat(figure.Halves(), figure.SmallScale(), figure.Kilns(), figure.DeepBeds(), figure.Bins(), figure.Coolings()) {
		p.held = append(p.held, held{f, of(f)})
	}
	return p
}

func of(f figure.Figure) func([]float64) (float64, error) {
	return func(p []float64) (float64, error) { return f.Model(bound(p)) }
}
