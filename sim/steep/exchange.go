package steep

import "math"

// usualBlown, m³/s for each kg: the air for which airTransfer holds, 10 m³ for a tonne and
// hour. What less or more air brings goes with its amount: that of a bubble does not depend
// on how many there are.
const usualBlown = 10.0 / 1000 / hour

// exchange is what brings oxygen into the water: air that is blown through, and water that
// runs in and off again.
type exchange struct {
	k    float64 // per second: of what is missing
	full float64 // toward which it goes, mg per kg of grain as received
}

// exchange is that of the water at t °C while the air at intervals blows or not. Air goes
// toward saturation at t, fresh water toward saturation as it runs in:
//
//	k = k(air) + overflow/water, full = (k(air)·full(t) + overflow·saturation)/k
//
// The water is taken to be mixed.
func (w Water) exchange(blowing bool, t float64) exchange {
	blown := w.transfer() * w.Airflow / usualBlown
	if blowing {
		blown += w.transfer()
	}
	in := w.Overflow / w.perKg()
	if blown+in == 0 {
		return exchange{}
	}
	return exchange{blown + in, (blown*w.fullAt(t) + in*w.full()) / (blown + in)}
}

// always is the exchange of water through which the usual air is blown all the time.
func always(w Water, t float64) exchange { return exchange{w.transfer(), w.fullAt(t)} }

// drinksAir sets what the kernels can take in a stretch in which they get a share of what they
// draw from the water as it stands. To that comes what bubbles and fresh water bring and the
// water does not keep: of k·full in all it keeps k·(full − o), and k·o passes the kernels. In
// water that stays full all of k·full is theirs.
func (s *State) drinksAir(st *stretch, x exchange, share float64, full bool) {
	if full {
		st.inWater = func(float64) float64 { return s.each(x.k * x.full) }
		return
	}
	o, wetTime, starved := s.oxygen, s.wetTime, share < 1
	st.lack = 1 - share
	st.inWater = func(at float64) float64 {
		could := share * s.draws(wetTime+at)
		if x.k > 0 && !starved {
			could += s.each(x.k * math.Max(0, x.after(o, wetTime, at)))
		}
		return could
	}
}

// breathes gives the oxygen at the end of the stretch and the share of what the kernels ask
// for that they get in it. It cuts the stretch where the oxygen runs out.
//
// Where what comes in is less than they ask for, they get that, and the water holds none.
func (s *State) breathes(st *stretch, x exchange) (after, share float64) {
	if s.oxygen <= 0 && x.k == 0 {
		return 0, 0
	}
	if s.oxygen <= 0 {
		st.dt = math.Min(st.dt, warmStep)
		asked := demand(s.wetTime+st.dt) - demand(s.wetTime)
		if got := x.k * x.full * st.dt; got < asked {
			return 0, got / asked
		}
	}
	if x.k == 0 {
		if lasts := math.Max(0, s.OxygenLasts()); lasts <= st.dt {
			st.dt = lasts
			return 0, 1
		}
		return math.Max(0, s.oxygen-(demand(s.wetTime+st.dt)-demand(s.wetTime))), 1
	}
	left := func(dt float64) float64 { return x.after(s.oxygen, s.wetTime, dt) }
	if after = left(st.dt); after < 0 {
		st.dt = firstNil(left, st.dt)
		after = 0
	}
	return after, 1
}

// firstNil finds where a falling function goes through nil, at most at limit.
func firstNil(of func(float64) float64, limit float64) float64 {
	low, high := 0.0, limit
	for high-low > onTime {
		if mid := (low + high) / 2; of(mid) > 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}

// after gives the oxygen after dt, s, in water that held the oxygen o at the time t, s,
// since the first wetting, mg per kg of grain as received:
//
//	do/dt = k·(full − o) − d(t)
//
// d the demand of which demand is the integral: 10^(t/t3) mg/(kg·h) up to t3, demandTime,
// and 10 mg/(kg·h) after. It is the exact solution on either side of t3, and falls below nil
// where the kernels ask for more than there is.
func (x exchange) after(o, t, dt float64) float64 {
	if t < demandTime && t+dt > demandTime {
		o = x.after(o, t, demandTime-t)
		t, dt = demandTime, t+dt-demandTime
	}
	rise := 0.0 // per second
	if t < demandTime {
		rise = math.Log(demandGrowth) / demandTime
	}
	now := firstDemand * math.Pow(demandGrowth, math.Min(t/demandTime, 1)) / hour // mg/(kg·s)
	used := now * (math.Exp(rise*dt) - math.Exp(-x.k*dt)) / (x.k + rise)
	return x.full + (o-x.full)*math.Exp(-x.k*dt) - used
}
