package pneumatic

import (
	"errors"
	"math"

	"maltwright/sim/air"
	"maltwright/sim/grain"
)

// Supply is the air that is asked for, and what there is to make it with.
type Supply struct {
	Room   Room
	Flow   float64 // m³/s at air-on, up to 2 m/s over the area; 0 lets the bed stand
	T      float64 // asked of air-on, °C, 0 to 45
	RH     float64 // asked of air-on, 0 to 1
	Return float64 // share of the exhaust led back, 0 to 0.98

	Cooler, Heater *float64 // power, W; nil if not stated, then it never limits
	NoSpray        bool     // there is nothing to humidify the air with
	Fan            Fan

	Run    Run     // when the fan runs; the zero value is always
	Follow *Follow // air-on or flow follow the bed; nil for what is asked above
}

// Room is the air about the vessel, which the fan draws in.
type Room struct {
	T        float64  // °C, 0 to 45
	RH       float64  // relative humidity, 0 to 1
	Pressure *float64 // Pa; nil means 101,325
	// Open has the upper face lie open to it while the fan runs as well, and give what the
	// air that leaves by it lets through; a box that grows is shut.
	Open     bool
	AirSpeed float64  // over that face, m/s, 0 to 5
	Passes   *float64 // of the vapour that the face usually gives, 0.05 to 20; nil means 1
}

// Fan is what the fan adds to the air. All that drives it ends as heat in the air.
type Fan struct {
	// Pressure is that it works against behind spray and cooler, Pa, 0 to 3000; 0 leaves its
	// heat there out.
	Pressure   float64
	Efficiency float64 // 0.15 to 1; not asked for without a pressure
	// Power is what a fan draws that blows through spray and cooler, W: it warms the air before
	// them, so that they still make the air that is asked. One is named by Pressure or by Power.
	Power float64
}

// mostFanWarmth bounds by how much Power warms the air, K: a fan that hardly moves any gives its
// heat to the room.
const mostFanWarmth = 20.0

// behind is what the fan gives to each m³ of air behind spray and cooler, J.
func (f Fan) behind() float64 {
	if f.Pressure == 0 {
		return 0
	}
	return f.Pressure / f.Efficiency
}

// heat is what the fan gives to each m³ of air of which a kg of dry air is v m³ and takes moist
// J/K, at a flow in m³/s, J.
func (f Fan) heat(flow, v, moist float64) float64 {
	if f.Power == 0 {
		return f.behind()
	}
	return f.behind() + min(f.Power/flow, mostFanWarmth*moist/v)
}

const (
	mostReturn   = 0.98 // with all of it led back the kernels would have no air
	slowest      = 1e-6 // m/s before the bed, of a fan that runs
	fastest      = 2.0  // m/s before the bed
	mostPower    = 1e9  // W
	mostPressure = 3000 // Pa
)

// supplied is a supply that was found in order, over one vessel.
type supplied struct {
	Supply
	face     grain.Face
	room     air.State
	pressure float64
}

// check returns the supply with the states of its air, or every *[air.RangeError].
func (s Supply) check(area float64) (supplied, error) {
	p := air.StandardPressure
	if s.Room.Pressure != nil {
		p = *s.Room.Pressure
	}
	face, err := grain.NewFace(s.Room.T, s.Room.RH, s.Room.AirSpeed, &p)
	if err != nil {
		return supplied{}, err
	}
	passing := face.Passing(s.Room.Passes)
	room, err := air.FromRH(s.Room.T, s.Room.RH, p)
	err = errors.Join(err, passing,
		checkFlow("airflow", s.Flow, area, 0),
		air.Within("temperature of air-on", s.T, "°C", lowestBed, highestBed),
		air.Within("relative humidity of air-on", s.RH, air.Share, 0, 1),
		air.Within("share of exhaust led back", s.Return, air.Share, 0, mostReturn),
		checkPower("cooler", s.Cooler), checkPower("heater", s.Heater),
		air.Within("pressure of the fan", s.Fan.Pressure, "Pa", 0, mostPressure),
		air.Within("power of the fan", s.Fan.Power, "W", 0, mostPower),
		s.Run.check(), s.Follow.check(area),
	)
	if s.Fan.Pressure != 0 {
		err = errors.Join(err, air.Within("efficiency of the fan", s.Fan.Efficiency, air.Share, 0.15, 1))
	}
	if s.Follow != nil && s.Follow.By == Airflow {
		s.Flow = s.Follow.Most
	}
	return supplied{Supply: s, face: face, room: room, pressure: p}, err
}

func checkFlow(what string, flow, area, low float64) error {
	if flow == 0 && low == 0 {
		return nil
	}
	return air.Within(what, flow, "m³/s", slowest*area, fastest*area)
}

func checkPower(what string, power *float64) error {
	if power == nil {
		return nil
	}
	return air.Within(what, *power, "W", 0, mostPower)
}

// power is that of a cooler or heater, W, without bound where none is stated.
func power(stated *float64) float64 {
	if stated == nil {
		return math.Inf(1)
	}
	return *stated
}
