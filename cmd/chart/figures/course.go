package figures

import (
	"slices"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/curve"
	"maltwright/cmd/chart"
	"maltwright/cmd/words"
	"maltwright/lang/vocabulary"
)

// eight names a band.
const eight = "8 of 10 cases"

// Moisture is how moist the grain is, with what was tested and what its weights come to.
func Moisture(c *curve.Curve, h words.House) chart.Chart {
	s := words.Shares
	p := chart.Panel{Name: "moisture", Unit: s.Unit, Places: 1}
	p.Lines = lines(line(c, "moisture", chart.First, func(x *curve.Point) float64 { return s.Shown(float64(x.Moisture)) }))
	if b := c.Bands; b != nil {
		p.Bands = bands(band(b.At, b.Moisture, s, c.To))
	}
	for _, r := range c.Readings {
		if m := r.ByWeight; m != nil {
			p.Points = append(p.Points, point(r, m.Value, m.Error, s, "by weight", chart.First))
		}
		if m := r.Moisture; m != nil {
			p.Points = append(p.Points, point(r, m.Value, m.Error, s, "tested", chart.Second))
		}
	}
	for _, a := range c.Aims {
		low, high := s.Shown(float64(a.Low)), s.Shown(float64(a.High))
		p.Bands = append(p.Bands, chart.Band{Name: "aim of the steep", Role: chart.Quiet, At: []float64{float64(a.From), float64(a.To)}, Low: []float64{low, low}, High: []float64{high, high}})
	}
	p.Gates = gates(c, vocabulary.MeasureMoisture, s)
	out := with(c, frame(c, h, "Moisture"), p)
	if slices.ContainsFunc(c.Readings, func(r curve.Reading) bool { return r.ByWeight != nil }) {
		out.Note = append(out.Note, "The moisture of a weight is reckoned by the dry matter that the forecast has left then.")
	}
	return out
}

// Weight is what the batch weighs, drained, and with what it lies in where that says what it weighs.
func Weight(c *curve.Curve, h words.House) chart.Chart {
	s := h.Weights(float64(c.Charge))
	p := chart.Panel{Name: "weight", Unit: s.Unit, Places: s.Places(float64(c.Charge))}
	drained := line(c, "drained grain", chart.First, func(x *curve.Point) float64 { return s.Shown(float64(x.Weight)) })
	gross := line(c, "with what it lies in", chart.Quiet, func(x *curve.Point) float64 { return s.Shown(float64(x.Gross)) })
	p.Lines = lines(drained, gross)
	if len(p.Lines) == 1 {
		p.Lines[0].Name = p.Name
	}
	if b := c.Bands; b != nil {
		p.Bands = bands(band(b.At, b.Weight, s, c.To))
	}
	for _, r := range c.Readings {
		if m := r.Weight; m != nil {
			p.Points = append(p.Points, point(r, m.Value, m.Error, s, "weighed", chart.First))
		}
	}
	p.Gates = gates(c, vocabulary.MeasureWeight, s)
	return with(c, frame(c, h, "Weight"), p)
}

// with puts panels into a chart of a curve, which is nil of other charts: those that show anything, and none into a chart
// of no length.
func with(of *curve.Curve, c chart.Chart, panels ...chart.Panel) chart.Chart {
	if c.To <= c.From {
		return c
	}
	for _, p := range panels {
		if len(p.Lines)+len(p.Bands)+len(p.Points) > 0 || p.Field != nil {
			c.Panels = append(c.Panels, p)
		}
	}
	if of != nil {
		c.Note = append(c.Note, ofBands(of, c.Panels)...)
	}
	return c
}

// line is a figure of the points over time.
func line(c *curve.Curve, name string, role chart.Role, of func(*curve.Point) float64) chart.Line {
	return part(c, whole(c), name, role, of)
}

// part is a figure of the points of a stretch.
func part(c *curve.Curve, x stretch, name string, role chart.Role, of func(*curve.Point) float64) chart.Line {
	l := chart.Line{Name: name, Role: role}
	for i := range c.Points {
		if p := &c.Points[i]; x.has(p) {
			l.At, l.Value = append(l.At, float64(p.At)), append(l.Value, of(p))
		}
	}
	return l
}

// lines leaves out those of which nothing is known.
func lines(list ...chart.Line) (out []chart.Line) {
	for _, l := range list {
		if some(l.Value) {
			out = append(out, l)
		}
	}
	return out
}

// some tells whether any of it is known.
func some(list []float64) bool {
	for _, v := range list {
		if known(v) {
			return true
		}
	}
	return false
}

// band is a spread over time, until a time.
func band[T answer.Single](at []answer.Seconds, list []answer.Spread[T], s words.Scale, until answer.Seconds) chart.Band {
	b := chart.Band{Name: eight, Role: chart.First}
	for i, x := range list {
		if at[i] > until {
			break
		}
		b.At = append(b.At, float64(at[i]))
		b.Low, b.Middle, b.High = append(b.Low, s.Shown(float64(x.P10))), append(b.Middle, s.Shown(float64(x.P50))), append(b.High, s.Shown(float64(x.P90)))
	}
	return b
}

// bands leaves out those of which nothing is known. The line of the forecast stands in the place of their middle.
func bands(list ...chart.Band) (out []chart.Band) {
	for _, b := range list {
		if some(b.Low) {
			b.Middle = nil
			out = append(out, b)
		}
	}
	return out
}

// point is a reading.
func point[T answer.Single](r curve.Reading, value, err T, s words.Scale, name string, role chart.Role) chart.Point {
	v := s.Shown(float64(value))
	return chart.Point{At: float64(r.At), Value: v, Error: s.Shown(float64(value+err)) - v, Doubted: r.Doubted, Name: name, Role: role}
}
