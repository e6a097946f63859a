package figures

import (
	"fmt"
	"math"

	"maltwright/cmd/answer/curve"
	"maltwright/cmd/chart"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

const kiln = string(model.KilnStage)

// Beds are the beds that air goes through, one chart each: of a kiln its moisture by depth and time, which shows
// the drying front, that of its top, middle and bottom, and the temperatures; of a growing bed its temperature in
// the place of the moisture. Malt that lies in one layer, as in an oven or a drum, has no depth to show.
func Beds(c *curve.Curve, h words.House) (list []chart.Chart) {
	for i := range c.Beds {
		list = append(list, bed(c, h, &c.Beds[i]))
	}
	return list
}

func bed(c *curve.Curve, h words.House, b *curve.Bed) chart.Chart {
	part := stretch{from: b.Looks[0].At, to: b.Looks[len(b.Looks)-1].At, of: inStage(b.StageName)}
	moisture := layers(c, b, moistureName, words.Shares, moistureOf)
	if b.Stage == kiln {
		return cut(with(c, frame(c, h, bedName(b)), depths(b, h, moistureName, words.Shares, moistureOf), moisture, warmth(c, h, part), air(c, h, part)), part)
	}
	return cut(with(c, frame(c, h, bedName(b)), depths(b, h, temperatureName, h.Warmth(), maltOf), layers(c, b, temperatureName, h.Warmth(), maltOf), moisture), part)
}

// What stands beside an axis.
const (
	moistureName    = "moisture"
	temperatureName = "temperature"
)

// bedName names a bed by what is done on it: the bed on the kiln, the growing bed, with its number where there
// are several.
func bedName(b *curve.Bed) string {
	name := map[string]string{kiln: "Bed on the kiln", string(model.GerminateStage): "Growing bed", string(model.WitherStage): "Withering bed"}[b.Stage]
	switch {
	case b.Number == 0:
		return name
	case b.Stage == kiln:
		return "Bed on " + b.Called()
	}
	return fmt.Sprintf("%s %d", name, b.Number)
}

func moistureOf(l *curve.Layer) float64 { return float64(l.Moisture) }
func maltOf(l *curve.Layer) float64     { return float64(l.Malt) }

// rows is how many depths a field has.
const rows = 48

// depths is a panel of a figure by depth and time. The bed is as high as it is then: above it is nothing.
func depths(b *curve.Bed, h words.House, name string, s words.Scale, of func(*curve.Layer) float64) chart.Panel {
	most, single := 0.0, true
	for _, look := range b.Looks {
		top := look.Layers[len(look.Layers)-1]
		most = math.Max(most, float64(top.Depth+top.Thick/2))
		single = single && len(look.Layers) == 1
	}
	if single || !(most > 0) {
		return chart.Panel{}
	}
	depth := h.Depths()
	f := &chart.Field{Name: name + " of the bed", Unit: s.Unit, Places: 1, Value: make([][]float64, rows)}
	for i := range rows {
		f.Depth = append(f.Depth, depth.Shown(most*(float64(i)+0.5)/rows))
		f.Value[i] = make([]float64, len(b.Looks))
	}
	for k, look := range b.Looks {
		f.At = append(f.At, float64(look.At))
		for i := range rows {
			f.Value[i][k] = s.Shown(within(look.Layers, most*(float64(i)+0.5)/rows, of))
		}
	}
	deepest := depth.Shown(most)
	return chart.Panel{Name: "depth", Unit: depth.Unit, Places: placesOf(deepest), Least: 0, Most: deepest, Field: f}
}

// within is a figure so many m above the plate: in a straight line between the middles of the layers, and as in
// the outermost beyond them. Above the bed it is NaN.
func within(layers []curve.Layer, depth float64, of func(*curve.Layer) float64) float64 {
	n := len(layers)
	if top := &layers[n-1]; depth > float64(top.Depth+top.Thick/2) {
		return nan
	}
	for i := range layers {
		l := &layers[i]
		if depth > float64(l.Depth) {
			continue
		}
		if i == 0 {
			return of(l)
		}
		below := &layers[i-1]
		part := (depth - float64(below.Depth)) / float64(l.Depth-below.Depth)
		return of(below) + part*(of(l)-of(below))
	}
	return of(&layers[n-1])
}

// layers is a panel of a figure at the top, in the middle and at the bottom of a bed.
func layers(c *curve.Curve, b *curve.Bed, name string, s words.Scale, of func(*curve.Layer) float64) chart.Panel {
	p := chart.Panel{Name: name, Unit: s.Unit, Places: 1}
	at := func(title string, role chart.Role, share float64) chart.Line {
		l := chart.Line{Name: title, Role: role}
		for _, look := range b.Looks {
			top := look.Layers[len(look.Layers)-1]
			l.At = append(l.At, float64(look.At))
			l.Value = append(l.Value, s.Shown(within(look.Layers, share*float64(top.Depth+top.Thick/2), of)))
		}
		return l
	}
	if len(b.Looks[0].Layers) == 1 {
		p.Lines = lines(at(name, chart.First, 0))
	} else {
		p.Lines = lines(at("top", chart.First, 1), at("middle", chart.Second, 0.5), at("bottom", chart.Third, 0))
	}
	if name == moistureName {
		p.Gates = inside(gates(c, vocabulary.MeasureMoisture, s), stretch{from: b.Looks[0].At, to: b.Looks[len(b.Looks)-1].At})
	}
	return p
}

// inside are the gates that are asked in a stretch.
func inside(list []chart.Gate, x stretch) (out []chart.Gate) {
	for _, g := range list {
		if g.From = math.Max(g.From, float64(x.from)); g.From < float64(x.to) && g.To > float64(x.from) {
			out = append(out, g)
		}
	}
	return out
}
