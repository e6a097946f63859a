package kiln

import (
	"errors"

	"maltwright/sim/air"
)

// Target is the place whose temperature the kiln is set by.
type Target int

// The places a kiln can be set by.
const (
	AirOn   Target = iota // the air that enters the bed
	Oven                  // the air of a still oven: the same as AirOn
	AirOff                // the air that leaves the bed
	Malt                  // the mean of the malt
	Fresh                 // no heat and nothing led back: cooling, withering
	AsComes               // no heat: the air as it comes to the kiln from elsewhere; see [Bed.Feed]
)

var targetNames = [...]string{"air-on", "oven", "air-off", "malt", "fresh air", "air as it comes"}

// String gives the maltster's word.
func (t Target) String() string {
	if t < 0 || int(t) >= len(targetNames) {
		return "no target"
	}
	return targetNames[t]
}

// Setting is what the kiln is asked to do for a while. From and To are the
// temperature of the target, °C, at the beginning and the end, a straight line
// between them; Fresh and AsComes take no notice of them.
type Setting struct {
	Target        Target
	From, To      float64
	Airflow       *float64 // m³/s; nil for the kiln's own
	Recirculation *float64 // share led back; nil for the kiln's own
}

// Hold is the setting that keeps a target at t °C.
func Hold(target Target, t float64) Setting { return Setting{Target: target, From: t, To: t} }

// Limit is what keeps a kiln from its setting.
type Limit int

// What can keep a kiln from its setting.
const (
	Unlimited     Limit = iota
	ByHeater            // the heater is too weak
	ByReachHigh         // the controls end below it
	ByReachLow          // the controls end above it
	ByIncomingAir       // the air comes in warmer than asked, and nothing cools
	ByLead              // set by malt or air-off, air-on has run to its bound
	ByFeed              // the air that the kiln is fed comes cooler than asked, and nothing heats it
	ByWalls             // the walls are still warmer than asked, and nothing cools
)

func (s Setting) check(kit Equipment) error {
	err := air.Within("target", float64(s.Target), "", float64(AirOn), float64(AsComes))
	if s.Target != Fresh && s.Target != AsComes {
		err = errors.Join(err, checkSet(s.From), checkSet(s.To))
	}
	if s.Airflow != nil {
		err = errors.Join(err, checkAirflow(*s.Airflow, kit.Area))
	}
	if s.Recirculation == nil {
		return err
	}
	if kit.Still {
		return errors.Join(err, errors.New("a still oven has no fan to lead exhaust back"))
	}
	return errors.Join(err, air.Within("share of exhaust led back", *s.Recirculation, air.Share, 0, mostReturn))
}

func checkSet(t float64) error { return air.Within("temperature set", t, "°C", 0, Hottest) }

// at gives the temperature asked for when a share of the time has passed.
func (s Setting) at(share float64) float64 { return s.From + (s.To-s.From)*share }

func (s Setting) airflow(kit Equipment) float64 {
	return or(s.Airflow, kit.Airflow)
}

func (s Setting) recirculation(kit Equipment) float64 {
	switch {
	case s.Target == Fresh:
		return 0
	case s.Recirculation != nil:
		return *s.Recirculation
	}
	return kit.Recirculation
}
