package forecast

import (
	"maltwright/lang/model"
	"maltwright/sim/air"
)

// site is the place of work as the models take it: the middle of each band.
type site struct {
	air, water float64 // °C
	rh         float64 // of the air at its temperature, 0 to 1
	altitude   float64 // m
	pressure   float64 // Pa
}

// Where the site says nothing (common practice: a cool room in spring).
const (
	usualAir   = 14.0 // °C
	usualWater = 12.0 // °C
	usualRH    = 0.65
)

func (r *run) siteOf() site {
	s := site{air: usualAir, water: usualWater, rh: usualRH}
	given := r.p.Site
	if given == nil {
		given = &model.Site{}
	}
	set := func(v *model.Range, into *float64, offset, at float64, taken func() Assumption) {
		if v != nil {
			*into = within(v.Range, at) - offset
		}
		if v == nil || !v.Single() {
			r.assume(taken())
		}
	}
	set(given.Air, &s.air, zeroC, r.o.AirAt, func() Assumption { return RoomAir{s.air, given.Air} })
	set(given.Humidity, &s.rh, 0, r.o.HumidityAt, func() Assumption { return RoomHumidity{s.rh, given.Humidity} })
	set(given.Water, &s.water, zeroC, r.o.WaterAt, func() Assumption { return DrawnWater{s.water, given.Water} })
	if given.Altitude != nil {
		s.altitude = given.Altitude.SI
	} else {
		r.assume(SeaLevel{})
	}
	s.pressure, _ = air.Pressure(s.altitude) // the language keeps the height in range
	if s.pressure == 0 {
		s.pressure = air.StandardPressure
	}
	return s
}

// rhAt is the relative humidity of the site's air once it is warmed or cooled to
// t: its water stays the same, and it can hold no more than saturation.
func (s site) rhAt(t float64) float64 {
	return min(s.rh*air.Saturation(s.air)/air.Saturation(t), 1)
}
