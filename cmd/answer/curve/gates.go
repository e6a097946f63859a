package curve

import (
	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// Gate is a condition that is waited for, and how it went.
type Gate struct {
	outlook.Gate
	Span           // in which it is waited for
	Levels []Level // what it asks that can be drawn as a level
}

// Level is a measure and what it is to come to.
type Level struct {
	Measure string      // as the language names it: moisture, weight, malt ...
	Value   float64     // SI, a temperature in °C
	Op      quantity.Op // on which side of it the condition holds; of Is it is one end of what is asked
	Text    string      // the test, as written
}

// gatesOf are the conditions of a forecast.
func gatesOf(f *forecast.Forecast) (list []Gate) {
	told := outlook.AskedOf(f).Gates
	for i, g := range f.Gates {
		one := Gate{Gate: told[i], Span: Span{answer.Seconds(g.Ended - g.Waited), answer.Seconds(g.Ended)}}
		if c := outlook.ConditionAt(g.Of, g.Place); c != nil {
			one.Levels = levelsOf(c)
		}
		list = append(list, one)
	}
	return list
}

// measures that have a curve, and whether they are temperatures.
var measures = map[string]bool{
	vocabulary.MeasureMoisture: false, vocabulary.MeasureWeight: false, vocabulary.MeasureChit: false, vocabulary.MeasureAcrospire: false,
	vocabulary.MeasureAirOff: true, vocabulary.MeasureMalt: true, vocabulary.MeasureBed: true,
}

func levelsOf(c *model.Condition) (list []Level) {
	for _, t := range c.Tests {
		warm, drawn := measures[t.Measure]
		if !drawn || t.Bound == nil {
			continue
		}
		for _, v := range edges(t.Bound.Bound) {
			if warm {
				v = celsius(v)
			}
			list = append(list, Level{t.Measure, v, t.Bound.Op, t.Place.Text()})
		}
	}
	return list
}

// edges are the values at which a bound begins to hold or ceases to.
func edges(b quantity.Bound) []float64 {
	low, high := b.Range.Low.SI, b.Range.High.SI
	switch {
	case b.Op == quantity.AtLeast || b.Op == quantity.Above:
		return []float64{low}
	case b.Op == quantity.AtMost || b.Op == quantity.Below || low == high:
		return []float64{high}
	}
	return []float64{low, high}
}
