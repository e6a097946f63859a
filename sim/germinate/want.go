package germinate

import "math"

// Pace is the speed of the growth clock were the whole bed at t °C and had all the oxygen that
// it wants, °C·h for each second.
func (p *Piece) Pace(t float64) float64 {
	return p.lot.ClockSpeed(p.y[clock], t, p.Moisture(), 1-p.y[debt]) / hour
}

// Want is the power, W, that would keep the whole bed at t °C in the room beside what
// heaping can do, between turns: above nil that of a heater, below it that of a cooler.
// It returns the errors of [Piece.Advance] for a room out of range.
func (p *Piece) Want(t float64, room Room) (float64, error) {
	face, err := room.face()
	if err != nil {
		return 0, err
	}
	at := *p
	at.y[excess] = 0
	at.setT(t)
	r := runner{p: &at, face: &face, room: &room, hold: room.Hold}
	f := at.flow(&at.y, &room, &face)
	need := r.need(course{}, &f)
	if need > 0 {
		return math.Max(0, need-at.heaped(&f)), nil
	}
	return need, nil
}
