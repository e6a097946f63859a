package drying

import (
	"math"

	"maltwright/sim/powers"
)

const (
	// Properties of air near 50 °C (handbook).
	viscosity    = 1.96e-5 // Pa s
	conductivity = 27.9    // mW/(m K)
	prandtlRoot  = 0.888   // cube root of the Prandtl number, 0.70
)

// Exchange gives the transfer coefficient, W/(m² K), between kernels and air that
// passes them with a mass flux of g kg/(m² s): Nu = 2 + 1.1·Pr^(1/3)·Re^0.6 on
// a sphere of the diameter d of a kernel, m, [wakao-kaguei-1982], stated there for
// Re 15 to 8500, and used below too, where exchange is so good compared with
// the flow that its value no longer matters.
func (p Packing) Exchange(g float64) float64 {
	d := p.KernelDiameter
	re := g * d / viscosity
	return conductivity / (1000 * d) * (2 + 1.1*prandtlRoot*powers.Exp(0.6*powers.Log(re)))
}

// airDensity, kg/m³, is that of air near 50 °C (handbook).
const airDensity = 1.09

// Falling gives the transfer coefficient, W/(m² K), between single kernels and the air that they
// fall through with a speed of v m/s: Nu = 2 + 0.6·Pr^(1/3)·Re^(1/2) on a sphere of the diameter of a kernel,
// Re 0 to 200 [ranz-marshall-1952], used a little beyond.
func (p Packing) Falling(v float64) float64 {
	d := p.KernelDiameter
	re := airDensity * v * d / viscosity
	return conductivity / (1000 * d) * (2 + 0.6*prandtlRoot*math.Sqrt(re))
}
