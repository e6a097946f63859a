package germinate

import (
	"errors"
	"fmt"

	"maltwright/sim/air"
)

// turnShare: the part of the way to the room's temperature that malt goes in being
// thrown through the air; calibrated to a turn cooling the piece by one to two kelvin
// (common practice).
const turnShare = 0.20

// Turn evens temperature and moisture over the bed, and brings it a fifth of
// the way to the room it last stood in, but not out of the band it was held in:
// a maltster who holds a band stops at its edge. The heat is booked as lost.
func (p *Piece) Turn() {
	p.longest = p.LongestUnturned()
	p.sinceTurn = 0
	p.turns++
	p.y[excess], p.y[deficit] = 0, 0
	if p.age == 0 {
		return
	}
	t := p.T()
	q := p.capacity(&p.y) * (t - p.room.Hold.kept(t, t+turnShare*(p.room.T-t)))
	p.y[heat] -= q
	p.y[lost] += q
}

// Turns is the number of turns so far.
func (p *Piece) Turns() int { return p.turns }

// Sprinkle gives kg of water of t °C, 0 to 45, all of which the grain takes up,
// first on its open face. Less than nil, water that would bring the malt over
// 60 %, or a temperature out of range is a *[air.RangeError].
func (p *Piece) Sprinkle(kg, t float64) error {
	if p.lot.DryMass == 0 {
		return errNotMade
	}
	most := wettestX*p.dry(&p.y) - p.water(&p.y)
	if kg > most {
		return fmt.Errorf("the grain takes up no more than brings it to 60 %% moisture: %w", air.Within("water sprinkled", kg, "kg", 0, most))
	}
	err := errors.Join(
		air.Within("water sprinkled", kg, "kg", 0, most),
		air.Within("temperature of the water sprinkled", t, "°C", lowestBed, highestBed))
	if err != nil {
		return err
	}
	p.brought += kg
	p.y[deficit] -= kg / p.dryingArea()
	p.y[heat] += air.WaterHeat * t * kg
	p.sprinkled += air.WaterHeat * t * kg
	p.kept = max(p.kept, p.Moisture())
	return nil
}

// wettestX, kg/kg: 60 % wet basis, more than any malt takes up.
const wettestX = 0.6 / 0.4

var errNotMade = errors.New("this piece holds no grain; make it with New")
