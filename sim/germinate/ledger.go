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

// Holding is what it took to keep the bed in its band since [New].
type Holding struct {
	Removed float64 // heat taken out, J
	Added   float64 // heat put in, J
	// Beyond is the part of Removed that not even a bed turned every four hours
	// would have lost to the room, J: it needs a cooler room, or a thinner bed.
	Beyond float64
	// Short is the part of Added that the bed would still want when heaped 30
	// cm deep, J: it needs a warmer room.
	Short float64
	// Peak is the largest mean power taken out in a step, W.
	Peak float64
}

// plausibleShare, of the heat of respiration: what the hold may leave undone
// before it counts as not plausible. Calibrated.
const plausibleShare = 0.10

// Holding returns what the hold took.
func (p *Piece) Holding() Holding {
	return Holding{
		Removed: p.removed,
		Added:   p.y[held] + p.removed,
		Beyond:  p.y[beyond],
		Short:   p.y[short],
		Peak:    p.peakHold,
	}
}

// HoldPlausible tells whether turning, and the depth of the bed, could have
// kept it in its band: what they could not do is under 10 % of the heat of
// respiration on this floor.
func (p *Piece) HoldPlausible() bool {
	made := grain.StarchHeat * (p.y[respired] - p.start)
	return p.y[beyond]+p.y[short] <= plausibleShare*made
}
