package forecast

import (
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
	"maltwright/sim/drying"
	"maltwright/sim/germinate"
)

// spread lays the batch out on the floor of a stage.
func (r *run) spread(st model.Stage, t float64) (*growModel, error) {
	area := r.floorArea(st)
	piece, err := germinate.New(r.batch, r.maltOf(st), germinate.Floor{Area: area}, t)
	piece.Meter(r.effort.Meter)
	m := &growModel{piece: piece, area: area}
	if err == nil {
		m.look()
	}
	return m, err
}

// maltOf is the malt as it dries on the floor of a stage: while it withers as fast as it
// does here.
func (r *run) maltOf(st model.Stage) drying.Malt {
	malt := r.batch.Lot.Profile.Malt
	if st.Kind() == model.WitherStage {
		return malt.With(new(r.withering()), 0)
	}
	return malt
}

// floorArea is the area that the batch lies on, m².
func (r *run) floorArea(st model.Stage) float64 {
	area := 0.0
	if on := model.PieceOf(st).Floor; on != nil && on.Area != nil {
		area = on.Area.SI
	} else {
		// a hand's depth, as on a malting floor
		area = r.batch.BedVolume() / usualDepth
		r.assume(FloorArea{st.Kind(), r.called(), area, usualDepth})
	}
	blown := model.PieceOf(st).Floor.Blown() // what passes it passes all of it, bare or not
	if most := r.batch.BedVolume() / oneKernel; area > most && !blown {
		r.assume(FloorArea{st.Kind(), r.called(), most, 0})
		area = most
	}
	return area
}

// usualDepth is that of a piece on the floor (common practice: 10 to 15 cm), m.
const usualDepth = 0.12

// oneKernel is the depth of a layer of single kernels, m. Grain that would lie thinner
// covers a part of its floor only, unless air is blown through all of it.
const oneKernel = 0.0021

// germinate grows the piece through its holds.
func (r *run) germinate(st *model.Germination) error {
	m, err := r.lay(st, r.t)
	if err != nil {
		return err
	}
	ticks := r.turning(&st.Piece)
	if st.Sprinkle != nil {
		ticks = append(ticks, r.sprinkling(st.Sprinkle))
	}
	r.start(string(model.GerminateStage))
	germinating := r.now
	r.beforeHolds(m, st, germinating)
	r.lastHold = r.counts[string(model.HoldStep)] + holdsIn(st)
	whole := r.stageStop(st, germinating)
	steps := heldSteps(st)
	began, n, over := r.clock, len(model.Only[*model.Hold](steps)), false
	for _, s := range steps {
		if gate, ok := s.(*model.Gate); ok {
			err = r.gate(m, st, gate, ticks)
		} else if n--; !over { // once the stage is at its end, what follows of it are its gates
			r.start(string(model.HoldStep))
			over, err = r.hold(m, st, r.warmedAs(r.asDone(s, r.now), germinating), whole, began, n == 0, ticks)
		}
		if err != nil {
			r.brokeOff(m, err)
			return err
		}
	}
	r.counts[string(model.HoldStep)] = r.lastHold // a record names them as they are written
	m.tell(r, st)
	r.fared(m, st)
	r.batch, r.t = m.batch(), m.mean()
	r.f.Totals.CO2 = r.batch.CO2()
	return nil
}

// heldSteps are the steps of the growing. One without a hold is all one hold, of the air
// that is blown through it, with what it waits for behind it.
func heldSteps(st *model.Germination) []model.Step {
	if holdsIn(st) > 0 {
		return st.Steps
	}
	return append([]model.Step{&model.Hold{Written: st.Written}}, st.Steps...)
}

func holdsIn(st *model.Germination) int { return len(model.Only[*model.Hold](st.Steps)) }

// hold runs one hold; the stage's own end comes first where it is nearer. It tells
// whether the stage is over.
func (r *run) hold(m growing, st *model.Germination, s asked, whole stop, began float64, last bool, ticks []*tick) (bool, error) {
	out := Step{Kind: model.HoldStep, Label: vocabulary.VerbHold, Place: s.place}
	if holdsIn(st) <= 1 {
		out.Label = vocabulary.VerbGerminate
	}
	m.keep(r, st, s)
	out.Temperature = m.keeps()
	gone := r.clock - began
	stage := whole
	stage.earliest, stage.latest = max(0, whole.earliest-gone), max(0, whole.latest-gone)
	stops := []stop{r.known(stage.looking(), r.whole)}
	if !last {
		stops = append(stops, r.known(stopAt(s).looking(), r.now))
	}
	r.at = s.place
	before, now := m.moisture(), physics(m)
	which, ending, took, err := r.drive(&now, stops, ticks)
	m.set(now)
	for _, t := range ticks { // the next hold counts from its own beginning
		t.next -= took
	}
	out.EndedBy = ending
	r.record(out, m, before, took)
	if err != nil {
		return true, err
	}
	if which == 0 {
		r.outcome(st, m, st.Until, stops[which], ending, began, ticks)
		return true, nil
	}
	r.outcome(st, m, s.Until, stops[which], ending, r.clock-took, ticks)
	return false, nil
}

// beforeHolds keeps the piece as its first hold will, for a gate that is waited at
// before it: whoever waits there has spread the piece where it is to grow.
func (r *run) beforeHolds(m growing, st *model.Germination, germinating doing) {
	var first asked
	if list := model.Only[*model.Hold](st.Steps); len(list) > 0 {
		first = r.warmedAs(r.asDone(list[0], doing{string(model.HoldStep), r.counts[string(model.HoldStep)] + 1}), germinating)
	}
	m.keep(r, st, first)
}

func (r *run) turning(piece *model.Piece) []*tick {
	turn := func(m physics) error {
		m.(growing).turn()
		return nil
	}
	due := &tick{every: math.Inf(1), next: math.Inf(1), do: turn, leaves: true}
	if often := piece.Turn; often != nil {
		due.every, due.next, due.place = often.SI, often.SI, often.Place
		r.byClock(piece, due)
	}
	switch done := r.turned(due, turn); {
	case done != nil:
		return []*tick{done, due}
	case piece.Turn == nil:
		return nil
	}
	return []*tick{due}
}

// turned are the turns that are written down; from each the next is counted anew. It
// is nil where none falls into the stage.
func (r *run) turned(due *tick, turn func(physics) error) *tick {
	c := r.o.Course
	if c == nil {
		return nil
	}
	first := slices.IndexFunc(c.Turns, func(at float64) bool { return at > r.clock })
	if first < 0 {
		return nil
	}
	left := c.Turns[first:]
	done := &tick{next: left[0] - r.clock}
	done.do = func(m physics) error {
		due.next = done.next + due.to(&left[0])
		if left = left[1:]; len(left) == 0 {
			done.next = math.Inf(1)
		} else {
			done.next += left[0] - c.Turns[len(c.Turns)-len(left)-1]
		}
		return turn(m)
	}
	return done
}

// growTroubles looks at how warm the piece got.
func (r *run) growTroubles(m *growModel, st model.Stage) {
	r.trouble(BedWarm{r.meets(st.Place()), m.piece.Highest(), m.seen.warm.stayed(), m.piece.Depth()})
	r.strays(m)
	lost := lostAt(m.batch())
	if hot := m.seen.warm.above(lost); hot > soonLost && m.strayed.warm.degrees < strayMost { // else it was told of as out of its band
		r.trouble(RanHot{r.meets(st.Place()), lost, m.piece.Highest(), hot})
	}
	h := m.piece.Holding()
	r.f.Totals.BedHeat += h.Warmed
	r.f.Totals.BedCold += h.Cooled
}

// witherSpeed is that of the air over a withering piece, m/s (common practice: a
// door open or a fan in the room).
const witherSpeed = 0.3

// witherIn sets the air over or through a withering piece, and gives it as a step has it.
func (r *run) witherIn(m growing, st *model.Withering, t, rh float64, room Temperature) Temperature {
	switch m := m.(type) {
	case *growModel:
		m.room = germinate.Room{T: t, RH: rh, AirSpeed: witherSpeed, Passes: new(r.withering()), Pressure: &r.site.pressure}
		r.assume(WitherAir{witherSpeed, rh, t, r.called()})
	case *boxModel:
		return r.witherBlown(m, st, t, rh, room)
	}
	return room
}

// wither dries the piece in room air.
func (r *run) wither(st *model.Withering) error {
	m, err := r.lay(st, r.t)
	if err != nil {
		return err
	}
	low, high := r.site.air, r.site.air
	if st.Air != nil {
		low, high = bandOf(st.Air.Range.Range)
	}
	if c := r.change(r.whole, quantity.Temperature); c != nil {
		low, high = bandOf(c.To.Range.Range)
	}
	t := (low+high)/2 + r.o.BandAt*(high-low)/2
	rh := r.site.rhAt(t)
	if st.Humidity != nil {
		rh = within(st.Humidity.Range, r.o.BandAt)
	}
	kept := r.witherIn(m, st, t, rh, Temperature{vocabulary.PlaceAir, low, high, true})
	r.start(string(model.WitherStage))
	out := Step{Label: vocabulary.VerbWither, Place: st.Place(), Temperature: kept}
	ticks := r.turning(&st.Piece)
	if err := r.through(m, st, st.Until, r.stageStop(st, r.now), out, ticks); err != nil {
		return err
	}
	for _, s := range model.Only[*model.Gate](st.Steps) {
		if err := r.gate(m, st, s, ticks); err != nil {
			return err
		}
	}
	if box, ok := m.(*boxModel); ok && box.blown.Hot > 0 { // withering is meant to be warm, but not so
		m.tell(r, st)
	}
	r.fared(m, st)
	r.batch, r.t = m.batch(), m.mean()
	r.f.Totals.CO2 = r.batch.CO2()
	return nil
}
