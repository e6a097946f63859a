package read

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

var (
	sprinkleUnclear = rule("sprinkle-unclear", fault, "a sprinkling that does not say how much, or not when",
		"it needs an amount of water or a moisture to reach, and an interval or a condition", "write how much or to what moisture, and how often or when: sprinkle to moisture 45 % when moisture below 43 %",
		inPiece("sprinkle 0.3 l"), inPiece("sprinkle 0.3 l every 24 h"))
	airNotBlown = rule("air-not-blown", fault, "air of the room with what only air that is blown can have",
		"an airflow, a condition and times belong to a fan that blows air through the bed, and its air is measured at air-on", "write at air-on, or leave the others out",
		inWither("air at 18 to 22 °C with airflow 60 m3/h"), inWither("air at 18 to 22 °C"))
	fanTimes = rule("fan-times", fault, "a fan by the clock whose two times do not go together",
		"for says how long the fan runs each time, and every the time from one start to the next: neither means anything alone, and if both are equal the fan never stops", "write both, such as: for 15 min every 1 h; for a fan that runs all the time, write neither",
		inPiece("air at air-on 13 °C for 15 min"), inPiece("air at air-on 13 °C for 15 min every 1 h"))
)

// blownRules are the rules of this file.
var blownRules = []finding.Rule{sprinkleUnclear, airNotBlown, fanTimes}

func (b *builder) sprinkle(g *growing, r *filled) {
	before := b.dropped
	s := &model.Sprinkle{Written: r.written(), Water: b.positive(r.slot(0).quantity(), "an amount of water"),
		To: b.moisture(r.clause("to", 1).quantity(), b.house.Limits), Every: b.interval(r), When: r.clause("when", 0).holds()}
	if !r.whole || b.dropped > before {
		return
	}
	switch {
	case s.Water == nil && s.To == nil:
		b.refuse(sprinkleUnclear.At(r.place, "sprinkle does not say how much water"))
	case s.Water != nil && s.To != nil:
		f := sprinkleUnclear.At(s.To.Place, fmt.Sprintf("sprinkle is given two amounts: %s, and as much as brings it to %s", s.Water, s.To))
		f.Related = []finding.Related{{Place: s.Water.Place, Message: "the other one"}}
		b.refuse(f)
	case s.Every == nil && s.When == nil:
		b.refuse(sprinkleUnclear.At(r.place, "sprinkle does not say how often, nor when"))
	default:
		g.stage.(*model.Germination).Sprinkle = s
	}
}

// air is that of the room over a withering piece, or what a fan blows through a bed.
func (b *builder) air(g *growing, r *filled) {
	at := b.warmth(r.clause("at", 0))
	if at == nil {
		return
	}
	if st, ok := g.stage.(*model.Withering); ok && at.Where != vocabulary.PlaceAirOn {
		b.roomAir(st, r, at)
		return
	}
	before := b.dropped
	a := &model.Air{Written: r.written(), At: *at, Airflow: b.positive(r.clause("with", 1).quantity(), "an airflow"), When: r.clause("when", 0).holds(),
		For: b.positive(r.clause("for", 0).quantity(), "a time"), Every: b.interval(r)}
	switch {
	case !r.whole || b.dropped > before:
		return
	case (a.For == nil) != (a.Every == nil):
		b.refuse(fanTimes.At(r.place, missingTime(a)))
		return
	case a.For != nil && a.For.SI >= a.Every.SI:
		b.refuse(fanTimes.At(a.For.Place, fmt.Sprintf("a fan that runs every %s for %s never stops", a.Every, a.For)))
		return
	}
	g.Blown = append(g.Blown, a)
}

func missingTime(a *model.Air) string {
	if a.For == nil {
		return fmt.Sprintf("the fan starts every %s, but how long it runs is not written", a.Every)
	}
	return fmt.Sprintf("the fan runs for %s, but how often is not written", a.For)
}

// roomAir is given once, and takes nothing that only a fan does.
func (b *builder) roomAir(st *model.Withering, r *filled, at *model.Temperature) {
	for _, c := range r.Clauses {
		if c.Word.Text != "at" {
			place := source.Place{File: r.place.File, Span: c.Span}
			b.refuse(airNotBlown.At(place, fmt.Sprintf("air of the room takes no %q: it is not blown through the bed", c.Word.Text)))
			return
		}
	}
	if st.Air != nil {
		b.again(at.Place, st.Air.Place, "the air of the room is given twice in this block")
	}
	st.Air = at
}
