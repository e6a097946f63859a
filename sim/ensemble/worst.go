package ensemble

import (
	"context"
	"time"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// Corner is one corner of the site's bands, and what breaks there.
type Corner struct {
	Ends     []End             // one for each band
	Gates    []forecast.Gate   // that are not met
	Expects  []forecast.Expect // that do not hold
	Forecast *forecast.Forecast
}

type axis struct {
	open Open
	r    *model.Range
	set  func(*forecast.Options, float64)
}

// Corners forecasts the process in every corner of the bands of its site - each at
// its low or its high end - and says which gates and promises do not hold there. A
// site without bands has one corner.
func Corners(ctx context.Context, p *model.Process, begun time.Time) ([]Corner, error) {
	var axes []axis
	if s := p.Site; s != nil {
		for _, a := range []axis{
			{RoomAir, s.Air, func(o *forecast.Options, v float64) { o.AirAt = v }},
			{RoomHumidity, s.Humidity, func(o *forecast.Options, v float64) { o.HumidityAt = v }},
			{DrawnWater, s.Water, func(o *forecast.Options, v float64) { o.WaterAt = v }},
		} {
			if a.r != nil && !a.r.Single() {
				axes = append(axes, a)
			}
		}
	}
	var out []Corner
	for bits := range 1 << len(axes) {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		c, err := cornerOf(ctx, p, begun, axes, bits)
		if err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
}

func cornerOf(ctx context.Context, p *model.Process, begun time.Time, axes []axis, bits int) (Corner, error) {
	o := forecast.Options{Begun: begun}
	var c Corner
	for i, a := range axes {
		end, at := a.r.Low, -1.0
		if bits&(1<<i) != 0 {
			end, at = a.r.High, 1
		}
		a.set(&o, at)
		c.Ends = append(c.Ends, End{a.open, end, a.r.High})
	}
	o.Meter = work.NewMeter(ctx, nil)
	f, err := forecast.Run(p, o)
	if err != nil {
		return Corner{}, err
	}
	c.Forecast = f
	for _, g := range f.Gates {
		if !g.Met {
			c.Gates = append(c.Gates, g)
		}
	}
	for _, e := range f.Expects {
		if !e.Holds && !e.Unjudged {
			c.Expects = append(c.Expects, e)
		}
	}
	return c, nil
}
