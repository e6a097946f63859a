package read

import (
	"fmt"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// bound gives the value as a bound; a plain value or range is "is".
func (v *given) bound() *model.Bound {
	if v == nil {
		return nil
	}
	out := model.Bound{Bound: quantity.Bound{Op: quantity.Is, Range: v.rng}, Place: v.place}
	if v.op != nil {
		out.Op = *v.op
	}
	return &out
}

// holds gives the condition of a slot, nil where there is none.
func (v *given) holds() *model.Condition {
	if v == nil {
		return nil
	}
	return v.condition
}

// newStep builds a step, and notes whether some of it did not read.
func (b *builder) newStep(r *filled, build func() model.Step) model.Step {
	before := b.dropped
	s := build()
	b.unread[s] = !r.whole || b.dropped > before
	return s
}

func (r *filled) written() model.Written { return model.Written{Head: r.place} }

// ending reads the clauses of an end.
func (b *builder) ending(r *filled) model.Ending {
	return model.Ending{
		For:   b.positive(r.clause("for", 0).quantity(), "a time"),
		Until: r.clause("until", 0).holds(),
		Allow: b.guard(r.clause("allow", 0)),
	}
}

// onHeat builds a step that dries, stews, cures or roasts.
func onHeat(as func(model.Heated) model.Step) func(*builder, *filled) model.Step {
	return func(b *builder, r *filled) model.Step {
		h := model.Heated{}
		s := b.newStep(r, func() model.Step {
			h = model.Heated{Written: r.written(), Ending: b.ending(r), Warming: b.warming(r)}
			return as(h)
		})
		b.heatWith(s, r)
		return s
	}
}

var (
	dry   = onHeat(func(h model.Heated) model.Step { return &model.Dry{Heated: h} })
	stew  = onHeat(func(h model.Heated) model.Step { return &model.Stew{Heated: h} })
	cure  = onHeat(func(h model.Heated) model.Step { return &model.Cure{Heated: h} })
	roast = onHeat(func(h model.Heated) model.Step { return &model.Roast{Heated: h} })
)

// warming reads the clauses of a temperature.
func (b *builder) warming(r *filled) model.Warming {
	return model.Warming{
		At:   b.warmth(r.clause("at", 0)),
		From: b.rise(r.clause("from", 0)),
		Over: b.positive(r.clause("over", 0).quantity(), "a time"),
	}
}

func (b *builder) cool(r *filled) model.Step {
	return b.newStep(r, func() model.Step {
		return &model.Cool{Written: r.written(), To: b.warmth(r.clause("to", 0)), Water: b.positive(r.clause("with", 1).quantity(), "an amount of water"), Allow: b.guard(r.clause("allow", 0))}
	})
}

func (b *builder) hold(r *filled) model.Step {
	return b.newStep(r, func() model.Step {
		s := &model.Hold{Written: r.written(), Ending: b.ending(r), Warming: b.warming(r)}
		if what := r.slot(0); what != nil {
			taken(s.At, what.word)
			taken(s.From, what.word)
		}
		return s
	})
}

func (b *builder) soak(r *filled) model.Step {
	s := &model.Soak{}
	b.newStep(r, func() model.Step {
		*s = model.Soak{Written: r.written(), Ending: b.ending(r), At: taken(b.warmth(r.clause("at", 0)), vocabulary.PlaceWater)}
		return s
	})
	b.timeBehind(r, &s.Ending)
	b.soakWith(s, r)
	return s
}

func (b *builder) rest(r *filled) model.Step {
	s := &model.Rest{}
	b.newStep(r, func() model.Step {
		*s = model.Rest{Written: r.written(), Ending: b.ending(r), At: taken(b.warmth(r.clause("at", 0)), vocabulary.PlaceAir)}
		return s
	})
	b.timeBehind(r, &s.Ending)
	b.restWith(s, r)
	return s
}

// timeBehind reads a time that stands right behind the verb.
func (b *builder) timeBehind(r *filled, end *model.Ending) {
	t := b.positive(r.slot(0).quantity(), "a time")
	if t == nil {
		return
	}
	if end.For != nil {
		b.note(twoOfAClause.At(end.For.Place, fmt.Sprintf("%s is given two times: %s and %s", r.Verb.Text, t, end.For)))
	}
	end.For = t
}

// taken says where a temperature is taken that does not say it itself.
func taken(t *model.Temperature, where string) *model.Temperature {
	if t != nil && t.Where == "" {
		t.Where = where
	}
	return t
}

func (b *builder) gate(r *filled) model.Step {
	return &model.Gate{Written: r.written(), Asks: r.slot(0).holds(), Allow: b.guard(r.clause("allow", 0))}
}

// Temperatures that a process can ask for, in °C.
const (
	coolestAsked = "-5"
	hottestAsked = "260"
)

func (b *builder) warmth(v *given) *model.Temperature {
	if v == nil || b.upright(v) == nil {
		return nil
	}
	return b.askable(v.temperature())
}

// rise is a temperature that runs from its first value to its second; it may fall.
func (b *builder) rise(v *given) *model.Temperature {
	t := v.temperature()
	if t == nil {
		return nil
	}
	return b.askable(t)
}

func (b *builder) askable(t *model.Temperature) *model.Temperature {
	can, _ := between(coolestAsked, hottestAsked, "°C")
	if within(can, t.Range.Range) {
		return t
	}
	f := outOfRange.At(t.Place, fmt.Sprintf("a temperature of %s is outside %s", t.Range.Range, inUnitsOf(t.Range.Range, can)))
	slipOf(&f, t.Place, t.Range.Range, can)
	b.refuse(f)
	return nil
}

// guard reads the earliest and latest time of allow: a range, or a bound on one side.
func (b *builder) guard(v *given) *model.Guard {
	if v == nil {
		return nil
	}
	g := &model.Guard{Place: v.place}
	low, high := model.Quantity{Quantity: v.rng.Low, Place: v.place}, model.Quantity{Quantity: v.rng.High, Place: v.place}
	switch {
	case v.op != nil && (*v.op == quantity.AtLeast || *v.op == quantity.Above):
		g.Earliest = &low
	case low.SI == high.SI:
		g.Latest = &high
	case low.SI > high.SI:
		f := guardUpsideDown.At(v.place, fmt.Sprintf("the earliest time, %s, is after the latest, %s", low, high))
		if _, f.Fixes = v.turned(); f.Fixes == nil {
			f.Hint, _ = v.turned()
		}
		b.refuse(f)
		g.Earliest, g.Latest = &high, &low // as it must be meant, so that no guard seems missing
	default:
		g.Earliest, g.Latest = &low, &high
	}
	return g
}
