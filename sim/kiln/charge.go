package kiln

import (
	"errors"

	"maltwright/sim/air"
	"maltwright/sim/draught"
	"maltwright/sim/drying"
)

// Charge is the malt put on the kiln.
type Charge struct {
	DryMass     float64  // dry matter, kg
	Moisture    float64  // kg of water per kg of dry matter
	Temperature float64  // °C
	Depth       *float64 // of the bed, m; nil to reckon it from BulkDensity
	BulkDensity float64  // of the wet malt, kg/m³; used when Depth is nil
	Settled     *float64 // depth by which the surface of the kernels is reckoned, m; nil for that of the bed
	DryDepth    *float64 // that the bed shrinks to, bone-dry, m, up to its depth; nil where it does not shrink
}

// Equipment is the kiln.
type Equipment struct {
	Area    float64  // of the bed, seen from above, m²
	Airflow float64  // at air-on, m³/s; of a still oven what leaks or is vented; with a Way the most that is let through, 0 for all that comes
	Heater  *float64 // power, W; nil if not stated, then it never limits

	// ReachLow and ReachHigh are the coolest and hottest air-on that the
	// controls allow while heating, °C; nil if not stated.
	ReachLow, ReachHigh *float64

	Way *draught.Way // what drives the air and what is in its way; nil for an airflow that is there whatever the bed

	Recirculation float64 // share of the exhaust led back, 0 to 0.98
	Recovers      float64 // temperature ratio of the heat exchanger of the exhaust, 0 to 0.98; 0 for none
	Still         bool    // an oven without a fan
	Layers        int     // 0 for as many as LayersFor gives at 60 °C; a still oven and a drum have one
	Drum          Drum    // that the malt is tumbled in; see [Equipment.In]

	Over []Over // beds on floors above that the exhaust goes through, the nearest first; none where it goes out

	Walls *Walls // nil: the kiln's own walls neither hold nor lose heat
	Door  *Door  // of a still oven, ajar; nil: shut

	// Cools is what drives the air once the fire is out, of a kiln whose fire drew it; nil where
	// that is the same. With nothing that drives, malt cools in still air.
	Cools *draught.Way
}

// Ambient is the air that the kiln draws in.
type Ambient struct {
	T        float64 // °C
	RH       float64 // relative humidity, 0 to 1
	Altitude float64 // m
}

const (
	// mostLayers bounds the number of layers that can be asked for.
	mostLayers = 400

	// Hottest bounds air-on and malt, °C. Above [drying.Hottest] they are carried along, so that
	// a roast can be timed and cooled, and mean no more than that: nothing was at hand on malt so hot, which burns
	// and loses more than water.
	Hottest = 300.0

	// thinnest is the least depth of a bed, m: kernels strewn so far apart that air passes
	// between them as if there were none.
	thinnest = 1e-8

	// StillVent is a usual air change through the leaks and the vent of a
	// household oven, m³/s (calibrated: 2 m³/h). It is never assumed: a caller
	// who takes it says so.
	StillVent = 2.0 / 3600
)

// check returns every *[air.RangeError] of the charge.
func (c Charge) check() error {
	err := errors.Join(
		air.Within("dry matter on the kiln", c.DryMass, "kg", 1e-3, 1e6),
		air.Within("moisture, dry basis", c.Moisture, "kg/kg", 0, 1.5),
		air.Within("temperature of the malt", c.Temperature, "°C", 0, Hottest),
	)
	err = errors.Join(err,
		optional("depth of the settled bed", c.Settled, "m", thinnest/10, 20),
		optional("depth of the dry bed", c.DryDepth, "m", thinnest/10, 20))
	if c.Depth != nil {
		return errors.Join(err, air.Within("depth of the bed", *c.Depth, "m", thinnest, 10))
	}
	return errors.Join(err, air.Within("bulk density", c.BulkDensity, "kg/m³", 200, 1000))
}

// bedDepth gives the depth of the bed, m, on area m².
func (c Charge) bedDepth(area float64) float64 {
	if c.Depth != nil {
		return *c.Depth
	}
	return c.DryMass * (1 + c.Moisture) / (c.BulkDensity * area)
}

// shrinks gives by how much a bed of that depth, m, shrinks for each kg/kg of moisture: what
// it would until it is bone-dry, in a straight line.
func (c Charge) shrinks(depth float64) float64 {
	if c.DryDepth == nil || c.Moisture == 0 {
		return 0
	}
	return max(0, depth-*c.DryDepth) / c.Moisture
}

func (e Equipment) check() error {
	err := errors.Join(
		air.Within("area of the kiln", e.Area, "m²", 1e-3, 1e4),
		optional("heater", e.Heater, "W", 0, 1e8),
		air.Within("share of exhaust led back", e.Recirculation, air.Share, 0, mostReturn),
		air.Within("share of the exhaust's heat recovered", e.Recovers, air.Share, 0, mostRecovery),
		air.Within("layers", float64(e.Layers), "", 0, mostLayers),
		optional("coolest air-on", e.ReachLow, "°C", drying.Coldest, Hottest),
		optional("hottest air-on", e.ReachHigh, "°C", max(drying.Coldest, or(e.ReachLow, drying.Coldest)), Hottest),
		e.checkWay(), e.checkOver(), e.Walls.check(), e.Door.check(e.Still),
	)
	if e.Still && e.Recirculation != 0 {
		err = errors.Join(err, errors.New("a still oven has no fan to lead exhaust back"))
	}
	if e.Still && e.Recovers != 0 {
		err = errors.Join(err, errors.New("a still oven has no exhaust to recover heat from"))
	}
	return err
}

// mostReturn bounds the share of exhaust led back: with all of it nothing dries.
const mostReturn = 0.98

// optional bounds a value that may be left out.
func optional(quantity string, v *float64, unit string, low, high float64) error {
	if v == nil {
		return nil
	}
	return air.Within(quantity, *v, unit, low, high)
}

// or is a value, or another where it is left out.
func or(v *float64, otherwise float64) float64 {
	if v == nil {
		return otherwise
	}
	return *v
}

// checkAirflow bounds the airflow through its speed in front of the bed.
func checkAirflow(flow, area float64) error {
	return air.Within("airflow", flow, "m³/s", 1e-5*area, 3*area)
}

// state gives the ambient air.
func (a Ambient) state() (air.State, error) {
	p, err := air.Pressure(a.Altitude)
	if err != nil {
		return air.State{}, err
	}
	if err := air.Within("ambient temperature", a.T, "°C", drying.Coldest, 50); err != nil {
		return air.State{}, err
	}
	return air.FromRH(a.T, a.RH, p)
}
