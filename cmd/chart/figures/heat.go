package figures

import (
	"math"
	"slices"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/curve"
	"maltwright/cmd/chart"
	"maltwright/cmd/words"
	"maltwright/lang/vocabulary"
)

// The roles of temperatures, the same in every chart.
const (
	ofGrain  = chart.First
	ofAirOn  = chart.Second
	ofAirOff = chart.Third
)

// Heat is the temperature of the grain, of the air before and behind it, and what they are set to. What goes on before
// the kiln has a scale of its own, for there a degree counts.
func Heat(c *curve.Curve, h words.House) chart.Chart {
	kilned := beforeKiln(c)
	wet := warmth(c, h, stretch{to: kilned, of: func(p *curve.Point) bool { return p.Stage != kiln }})
	hot := warmth(c, h, stretch{from: kilned, to: c.To, of: func(p *curve.Point) bool { return p.Stage == kiln }})
	wet.Places = 1
	if len(wet.Lines) > 0 && len(hot.Lines) > 0 {
		wet.Name, hot.Name = temperatureName+" before the kiln", temperatureName+" on the kiln"
	}
	out := with(c, frame(c, h, "Temperatures"), wet, hot, air(c, h, whole(c)))
	if len(wet.Lines) > 0 && aboveItsBand(c) {
		out.Note = append(out.Note, "A bed on a floor is held by its mean; drawn is its middle, where a thermometer stands, which is warmer between two turns.")
	}
	return out
}

// hotter is by how much the middle of a bed is above its band, K, before it is told why: two thermometers differ as much.
const hotter = 1

// aboveItsBand tells whether the middle of a bed without air through it gets warmer than its band, in which its mean is held.
func aboveItsBand(c *curve.Curve) bool {
	return slices.ContainsFunc(c.Steps, func(s curve.Step) bool {
		return s.Set != nil && s.Set.Place == vocabulary.PlaceBed && slices.ContainsFunc(c.Points, func(p curve.Point) bool {
			return p.At > s.From && p.At <= s.To && !known(p.AirOn) && p.Grain > slices.Max(s.Set.High)+hotter
		})
	})
}

// warmth is a panel of the temperatures of a stretch.
func warmth(c *curve.Curve, h words.House, x stretch) chart.Panel {
	s := h.Warmth()
	line := func(name string, role chart.Role, pick func(*curve.Point) answer.Celsius) chart.Line {
		return part(c, x, name, role, func(p *curve.Point) float64 { return s.Shown(float64(pick(p))) })
	}
	p := chart.Panel{Name: temperatureName, Unit: s.Unit, Places: 0}
	p.Lines = lines(
		line("room", chart.Quiet, func(x *curve.Point) answer.Celsius { return x.Room }),
		line("air off", ofAirOff, func(x *curve.Point) answer.Celsius { return x.AirOff }),
		line(airOnName(c), ofAirOn, func(x *curve.Point) answer.Celsius { return x.AirOn }),
		line("grain", ofGrain, func(x *curve.Point) answer.Celsius { return x.Grain }),
	)
	if len(p.Lines) == 0 {
		return chart.Panel{}
	}
	if b := c.Bands; b != nil && x.from < beforeKiln(c) {
		p.Bands = bands(band(b.At, b.Grain, s, min(x.to, beforeKiln(c))))
	}
	p.Bands = append(p.Bands, set(c, s, x)...)
	for _, r := range c.Readings {
		if m := r.Temperature; m != nil && r.At >= x.from && r.At <= x.to {
			p.Points = append(p.Points, point(r, m.Value, m.Error, s, places[r.Place].name, places[r.Place].role))
		}
	}
	for _, m := range []string{vocabulary.MeasureBed, vocabulary.MeasureAirOff, vocabulary.MeasureMalt} {
		p.Gates = append(p.Gates, inside(gates(c, m, s), x)...)
	}
	return p
}

// airOnName is what the air that comes onto the malt is called: in an oven without a fan there is but one.
func airOnName(c *curve.Curve) string {
	for _, s := range c.Stages {
		if s.Stage == kiln && !s.Still {
			return "air on"
		}
	}
	for _, s := range c.Stages {
		if s.Still {
			return "oven"
		}
	}
	return "air on"
}

// places are those of thermometers: what they are called, and whose line they belong to.
var places = map[string]struct {
	name string
	role chart.Role
}{
	vocabulary.PlaceWater: {"water", ofGrain}, vocabulary.PlaceBed: {"bed", ofGrain}, vocabulary.PlaceMalt: {"malt", ofGrain},
	vocabulary.PlaceAirOn: {"air on", ofAirOn}, vocabulary.PlaceOven: {"oven", ofAirOn}, vocabulary.PlaceAirOff: {"air off", ofAirOff},
	vocabulary.PlaceAir: {"air", chart.Quiet}, vocabulary.PlaceRoom: {"room", chart.Quiet},
}

// beforeKiln is when the malt comes to its first kiln. From there on batches differ by hours, and what lies between
// cold and hot ones says nothing.
func beforeKiln(c *curve.Curve) answer.Seconds {
	for _, s := range c.Stages {
		if s.Stage == kiln {
			return s.From
		}
	}
	return c.To
}

// set are the bands that the steps hold temperatures in, one for each place; a single temperature is a
// band as wide as a line.
func set(c *curve.Curve, s words.Scale, part stretch) (list []chart.Band) {
	b := chart.Band{Name: "as set", Role: chart.Quiet}
	last := ""
	for _, step := range c.Steps {
		x := step.Set
		if x == nil || step.To <= part.from || step.From >= part.to {
			continue
		}
		if len(b.At) > 0 && (last != x.Place || step.From > answer.Seconds(b.At[len(b.At)-1])+1) {
			at := b.At[len(b.At)-1]
			b.At, b.Low, b.High = append(b.At, at), append(b.Low, nan), append(b.High, nan)
		}
		last = x.Place
		for i, at := range x.At {
			b.At, b.Low, b.High = append(b.At, float64(at)), append(b.Low, s.Shown(float64(x.Low[i]))), append(b.High, s.Shown(float64(x.High[i])))
		}
	}
	if some(b.Low) {
		list = append(list, b)
	}
	return list
}

// air is a panel of the air through the malt on a kiln, where that changes. Of a growing bed the fan mostly stands,
// and runs again within the hour.
func air(c *curve.Curve, h words.House, x stretch) chart.Panel {
	s := h.Airflows()
	least, most := math.Inf(1), 0.0
	l := part(c, x, "airflow", chart.First, func(p *curve.Point) float64 {
		if p.Stage != kiln || !known(p.Airflow) {
			return nan
		}
		v := s.Shown(float64(p.Airflow))
		least, most = math.Min(least, v), math.Max(most, v)
		return v
	})
	if !(most-least > sameAir*most) {
		return chart.Panel{}
	}
	return chart.Panel{Name: l.Name, Unit: s.Unit, Places: placesOf(most), Least: 0, Most: most, Tall: 0.4, Lines: []chart.Line{l}}
}

// sameAir is by how much of it an airflow changes that is one and the same.
const sameAir = 0.05

// placesOf is how many digits behind the point three figures have.
func placesOf(x float64) int {
	switch {
	case x >= 100:
		return 0
	case x >= 10:
		return 1
	}
	return 2
}
