package kiln

import (
	"math"

	"maltwright/sim/air"
)

const (
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
	apart   bool    // each layer meets fresh air of its own share of g
	radiant float64 // W/(m² K) to walls at the temperature of air-on
}

// exchange gives the exchange of one layer with air of the state in.
func (b *Bed) exchange(in stream) exchange {
	s := air.State{T: in.t, W: in.w, P: b.ambient.P}
	g := b.airflow() / b.kit.Area / s.Volume()
	switch {
	case b.stillAir():
		return b.openExchange()
	case b.kit.Still:
		return b.stillExchange(g + b.kit.Door.draws(b, s)/b.kit.Area/s.Volume())
	case b.kit.Drum.tumbles():
		return b.drumExchange(g)
	}
	if b.feed.fed() {
		g = b.feed.dry
	}
	ntu := b.packing.Exchange(g) * b.surface / (g * air.DryAirHeat)
	return exchange{g: g, back: b.set.recirculation(b.kit), ntu: ntu, reach: 1 - math.Exp(-ntu)}
}

// stillExchange lets the oven's own air pass the tray at such a flow that
// convection comes out right, and only the vent flow leave.
func (b *Bed) stillExchange(vent float64) exchange {
	g := stillConvection / (stillNTU * air.DryAirHeat)
	x := exchange{g: max(g, vent), ntu: 1, radiant: stillRadiation}
	x.reach = 1 - math.Exp(-stillConvection/(x.g*air.DryAirHeat))
	x.back = 1 - vent/x.g
	return x
}
