package grain

import (
	"math"

	"maltwright/sim/air"
)

const (
	// faceHeat, W/(m² K): heat from an open face of grain to still room air, by
	// convection and radiation; common practice.
	faceHeat = 8.0
	// faceConvection, W/(m² K), and faceWind, W/(m² K) for each m/s: the
	// convective part, which the evaporation follows; handbook, flat plates in
	// air [mcadams-1954], from memory.
	faceConvection = 5.7
	faceWind       = 3.8

	highestWind = 5.0 // m/s, where the straight line of faceWind ends
)

// Face is the air that an open face of grain looks at. Make it with [NewFace].
type Face struct {
	room       air.State
	heat, mass float64 // W/(m² K), kg/(m² s) per unit of humidity ratio
}

// coldestRoom and warmestRoom, °C: of rooms in which grain is kept.
const coldestRoom, warmestRoom = -30.0, 50.0

// NewFace returns the face toward room air of t °C, −30 to 50, relative humidity
// rh, 0 to 1, moving at speed m/s, 0 to 5, at pressure Pa (nil: 101,325).
// Outside it returns a *[air.RangeError].
//
// Heat leaves by 8 + 3.8·speed W/(m² K). By the analogy of Lewis vapour leaves
// by (5.7 + 3.8·speed)/c_p kg/(m² s), c_p the heat capacity of the moist air.
func NewFace(t, rh, speed float64, pressure *float64) (Face, error) {
	p := air.StandardPressure
	if pressure != nil {
		p = *pressure
	}
	room, err := air.FromRH(t, rh, p)
	if err != nil {
		return Face{}, err
	}
	if err := air.Within("room temperature", t, "°C", coldestRoom, warmestRoom); err != nil {
		return Face{}, err
	}
	if err := air.Within("air speed over the bed", speed, "m/s", 0, highestWind); err != nil {
		return Face{}, err
	}
	cp := air.DryAirHeat + air.VapourHeat*room.W
	return Face{
		room: room,
		heat: faceHeat + faceWind*speed,
		mass: (faceConvection + faceWind*speed) / cp,
	}, nil
}

// Passing has the face pass so many times the vapour that it usually does; nil leaves it.
// Outside 0.05 to 20 it returns a *[air.RangeError].
func (f *Face) Passing(times *float64) error {
	if times == nil {
		return nil
	}
	f.mass *= *times
	return air.Within("vapour that the face passes", *times, "", 0.05, 20)
}

// Blown is the face that so much dry air, kg/(m² s), leaves through: it pushes the room's
// air off, so that heat and vapour pass φ/(e^φ − 1) of what they do, φ the flow over what
// the face conducts; film theory, published [bird-2002]. With the flow the face takes less,
// and both together more: G + G/(e^φ − 1) rises with G.
func (f Face) Blown(flow float64) Face {
	phi := flow / f.mass
	if phi < 1e-9 {
		return f
	}
	share := phi / math.Expm1(phi)
	f.heat, f.mass = f.heat*share, f.mass*share
	return f
}

// RoomT is the temperature of the room air, °C.
func (f Face) RoomT() float64 { return f.room.T }

// Conductance is the heat conductance of the face, W/(m² K).
func (f Face) Conductance() float64 { return f.heat }

// Evaporation gives the water that leaves a surface of t °C, −100 to 100, and
// water activity aw, 0 to 1, in kg/(m² s): mass conductance times the
// difference between the humidity ratio at the surface and that of the room. It
// is negative when the room's vapour condenses. It is not a number outside.
func (f Face) Evaporation(t, aw float64) float64 {
	return f.mass * (air.HumidityRatio(aw*air.Saturation(t), f.room.P) - f.room.W)
}

// WetConductance is the heat conductance that the evaporation of a wet surface
// near t °C adds to the face, W/(m² K): the slope of its heat by temperature.
func (f Face) WetConductance(t float64) float64 {
	p, slope := air.SaturationSlope(t)
	perKelvin := air.HumidityRatio(p, f.room.P) * slope / p * f.room.P / (f.room.P - p)
	return f.mass * perKelvin * air.VapourEnthalpy(t)
}
