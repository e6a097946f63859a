package germinate

import (
	"errors"
	"math"

	"maltwright/sim/air"
	"maltwright/sim/grain"
)

// Room is the air about the bed, and what is done to keep the bed in it.
type Room struct {
	T  float64 // °C, −30 to 45
	RH float64 // relative humidity of the air over the bed, 0 to 1
	// Cover is how far the air right over the bed is shut in, 0 to 1: at 0 it is the room's,
	// and at 1 as warm as the face of the bed; RH is its humidity in either case.
	Cover float64
	// Lifts has the cover lifted as far as the piece is wetter than it was laid out, or
	// sprinkled to: over the first half point of it all the way.
	Lifts    bool
	AirSpeed float64  // over the bed, m/s, 0 to 5; 0 is still air
	Passes   *float64 // of the vapour that an open face usually gives to the air, 0.05 to 20; nil means 1
	Pressure *float64 // Pa; nil means 101,325
	Hold     *Band    // the bed is held in this band as far as that can be done; nil lets it float
	Heater   float64  // that can warm the held bed, W, 0 to 1e9
	Cooler   float64  // that can cool it, W, 0 to 1e9
}

// strongest, W, is a heater or a cooler that no floor has.
const strongest = 1e9

// Band is a range of mean bed temperature. Low may equal High.
type Band struct{ Low, High float64 } // °C, 0 to 45

// kept is how far a bed at the temperature from may go toward another, °C: all
// the way when it floats, else to the near edge of the band, from outside as
// from inside.
func (b *Band) kept(from, to float64) float64 {
	switch {
	case b == nil:
		return to
	case to < from:
		return math.Max(to, math.Min(from, b.Low))
	}
	return math.Min(to, math.Max(from, b.High))
}

func (r Room) face() (grain.Face, error) {
	face, err := grain.NewFace(r.T, r.RH, r.AirSpeed, r.Pressure)
	err = errors.Join(err,
		air.Within("cover of the bed", r.Cover, air.Share, 0, 1),
		face.Passing(r.Passes),
		air.Within("heater of the floor", r.Heater, "W", 0, strongest),
		air.Within("cooler of the floor", r.Cooler, "W", 0, strongest))
	if r.Hold == nil {
		return face, err
	}
	low := air.Within("lower end of the bed's band", r.Hold.Low, "°C", lowestBed, highestBed)
	from := r.Hold.Low
	if low != nil { // it is no bound for the upper end either
		from = lowestBed
	}
	return face, errors.Join(err, low, air.Within("upper end of the bed's band", r.Hold.High, "°C", from, highestBed))
}
