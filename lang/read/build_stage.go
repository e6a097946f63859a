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
	stage *model.Steep
	steps *[]model.Step
	again table[steeping] // of a repeat inside it
}

// wet is the builder of a step of the steep.
func wet(build func(*builder, *filled) model.Step) func(*builder, *steeping, *filled) {
	return func(b *builder, m *steeping, r *filled) { *m.steps = append(*m.steps, build(b, r)) }
}

var steepStatements = table[steeping]{
	"soak":   wet((*builder).soak),
	"rest":   wet((*builder).rest),
	"repeat": (*builder).repeat,
	"gate":   wet((*builder).gate),
	"aerate": (*builder).aerate,
	"until":  func(_ *builder, m *steeping, r *filled) { m.stage.Until = r.slot(0).holds() },
}

var repeatStatements = table[steeping]{
	"soak": steepStatements["soak"], "rest": steepStatements["rest"], "repeat": steepStatements["repeat"],
}

func (b *builder) steep(p *model.Process, s *filled) {
	st := &model.Steep{Written: s.written()}
	b.stage(p, st, s)
	b.inVessels(st, s)
	st.Target = b.upright(s.clause("to", 1))
	if st.Target != nil {
		if b.moisture(&model.Quantity{Quantity: st.Target.High, Place: st.Target.Place}, p.Limits) == nil {
			st.Target = nil
		}
	}
	fillStage(b, p, s, vocabulary.Steep, st, &steeping{p, st, &st.Steps, repeatStatements}, steepStatements)
}

func (b *builder) repeat(m *steeping, r *filled) {
	s := &model.Repeat{}
	b.newStep(r, func() model.Step {
		*s = model.Repeat{Written: r.written(), Until: r.clause("until", 0).holds(), Times: b.times(r.slot(0))}
		return s
	})
	b.unread[s] = b.unread[s] || r.slot(0) != nil && s.Times == nil
	b.timesBound(s, r.slot(0))
	*m.steps = append(*m.steps, s)
	fillStage(b, m.of, r, vocabulary.Repeat, s, &steeping{m.of, m.stage, &s.Steps, m.again}, m.again)
}

func (b *builder) aerate(m *steeping, r *filled) {
	often, time := b.interval(r), b.positive(r.clause("for", 0).quantity(), "a time")
	if often == nil || time == nil {
		return
	}
	if time.SI >= often.SI {
		b.refuse(airNeverStops.At(time.Place, fmt.Sprintf("air that is blown every %s for %s never stops", often, time)))
		return
	}
	m.stage.Aerate = &model.Aerate{Written: r.written(), Every: *often, For: *time}
}

// growing is a piece that is built, and the stage that it is of.
type growing struct {
	stage model.Stage
	*model.Piece
}

func (g *growing) add(s model.Step) { g.Steps = append(g.Steps, s) }

var germinateStatements = table[growing]{
	"hold":     func(b *builder, g *growing, r *filled) { g.add(b.hold(r)) },
	"gate":     func(b *builder, g *growing, r *filled) { g.add(b.gate(r)) },
	"sprinkle": (*builder).sprinkle, "air": (*builder).air,
	"turn": (*builder).turn, "humidity": (*builder).humidity,
	"until": (*builder).until, "allow": (*builder).allow, "for": (*builder).lasts,
}

func (b *builder) germinate(p *model.Process, s *filled) {
	st := &model.Germination{Written: s.written()}
	b.stage(p, st, s)
	b.onFloor(&st.Piece, s)
	b.inVessel(&st.Piece, s)
	fillStage(b, p, s, vocabulary.Germinate, st, &growing{st, &st.Piece}, germinateStatements)
}

var witherStatements = table[growing]{
	"air": (*builder).air, "gate": germinateStatements["gate"],
	"turn": (*builder).turn, "humidity": (*builder).humidity,
	"until": (*builder).until, "allow": (*builder).allow, "for": (*builder).lasts,
}

func (b *builder) wither(p *model.Process, s *filled) {
	st := &model.Withering{Written: s.written()}
	b.stage(p, st, s)
	b.onFloor(&st.Piece, s)
	fillStage(b, p, s, vocabulary.Wither, st, &growing{st, &st.Piece}, witherStatements)
}

// onFloor reads the head of a stage on the floor.
func (b *builder) onFloor(piece *model.Piece, s *filled) {
	piece.Floor = find(b, s.clause("on", 0), "floor", b.house.Floors, func(v *model.Floor) string { return v.Name })
	piece.Ending = b.ending(s)
}

func (b *builder) turn(g *growing, r *filled) {
	g.Turn, g.TurnAt = b.turns(r)
	g.Turner = r.clause("by", 0).chosen()
}

func (b *builder) humidity(g *growing, r *filled) {
	set := &g.Humidity
	if v := r.slot(0); v != nil && v.where == vocabulary.PlaceAirOn {
		set = &g.AirOnHumidity
	}
	if *set != nil {
		b.again(r.place, (*set).Place, "humidity is given twice in this block")
	}
	*set = b.upright(r.slot(0))
}

func (b *builder) until(g *growing, r *filled) {
	if g.Until != nil {
		b.headToo(r, g.stage, g.Until.Place)
	}
	g.Until = r.slot(0).holds()
}

func (b *builder) allow(g *growing, r *filled) {
	if g.Allow != nil {
		b.headToo(r, g.stage, g.Allow.Place)
	}
	g.Allow = b.guard(r.slot(0))
}

func (b *builder) lasts(g *growing, r *filled) {
	if g.For != nil {
		b.headToo(r, g.stage, g.For.Place)
	}
	g.For = b.positive(r.slot(0).quantity(), "a time")
}

// headToo reports what the block of a stage says and its head has said before.
func (b *builder) headToo(r *filled, st model.Stage, before source.Place) {
	if before.Start < r.place.Start && before.End <= st.Place().End {
		b.again(r.place, before, fmt.Sprintf("%s of %s is given in its head already", r.Verb.Text, st.Kind()))
	}
}

// onKiln is the builder of a step of the kiln.
func onKiln(build func(*builder, *filled) model.Step) func(*builder, *model.Kilning, *filled) {
	return func(b *builder, st *model.Kilning, r *filled) { st.Steps = append(st.Steps, build(b, r)) }
}

var kilnStatements = table[model.Kilning]{
	"dry": onKiln(dry), "stew": onKiln(stew), "cure": onKiln(cure), "roast": onKiln(roast),
	"cool": onKiln((*builder).cool), "gate": onKiln((*builder).gate),
	"stir": func(b *builder, st *model.Kilning, r *filled) { st.Stir = b.interval(r) },
}

func (b *builder) kilnStage(p *model.Process, s *filled) {
	st := &model.Kilning{Written: s.written()}
	b.stage(p, st, s)
	st.Kiln = find(b, s.clause("in", 0), "kiln", b.house.Kilns, kilnName)
	fillStage(b, p, s, vocabulary.Kiln, st, st, kilnStatements)
}

func (b *builder) deculm(p *model.Process, s *filled) {
	b.stage(p, &model.Deculming{Written: s.written(), Within: b.positive(s.clause("within", 0).quantity(), "a time")}, s)
}

func (b *builder) store(p *model.Process, s *filled) {
	st := &model.Storing{Written: s.written(), In: s.clause("in", 0).chosen()}
	b.stage(p, st, s)
	if v := s.clause("for", 0); v != nil {
		st.Rest = v.bound()
		b.restBound(v)
	}
}
