package steep

import (
	"math"

	"maltwright/sim/air"
)

const (
	// pelegK1, h at 15 °C, of barley: calibrated to the steeping table of [kunze].
	pelegK1 = 43.0
	// uptakeTk, K: 15 °C, where pelegK1 holds. By definition.
	uptakeTk = 15 + air.ZeroCelsius
	// fillTime, s: time constant with which film and husk fill; calibrated to
	// 23.2 % after five minutes at 18 °C [heriot-watt-icbd].
	fillTime = 72.0

	hour = 3600.0
)

// uptake is what a kernel has taken up beyond its first moisture, kg per kg of
// the first dry matter.
type uptake struct{ core, husk, film float64 }

func (w uptake) sum() float64 { return w.core + w.husk + w.film }

// uptakeRate is 1/k1 at t °C, per second, for the activation energy E of the species,
// J/mol:
//
//	k1 = 43 h · exp[E/R·(1/Tk − 1/288.15)]
func uptakeRate(t, energy float64) float64 {
	return math.Exp(-energy/air.MolarGas*(1/(t+air.ZeroCelsius)-1/uptakeTk)) / (pelegK1 * hour)
}

// drunk is Peleg's law from a core that has drunk core, of most, after a further c, the
// integral of m·s/k1 over time: with u = 1 − core/most, 1/u rises by c/most. A core that
// holds that or more, as of a lot that was moist from the field, drinks nothing.
func drunk(core, most, c float64) float64 {
	u := 1 - core/most
	if u <= 0 {
		return core
	}
	return core + u*u*c/(1+u*c/most)
}

// most is where the waters go to under water.
func (s *State) most() uptake {
	p := &s.lot.Profile
	return uptake{core: p.CoreWater, husk: p.HuskWater, film: p.FilmWater}
}

// soaked gives the uptake after dt seconds under water, or under a spray, toward the most
// that each water comes to.
func (w uptake) soaked(dt float64, c thirst, most uptake) uptake {
	left := math.Exp(-dt / fillTime)
	return uptake{
		core: drunk(w.core, most.core, c.over(dt)),
		husk: most.husk + (w.husk-most.husk)*left,
		film: most.film + (w.film-most.film)*left,
	}
}

// rested gives the waters after dt seconds in air: the core drinks, and drying, kg/kg per
// second, evaporates; both from the film first, then from the husk. dt must not go past
// [uptake.lasts]; a kernel with no loose water dries from its core.
func (w uptake) rested(dt float64, c thirst, drying float64, most uptake) uptake {
	if w.husk+w.film <= 0 {
		return uptake{core: w.core - drying*dt}
	}
	core := drunk(w.core, most.core, c.over(dt))
	used := core - w.core + drying*dt
	film := math.Max(0, w.film-used)
	husk := math.Max(0, w.husk-math.Max(0, used-w.film))
	return uptake{core: core, husk: husk, film: film}
}

// lasts gives the seconds, at most limit, for which film and husk last in air: what is used
// rises steadily.
func (w uptake) lasts(limit float64, c thirst, drying float64, most uptake) float64 {
	store := w.husk + w.film
	left := func(t float64) float64 {
		return store - (drunk(w.core, most.core, c.over(t)) - w.core + drying*t)
	}
	if store <= 0 || left(limit) >= 0 {
		return limit
	}
	return firstNil(left, limit)
}
