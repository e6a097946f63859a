package read

import (
	"fmt"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

// bound gives the value as a bound; a plain value or range is "is".
func (v *value) bound() *quantity.Bound {
	if v == nil {
		return nil
	}
	out := quantity.Bound{Op: quantity.Is, Range: v.rng}
	if v.op != nil {
		out.Op = *v.op
	}
	return &out
}

// holds gives the condition of a slot, nil where there is none.
func (v *value) holds() *model.Condition {
	if v == nil {
		return nil
	}
	return v.condition
}

// step builds a step from the clauses that all steps share.
func (b *builder) step(r *reading, kind model.StepKind) *model.Step {
	before, at := b.dropped, "at"
	if kind == model.Cool {
		at = "to"
	}
	s := &model.Step{Kind: kind, Place: r.place,
		For:     b.positive(r.clause("for", 0).quantity(), "a time"),
		Over:    b.positive(r.clause("over", 0).quantity(), "a time"),
		Until:   r.clause("until", 0).holds(),
		Allow:   b.guard(r.clause("allow", 0)),
		At:      b.warmth(r.clause(at, 0)),
		From:    b.rise(r.clause("from", 0)),
		Airflow: r.clause("with", 1).quantity(),
	}
	b.unread[s] = !r.whole || b.dropped > before
	if what := r.slot(0); kind == model.Hold && what != nil && s.At != nil && s.At.Where == "" {
		s.At.Where = what.word
	}
	return s
}

// wetStep builds a soak or a rest, whose time may stand right behind the verb.
func (b *builder) wetStep(r *reading, kind model.StepKind) *model.Step {
	s := b.step(r, kind)
	if t := b.positive(r.slot(0).quantity(), "a time"); t != nil {
		if s.For != nil {
			b.note(twoOfAClause.At(s.For.Place, fmt.Sprintf("%s is given two times: %s and %s", kind, t, s.For)))
		}
		s.For = t
	}
	with := r.clause("with", 0).chosen().Text
	s.Aerated, s.Limed = kind == model.Soak && with == "air", kind == model.Soak && with == "lime"
	if s.At != nil && s.At.Where == "" {
		s.At.Where = map[model.StepKind]string{model.Soak: "water", model.Rest: "air"}[kind]
	}
	return s
}

func (b *builder) gate(r *reading) *model.Step {
	return &model.Step{Kind: model.Gate, Place: r.place, Gate: r.slot(0).holds(), Allow: b.guard(r.clause("allow", 0))}
}

// Temperatures that a process can ask for, in °C.
const (
	coolestAsked = "-5"
	hottestAsked = "260"
)

func (b *builder) warmth(v *value) *model.Temperature {
	if v == nil || b.upright(v) == nil {
		return nil
	}
	return b.askable(v.temperature())
}

// rise is a temperature that runs from its first value to its second; it may fall.
func (b *builder) rise(v *value) *model.Temperature {
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
	f.Hint = orElse(slipOf(t.Range.Range, can), f.Hint)
	b.refuse(f)
	return nil
}

// guard reads the earliest and latest time of allow: a range, or a bound on one side.
func (b *builder) guard(v *value) *model.Guard {
	if v == nil {
		return nil
	}
	g := &model.Guard{Place: v.place}
	low, high := v.rng.Low, v.rng.High
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
