package grain

import (
	"errors"
	"math"

	"maltwright/sim/air"
)

// Late says by how much a lot is faster late than the equations have it, and slower
// early, 0.2 to 5; at 1 it keeps to them. A factor of the lot moves a whole curve; this
// bends it. It stands for what the equations miss: grain of which the first weighings
// say one factor and the last ones another.
type Late struct {
	Uptake float64 // speed of the core in grain of 45 %; in grain of 15 % it is the inverse
	Growth float64 // pace of the clock at an acrospire of three quarters; at first it is the inverse
}

// Moistures, wet basis, between which the uptake is bent: from grain in store to grain
// at cast. By definition.
const (
	lateFrom = 0.15
	lateTo   = 0.45
)

func (l Late) check() error {
	return errors.Join(
		air.Within("late uptake", l.Uptake, "", 0.2, 5),
		air.Within("late growth", l.Growth, "", 0.2, 5))
}

// bend runs in a straight line from 1/v at 0 to v at 1, and stays at either end: a curve
// of which one half is faster is about as much slower in the other, so that the time for
// the whole of it hardly changes.
func bend(v, at float64) float64 {
	if v == 1 {
		return 1
	}
	return 1/v + (v-1/v)*math.Min(math.Max(at, 0), 1)
}

// Bent tells whether the speed of the uptake hangs on how wet the corns are, beyond what
// the equation of the core says.
func (l *Lot) Bent() bool { return l.Late.Uptake != 1 }

// lateUptake is the factor of the uptake at a moisture, wet basis.
func (l *Lot) lateUptake(w float64) float64 {
	return bend(l.Late.Uptake, (w-lateFrom)/(lateTo-lateFrom))
}

// lateGrowth is the factor of the clock where it stands at clock, °C·h.
func (l *Lot) lateGrowth(clock float64) float64 {
	return bend(l.Late.Growth, clock/(l.Profile.Chit+l.Profile.Marks[2]))
}
