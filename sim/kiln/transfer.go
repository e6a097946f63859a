package kiln

import (
	"math"

	"maltwright/sim/air"
)

const (
	// Properties of air near 50 °C (handbook).
	viscosity    = 1.96e-5 // Pa s
	conductivity = 27.9    // mW/(m K)
	prandtlRoot  = 0.888   // cube root of the Prandtl number, 0.70

	// stillConvection and stillRadiation are the transfer coefficients on both
	// faces of a tray in a still oven together, W/(m² K) (calibrated: natural
	// convection at 5, radiation of warm walls at 6 on a face).
	stillConvection = 10.0
	stillRadiation  = 12.0

	// stillNTU is the NTU that makes the air of a still oven well
	// mixed: it changes by a tenth of its distance to the malt in passing.
	stillNTU = 0.1
)

// exchange is how a layer and the air meet, per m² of bed.
type exchange struct {
	g       float64 // dry air, kg/(m² s)
	back    float64 // share of it that is exhaust led back
	ntu     float64 // transfer units of a layer: its exchange over the air's heat capacity
	reach   float64 // effectiveness, 0 to 1
	radiant float64 // W/(m² K) to walls at the temperature of air-on
}

// transferCoefficient gives W/(m² K) between air and corns for a mass flux of
// g kg/(m² s): Nu = 2 + 1.1·Pr^(1/3)·Re^0.6 on a sphere of diameter d, m,
// [wakao-kaguei-1982], stated there for Re 15 to 8500, and used below too,
// where exchange is so good compared with the flow that its value no longer matters.
func transferCoefficient(g, d float64) float64 {
	re := g * d / viscosity
	return conductivity / (1000 * d) * (2 + 1.1*prandtlRoot*math.Pow(re, 0.6))
}

// exchange gives the exchange of one layer with air of the state in.
func (b *Bed) exchange(in stream) exchange {
	s := air.State{T: in.t, W: in.w, P: b.ambient.P}
	g := b.set.airflow(b.kit) / b.kit.Area / s.Volume()
	if b.kit.Still {
		return b.stillExchange(g)
	}
	ntu := transferCoefficient(g, b.packing.CornDiameter) * b.packing.Surface * b.depth / float64(len(b.layers)) / (g * air.DryAirHeat)
	return exchange{g: g, back: b.set.recirculation(b.kit), ntu: ntu, reach: 1 - math.Exp(-ntu)}
}

// stillExchange lets the oven's own air pass the tray at such a flow that
// convection comes out right, and only the vent flow leave. With the door open
// to Fresh air all of it leaves, and the walls have no warmth to give.
func (b *Bed) stillExchange(vent float64) exchange {
	g := stillConvection / (stillNTU * air.DryAirHeat)
	x := exchange{g: max(g, vent), ntu: 1}
	x.reach = 1 - math.Exp(-stillConvection/(x.g*air.DryAirHeat))
	if b.set.Target != Fresh {
		x.back, x.radiant = 1-vent/x.g, stillRadiation
	}
	return x
}
