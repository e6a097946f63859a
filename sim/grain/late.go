package grain

import "math"

// lateGrowth is the factor of the clock where it stands at clock, °C·h. It runs in a
// straight line from the inverse of LateGrowth at the beginning to LateGrowth at an
// acrospire of three quarters, and stays: a growth that is faster late is about as much
// slower early, so that the whole of it hardly takes another time.
func (l *Lot) lateGrowth(clock float64) float64 {
	v := l.LateGrowth
	if v == 1 {
		return 1
	}
	at := clock / (l.Profile.Chit + l.Profile.Marks[2])
	return 1/v + (v-1/v)*math.Min(math.Max(at, 0), 1)
}

// HoldCore has the core of the lot drink so many times what that of its species does, in
// the end, above 0: at first it drinks as fast as before.
func (l *Lot) HoldCore(factor float64) { l.Profile.CoreWater *= factor }
