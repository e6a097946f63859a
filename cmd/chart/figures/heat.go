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

// Heat is the temperature of the grain, of the air before and behind it, and what they are set to.
func Heat(c *curve.Curve, h words.House) chart.Chart {
	return with(frame(c, h, "Temperatures"), warmth(c, h, 0, c.To), air(c, h, 0, c.To))
}

// warmth is a panel of temperatures from one time to another.
func warmth(c *curve.Curve, h words.House, from, to answer.Seconds) chart.Panel {
	s := h.Warmth()
	of := func(pick func(*curve.Point) answer.Celsius) func(*curve.Point) float64 {
		return func(x *curve.Point) float64 {
			if x.At < from || x.At > to {
				return nan
			}
			return s.Shown(float64(pick(x)))
		}
	}
	p := chart.Panel{Name: "temperature", Unit: s.Unit, Places: 0}
	p.Lines = lines(
		line(c, "room", chart.Quiet, of(func(x *curve.Point) answer.Celsius { return x.Room })),
		line(c, "air off", ofAirOff, of(func(x *curve.Point) answer.Celsius { return x.AirOff })),
		line(c, "air on", ofAirOn, of(func(x *curve.Point) answer.Celsius { return x.AirOn })),
		line(c, "grain", ofGrain, of(func(x *curve.Point) answer.Celsius { return x.Grain })),
	)
	if b := c.Bands; b != nil {
		p.Bands = bands(band(b.At, b.Grain, s, min(to, beforeKiln(c))))
	}
	p.Bands = append(p.Bands, set(c, s, from, to)...)
	for _, r := range c.Readings {
		if m := r.Temperature; m != nil && r.At >= from && r.At <= to {
			p.Points = append(p.Points, point(r, m.Value, m.Error, s, places[r.Place].name, places[r.Place].role))
		}
	}
	for _, m := range []string{vocabulary.MeasureBed, vocabulary.MeasureAirOff, vocabulary.MeasureMalt} {
		p.Gates = append(p.Gates, inside(gates(c, m, s), from, to)...)
	}
	return p
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
func set(c *curve.Curve, s words.Scale, from, to answer.Seconds) (list []chart.Band) {
	b := chart.Band{Name: "as set", Role: chart.Quiet}
	last := ""
	for _, step := range c.Steps {
		x := step.Set
		if x == nil || step.To <= from || step.From >= to {
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
	if any(b.Low) {
		list = append(list, b)
	}
	return list
}

// air is a panel of the air through the bed, where that changes.
func air(c *curve.Curve, h words.House, from, to answer.Seconds) chart.Panel {
	s := h.Airflows()
	l := line(c, "airflow", chart.First, func(x *curve.Point) float64 {
		if x.At < from || x.At > to {
			return nan
		}
		return s.Shown(float64(x.Airflow))
	})
	if !any(l.Value) {
		return chart.Panel{}
	}
	most := slices.MaxFunc(l.Value, func(a, b float64) int { return int(math.Copysign(1, orNothing(a)-orNothing(b))) })
	return chart.Panel{Name: "airflow", Unit: s.Unit, Places: placesOf(most), Least: 0, Most: most, Tall: 0.4, Lines: []chart.Line{l}}
}

func orNothing(x float64) float64 {
	if !known(x) {
		return 0
	}
	return x
}

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
