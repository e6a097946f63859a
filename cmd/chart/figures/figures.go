// Package figures makes charts of the curves of answers: the step from figures in SI to what a house reads, in
// its units and in plain words. It reckons nothing that an answer has not told, and what is not known it leaves
// out of a chart and says below it.
//
// Every text in a chart is safe to show; who writes a chart escapes it for its own format.
package figures

import (
	"math"
	"slices"

	"maltwright/cmd/answer/curve"
	"maltwright/cmd/chart"
	"maltwright/cmd/words"
)

// A kind of figure is named by a word.
const (
	OfMoisture = "moisture"
	OfWeight   = "weight"
	OfHeat     = "heat"
	OfGrowth   = "growth"
	OfBed      = "bed"
)

// kinds are all figures of a curve, in the order in which a page shows them.
var kinds = []struct {
	name string
	make func(*curve.Curve, words.House) []chart.Chart
}{
	{OfMoisture, alone(Moisture)}, {OfWeight, alone(Weight)}, {OfGrowth, alone(Growth)}, {OfHeat, alone(Heat)}, {OfBed, Beds},
}

func alone(one func(*curve.Curve, words.House) chart.Chart) func(*curve.Curve, words.House) []chart.Chart {
	return func(c *curve.Curve, h words.House) []chart.Chart { return []chart.Chart{one(c, h)} }
}

// Names are the words for which there are figures.
func Names() (list []string) {
	for _, k := range kinds {
		list = append(list, k.name)
	}
	return list
}

// Named gives the charts of a name: mostly one, of beds one for each kiln and each box. There is none where
// the process has nothing of the kind, as nothing grows in one that dries green malt. It is false of a name that
// there is no figure for.
func Named(name string, c *curve.Curve, h words.House) (list []chart.Chart, ok bool) {
	for _, k := range kinds {
		if k.name == name {
			return drawn(k.make(c, h)), true
		}
	}
	return nil, false
}

// All are the charts that make sense for a curve.
func All(c *curve.Curve, h words.House) (list []chart.Chart) {
	for _, k := range kinds {
		list = append(list, drawn(k.make(c, h))...)
	}
	return list
}

// drawn leaves out what has nothing to show.
func drawn(list []chart.Chart) []chart.Chart {
	return slices.DeleteFunc(list, func(c chart.Chart) bool { return len(c.Panels) == 0 })
}

// frame is a chart of a curve without panels.
func frame(c *curve.Curve, h words.House, of string) chart.Chart {
	out := chart.Chart{Title: title(c, of), Sub: sub(c, h), Start: c.Start, To: float64(c.To), Note: Notes(c, h)}
	switch {
	case !c.Start.IsZero():
	case c.Green:
		out.Since = "the beginning"
	default:
		out.Since = words.Beginning(false)
	}
	if known(c.Now) {
		out.Now = new(float64(c.Now))
	}
	for _, n := range c.Nights {
		out.Nights = append(out.Nights, chart.Span{From: float64(n.From), To: float64(n.To)})
	}
	for _, s := range c.Stages {
		out.Stages = append(out.Stages, chart.Span{From: float64(s.From), To: float64(s.To), Name: s.Called()})
	}
	return out
}

// title names what is shown and of which batch or process.
func title(c *curve.Curve, of string) string { return of + " of " + Called(c) }

// Called names the batch or the process of a curve.
func Called(c *curve.Curve) string {
	if c.Batch != "" {
		return "batch " + words.Safe(c.Batch)
	}
	return words.Safe(c.Process)
}

// sub says what goes into the batch.
func sub(c *curve.Curve, h words.House) string {
	out := ""
	if known(c.Charge) {
		out = words.Mass(h, c.Charge) + " of " + words.Safe(c.Grain)
	}
	if c.Batch != "" {
		out = words.Joined(", ", words.Safe(c.Process), out)
	}
	return out
}

// cut shows a stretch of a chart alone.
func cut(c chart.Chart, x stretch) chart.Chart {
	if c.From, c.To = float64(x.from), float64(x.to); x.to <= x.from {
		c.Panels = nil
	}
	within := func(list []chart.Span) (out []chart.Span) {
		for _, s := range list {
			if s.From, s.To = max(s.From, c.From), min(s.To, c.To); s.From < s.To {
				out = append(out, s)
			}
		}
		return out
	}
	c.Nights, c.Stages = within(c.Nights), within(c.Stages)
	if c.Now != nil && (*c.Now < c.From || *c.Now > c.To) {
		c.Now = nil
	}
	return c
}

func known[T ~float64](x T) bool { return !math.IsNaN(float64(x)) && !math.IsInf(float64(x), 0) }

var nan = math.NaN()
