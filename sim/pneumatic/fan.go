package pneumatic

import (
	"errors"
	"math"

	"maltwright/sim/air"
)

// Run is when the fan runs. With neither it runs always, with both whenever one
// of them has it run.
type Run struct {
	Thermostat *Thermostat
	Clock      *Clock
}

// Thermostat has the fan run from when the bed is warmer than Above until it is
// colder by Difference.
type Thermostat struct {
	Above      float64 // °C, 0 to 45
	Difference float64 // K, 0.05 to 10
	Warmest    bool    // it feels the warmest layer, not the mean of the bed
}

// Clock has the fan run for On seconds at the beginning of every Every seconds of
// the time in this vessel.
type Clock struct {
	On    float64 // s, 1 to Every
	Every float64 // s, 60 to 30 days
}

func (r Run) check() error {
	var err error
	if t := r.Thermostat; t != nil {
		err = errors.Join(err,
			air.Within("bed temperature at which the fan starts", t.Above, "°C", lowestBed, highestBed),
			air.Within("difference of the thermostat", t.Difference, "K", 0.05, 10))
	}
	if c := r.Clock; c != nil {
		every := air.Within("time from one start of the fan to the next", c.Every, "s", 60, longestAdvance)
		most := c.Every
		if every != nil { // it is no bound for the other either
			most = longestAdvance
		}
		err = errors.Join(err, every, air.Within("time that the fan runs", c.On, "s", 1, most))
	}
	return err
}

// clockEdge, s: so near to a switch of the clock it has switched.
const clockEdge = 1e-6

// phase is the time since the clock's last start, s.
func (c *Clock) phase(age float64) float64 {
	at := math.Mod(age, c.Every)
	if c.Every-at < clockEdge {
		return 0
	}
	return at
}

// untilSwitch is the time to the clock's next switch, s.
func (c *Clock) untilSwitch(age float64) float64 {
	if c == nil || c.On == c.Every {
		return math.Inf(1)
	}
	at := c.phase(age)
	if c.On-at > clockEdge {
		return c.On - at
	}
	return c.Every - at
}

// runs tells whether the fan runs, that has so far.
func (r Run) runs(so bool, age, mean, warmest float64) bool {
	if r.Clock == nil && r.Thermostat == nil {
		return true
	}
	if r.Clock != nil && r.Clock.On-r.Clock.phase(age) > clockEdge {
		return true
	}
	if r.Thermostat == nil {
		return false
	}
	over := r.Thermostat.over(mean, warmest)
	return over > 0 || so && over > -r.Thermostat.Difference
}

// over is how far the bed is above where the fan starts, K.
func (t *Thermostat) over(mean, warmest float64) float64 {
	if t.Warmest {
		return warmest - t.Above
	}
	return mean - t.Above
}

// passed is the share of a step after which the thermostat switches, from before
// to after, K above its start; one where it does not, as while the clock has the
// fan run in a bed that is cold.
func (t *Thermostat) passed(running bool, before, after float64) float64 {
	mark := 0.0
	if running {
		mark = -t.Difference
	}
	switch {
	case running && (before <= mark || after >= mark-switchMiss):
		return 1
	case !running && (before >= mark || after <= mark+switchMiss):
		return 1
	}
	return (before - mark) / (before - after)
}

// switchMiss, K: how far the bed may be past the thermostat's mark when it
// switches.
const switchMiss = 0.01
