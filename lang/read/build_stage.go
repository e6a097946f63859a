package read

import (
	"fmt"

	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// steeping is a steep that is built, or a repeat inside it.
type steeping struct {
	of    *model.Process
	stage *model.Stage
	steps *[]*model.Step
	again table[steeping] // of a repeat inside it
}

func (m *steeping) add(s *model.Step) { *m.steps = append(*m.steps, s) }

var steepStatements = table[steeping]{
	"soak":   func(b *builder, m *steeping, r *reading) { m.add(b.wetStep(r, model.Soak)) },
	"rest":   func(b *builder, m *steeping, r *reading) { m.add(b.wetStep(r, model.Rest)) },
	"repeat": (*builder).repeat,
	"gate":   func(b *builder, m *steeping, r *reading) { m.add(b.gate(r)) },
	"until":  func(_ *builder, m *steeping, r *reading) { m.stage.Until = r.slot(0).holds() },
}

var repeatStatements = table[steeping]{
	"soak": steepStatements["soak"], "rest": steepStatements["rest"], "repeat": steepStatements["repeat"],
}

func (b *builder) steep(p *model.Process, s *reading) {
	st := b.stage(p, model.Steep, s)
	st.Vessel = find(b, s.clause("in", 0), "vessel", b.house.Vessels, func(v *model.Vessel) string { return v.Name })
	st.Target = b.upright(s.clause("to", 1))
	if st.Target != nil {
		if b.moisture(&model.Quantity{Quantity: st.Target.High, Place: st.Target.Place}, p.Limits) == nil {
			st.Target = nil
		}
	}
	fillStage(b, p, s, vocabulary.Steep, st, &steeping{p, st, &st.Steps, repeatStatements}, steepStatements)
}

func (b *builder) repeat(m *steeping, r *reading) {
	s := b.step(r, model.Repeat)
	s.Times = b.times(r.slot(0))
	b.unread[s] = b.unread[s] || r.slot(0) != nil && s.Times == nil
	b.timesBound(s, r.slot(0))
	m.add(s)
	fillStage(b, m.of, r, vocabulary.Repeat, s, &steeping{m.of, m.stage, &s.Steps, m.again}, m.again)
}

var germinateStatements = table[model.Stage]{
	"hold":     func(b *builder, st *model.Stage, r *reading) { st.Steps = append(st.Steps, b.step(r, model.Hold)) },
	"gate":     func(b *builder, st *model.Stage, r *reading) { st.Steps = append(st.Steps, b.gate(r)) },
	"sprinkle": (*builder).sprinkle,
	"turn":     (*builder).turn, "humidity": (*builder).humidity,
	"until": (*builder).until, "allow": (*builder).allow, "for": (*builder).lasts,
}

func (b *builder) germinate(p *model.Process, s *reading) {
	st := b.growing(p, model.Germinate, s)
	fillStage(b, p, s, vocabulary.Germinate, st, st, germinateStatements)
}

func (b *builder) sprinkle(st *model.Stage, r *reading) {
	water, often := b.positive(r.slot(0).quantity(), "an amount of water"), b.interval(r)
	if water != nil && often != nil {
		st.Sprinkle = &model.Sprinkle{Water: *water, Every: *often}
	}
}

var witherStatements = table[model.Stage]{
	"air":  func(b *builder, st *model.Stage, r *reading) { st.Air = b.warmth(r.clause("at", 0)) },
	"gate": func(b *builder, st *model.Stage, r *reading) { st.Steps = append(st.Steps, b.gate(r)) },
	"turn": (*builder).turn, "humidity": (*builder).humidity,
	"until": (*builder).until, "allow": (*builder).allow, "for": (*builder).lasts,
}

func (b *builder) wither(p *model.Process, s *reading) {
	st := b.growing(p, model.Wither, s)
	fillStage(b, p, s, vocabulary.Wither, st, st, witherStatements)
}

// growing begins a stage on the floor, with the clauses of its head.
func (b *builder) growing(p *model.Process, kind model.StageKind, s *reading) *model.Stage {
	st := b.stage(p, kind, s)
	st.Floor = find(b, s.clause("on", 0), "floor", b.house.Floors, func(v *model.Floor) string { return v.Name })
	st.Until, st.Allow, st.For = s.clause("until", 0).holds(), b.guard(s.clause("allow", 0)), b.positive(s.clause("for", 0).quantity(), "a time")
	return st
}

func (b *builder) turn(st *model.Stage, r *reading) { st.Turn = b.interval(r) }

func (b *builder) humidity(st *model.Stage, r *reading) { st.Humidity = b.upright(r.slot(0)) }

func (b *builder) until(st *model.Stage, r *reading) {
	if st.Until != nil {
		b.headToo(r, st, st.Until.Place)
	}
	st.Until = r.slot(0).holds()
}

func (b *builder) allow(st *model.Stage, r *reading) {
	if st.Allow != nil {
		b.headToo(r, st, st.Allow.Place)
	}
	st.Allow = b.guard(r.slot(0))
}

func (b *builder) lasts(st *model.Stage, r *reading) {
	if st.For != nil {
		b.headToo(r, st, st.For.Place)
	}
	st.For = b.positive(r.slot(0).quantity(), "a time")
}

// headToo reports what the block of a stage says and its head has said before.
func (b *builder) headToo(r *reading, st *model.Stage, before source.Place) {
	if before.Start < r.place.Start && before.End <= st.Place.End {
		b.again(r.place, before, fmt.Sprintf("%s of %s is given in its head already", r.Verb.Text, st.Kind))
	}
}

var kilnStatements = table[model.Stage]{
	"dry":  func(b *builder, st *model.Stage, r *reading) { st.Steps = append(st.Steps, b.step(r, model.Dry)) },
	"stew": func(b *builder, st *model.Stage, r *reading) { st.Steps = append(st.Steps, b.step(r, model.Stew)) },
	"cure": func(b *builder, st *model.Stage, r *reading) { st.Steps = append(st.Steps, b.step(r, model.Cure)) },
	"cool": func(b *builder, st *model.Stage, r *reading) { st.Steps = append(st.Steps, b.step(r, model.Cool)) },
	"gate": func(b *builder, st *model.Stage, r *reading) { st.Steps = append(st.Steps, b.gate(r)) },
	"stir": (*builder).turn,
}

func (b *builder) kilnStage(p *model.Process, s *reading) {
	st := b.stage(p, model.KilnStage, s)
	st.Kiln = find(b, s.clause("in", 0), "kiln", b.house.Kilns, func(k *model.Kiln) string { return k.Name })
	fillStage(b, p, s, vocabulary.Kiln, st, st, kilnStatements)
}

func (b *builder) deculm(p *model.Process, s *reading) {
	b.stage(p, model.Deculm, s).Within = b.positive(s.clause("within", 0).quantity(), "a time")
}

func (b *builder) store(p *model.Process, s *reading) {
	st := b.stage(p, model.Store, s)
	if v := s.clause("in", 0); v != nil {
		w := v.chosen()
		st.Keep = &w
	}
	if v := s.clause("for", 0); v != nil {
		st.Rest, st.RestAt = v.bound(), v.place
		b.restBound(v)
	}
}
