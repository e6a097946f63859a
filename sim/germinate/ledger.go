package germinate

import "maltwright/sim/grain"

// Energy is the heat ledger of the piece since [New], J, counted from dry
// matter and liquid water at 0 °C: Now = Start + Respired + Sprinkled + Held −
// Lost − Vapour.
type Energy struct {
	Start, Now float64 // heat content of the bed
	Respired   float64 // made by growth
	Sprinkled  float64 // brought by water
	Held       float64 // put in by the hold, less what it took out
	Lost       float64 // gone to the room by both faces
	Vapour     float64 // gone with the water that evaporated
}

// Energy returns the heat ledger.
func (p *Piece) Energy() Energy {
	return Energy{
		Start:     p.startHeat,
		Now:       p.y[heat],
		Respired:  grain.StarchHeat * (p.y[respired] - p.start),
		Sprinkled: p.sprinkled,
		Held:      p.y[held],
		Lost:      p.y[lost],
		Vapour:    p.y[vapour],
	}
}

// Holding is what was done to keep the bed in its band since [New], J.
type Holding struct {
	Removed float64 // heat taken out, by work on the bed and by the cooler
	Added   float64 // heat kept in by heaping, and put in by the heater
	Cooled  float64 // the part of Removed that the cooler took
	Warmed  float64 // the part of Added that the heater gave
}

// Holding returns what the hold took.
func (p *Piece) Holding() Holding {
	return Holding{
		Removed: p.removed,
		Added:   p.y[held] + p.removed,
		Cooled:  p.y[cooled],
		Warmed:  p.y[warmed],
	}
}
