package forecast

import (
	"fmt"

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
	degrees := func(t float64) string { return r.p.Degrees(t, 1) }
	set := func(v *model.Range, into *float64, offset float64, at float64, what string, write func(float64) string) {
		if v != nil {
			*into = within(v.Range, at) - offset
			if !v.Single() {
				r.assume(what, v.High.Like(within(v.Range, at)), "the middle of the site's "+v.String())
			}
			return
		}
		r.assume(what, write(*into), "the site does not say")
	}
	set(given.Air, &s.air, zeroC, r.o.AirAt, "air of the room", degrees)
	set(given.Humidity, &s.rh, 0, r.o.HumidityAt, "humidity of the room", func(v float64) string { return fmt.Sprintf("%.0f %%", 100*v) })
	set(given.Water, &s.water, zeroC, r.o.WaterAt, "water as drawn", degrees)
	if given.Altitude != nil {
		s.altitude = given.Altitude.SI
	} else {
		r.assume("height above the sea", "0 m", "the site does not say")
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
