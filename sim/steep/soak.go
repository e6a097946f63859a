package steep

import (
	"errors"
	"math"

	"maltwright/sim/air"
)

const (
	// DefaultWaterPerKg is the steep water drawn for a kg of grain, litres:
	// common practice, enough to stand a hand above the swollen bed.
	DefaultWaterPerKg = 1.5

	lowestWater, highestWater = 0.0, 40.0 // °C
	longestStep               = 30 * 86400.0
	// leachTime, s: time constant of leaching; calibrated with the pool of the
	// profile to 1.0 % over a usual steep [narziss].
	leachTime = 20 * hour
	// fillEnd, s: film and husk are full to 1e-5 by then.
	fillEnd = 10 * fillTime
)

// Water is what the grain stands in.
type Water struct {
	T        float64  // °C, 0 to 40, as it is poured
	PerKg    *float64 // litres per kg of grain as received, 0.5 to 20; nil means DefaultWaterPerKg, and grain that is as warm as the water
	Aerated  bool     // air blown through all the time, as much as is usual: the water stays full of oxygen
	Blown    *Blown   // air blown through at intervals; nil for never. It adds nothing to Aerated
	Airflow  float64  // m³/s for each kg of grain as received, blown through all the time, 0 to 1e-3; nothing beside Aerated
	Overflow float64  // litres a second for each kg of grain as received that run in, and off again, 0 to 0.1
}

func (w Water) checked() (Water, error) {
	return w, errors.Join(
		w.Blown.check(),
		air.Within("water temperature", w.T, "°C", lowestWater, highestWater),
		air.Within("air through the water", w.Airflow, "m³/s for each kg", 0, 1e-3),
		air.Within("overflow", w.Overflow, "l/s for each kg", 0, 0.1),
		air.Within("water drawn", w.perKg(), "l/kg", 0.5, 20))
}

func (w Water) perKg() float64 {
	if w.PerKg == nil {
		return DefaultWaterPerKg
	}
	return *w.PerKg
}

// full is the oxygen in fresh water, mg per kg of grain as received.
func (w Water) full() float64 { return w.fullAt(w.T) }

// fullAt is the most oxygen that it holds at t °C.
func (w Water) fullAt(t float64) float64 { return saturation(t) * w.perKg() }

// Soak keeps the grain under water for dt seconds, above nil and at most 30
// days. After a rest, and at first, it begins a new soak in fresh water; else
// the water is the same as before, at its new temperature. Out of range it
// returns a *[air.RangeError] and leaves the state as it was.
//
// The kernels grow and burn by the oxygen that they can take, see [State.Oxygen]. Once
// that is gone growth stands still; what they then lose by fermenting is not followed.
func (s *State) Soak(dt float64, water Water) error {
	water, err := water.checked()
	if err = errors.Join(err, s.checkStep(dt)); err != nil {
		return err
	}
	if !s.submerged {
		s.submerged, s.wetted, s.soakAge, s.waterAge = true, true, 0, 0
		s.soaks++
		s.oxygen = water.full()
		s.pour(water)
	}
	s.standsIn(water)
	for dt > 0 {
		dt -= s.soakPart(dt, water)
	}
	return nil
}

// ChangeWater drains the vessel and fills it afresh without a rest between: the
// oxygen is that of fresh water. In air, or with water out of range, it returns
// an error.
func (s *State) ChangeWater(water Water) error {
	water, err := water.checked()
	if err != nil {
		return err
	}
	if !s.submerged {
		return errors.New("the water can be changed only while the grain stands in it")
	}
	s.oxygen, s.waterAge = water.full(), 0
	s.pour(water)
	return nil
}

func (s *State) checkStep(dt float64) error {
	if s.lot.DryMass == 0 {
		return errNotMade
	}
	return air.Within("step", dt, "s", math.SmallestNonzeroFloat64, longestStep)
}

// soakPart goes on to the end of dt, to the end of the filling, to the hour the
// oxygen is gone or to where the air is turned on or off, whichever comes first,
// and returns the seconds it took.
func (s *State) soakPart(dt float64, water Water) float64 {
	st := stretch{dt: dt, t: s.t, maxStep: growthStep}
	if water.PerKg != nil || water.Overflow > 0 { // warmth or oxygen may change by themselves
		st.dt = math.Min(st.dt, warmStep)
	}
	if s.soakAge < fillEnd {
		st.maxStep = fillStep
		st.dt = math.Min(st.dt, fillEnd-s.soakAge)
	}
	blowing := false
	switch {
	case water.Aerated:
		s.oxygen = water.fullAt(s.t)
	case water.Blown != nil:
		var left float64
		blowing, left = water.Blown.at(s.waterAge)
		st.dt = math.Min(st.dt, left)
	}
	after, share, x := s.oxygen, 1.0, always(water, s.t)
	if !water.Aerated {
		x = water.exchange(blowing, s.t)
		after, share = s.breathes(&st, x)
	}
	s.drinksAir(&st, x, share, water.Aerated)
	st.t = s.warmed(water, st.dt)
	s.soakStretch(&st, share)
	s.oxygen = after
	return st.dt
}

// soakStretch moves the waters through a stretch in which the kernels get a share, 0 to 1,
// of the oxygen that they ask for.
func (s *State) soakStretch(st *stretch, share float64) {
	p := &s.lot.Profile
	from, leached := s.water, s.leached
	c := s.thirst(st.t)
	most := s.most()
	st.water = func(dt float64) uptake { return from.soaked(dt, c, most) }
	st.leached = func(dt float64) float64 { return p.LeachPool + (leached-p.LeachPool)*math.Exp(-dt/leachTime) }
	s.grow(st)
	s.water, s.leached = st.water(st.dt), st.leached(st.dt)
	s.taken += s.water.sum() - from.sum()
	s.airless += (1 - share) * st.dt
	s.held = max(0, s.held+(1-2*share)*st.dt)
	s.drown()
	s.soakAge += st.dt
	s.waterAge += st.dt
	s.waterTime += st.dt
	s.wetTime += st.dt
}
