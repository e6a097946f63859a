package forecast

import (
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/germinate"
	"maltwright/sim/grain"
)

// growing is grain that is spread out to grow or to wither: the piece on the floor, or
// the bed that air is blown through.
type growing interface {
	physics
	batch() grain.Batch
	mean() float64   // °C
	age() float64    // s since it was spread out
	spread() float64 // m²
	turn()
	sprinkle(kg, t float64) error
	keep(r *run, st *model.Germination, s asked) // as a hold asks
	keeps() Temperature                          // as which the hold has it kept
	noted() *watched
	heat() GrowthHeat            // what its breath made, and how that left
	tell(r *run, st model.Stage) // what troubles it met
}

// growModel is the piece on the floor, growing or withering.
type growModel struct {
	piece germinate.Piece
	room  germinate.Room
	kept  Temperature // as which a hold has it kept
	area  float64     // m²
	seen  watched

	ramp    *ramp              // nil where its temperature is not led
	asked   *model.Temperature // that a hold asks of the bed; nil where it asks none
	band    germinate.Band     // the same, now
	strayed strayed
}

func (m *growModel) advance(dt float64) error {
	m.lead(dt)
	clock, mean, core := m.piece.Clock(), m.piece.T(), m.piece.CoreT()
	err := m.piece.Advance(dt, m.room)
	if err == nil {
		m.strayBy(dt, m.piece.Clock()-clock, (mean+m.piece.T())/2, (core+m.piece.CoreT())/2)
		m.look()
	}
	return err
}

func (m *growModel) copy(spare physics) physics {
	c, _ := spare.(*growModel)
	if c == nil {
		c = new(growModel)
	}
	*c = *m
	return c
}

func (m *growModel) set(o physics) { *m = *o.(*growModel) }

func (m *growModel) batch() grain.Batch           { return m.piece.Batch() }
func (m *growModel) mean() float64                { return m.piece.T() }
func (m *growModel) age() float64                 { return m.piece.Age() }
func (m *growModel) turn()                        { m.piece.Turn() }
func (m *growModel) sprinkle(kg, t float64) error { return m.piece.Sprinkle(kg, t) }
func (m *growModel) keeps() Temperature           { return m.kept }
func (m *growModel) noted() *watched              { return &m.seen }
func (m *growModel) spread() float64              { return m.area }

func (m *growModel) keep(r *run, st *model.Germination, s asked) { r.setRoom(m, st, s) }
func (m *growModel) tell(r *run, st model.Stage)                 { r.growTroubles(m, st) }

// unwatched is short while the piece is led from one temperature to another, so that the
// stairs that it is led by are low.
func (m *growModel) unwatched() float64 {
	if m.ramp != nil {
		return often
	}
	return seldom
}

func (m *growModel) moisture() float64 { return m.piece.Moisture() }
func (m *growModel) weight() float64   { return m.piece.Mass() }

func (m *growModel) measure(name string) (float64, string, bool) {
	switch name {
	case vocabulary.MeasureMoisture:
		return m.moisture(), "", true
	case vocabulary.MeasureWeight:
		return m.weight(), "", true
	case vocabulary.MeasureChit:
		return m.piece.Chitted(), "", true
	case vocabulary.MeasureAcrospire:
		return m.piece.Acrospire(), "", true
	case vocabulary.MeasureBed:
		return m.piece.CoreT() + zeroC, "", true
	case vocabulary.MeasureRub:
		return 0, m.piece.Rub().String(), true
	}
	return 0, "", false
}

// rubOrder ranks the words of the rub test by how far the kernel is modified.
var rubOrder = map[string]int{grain.Gummy.String(): 0, grain.Gritty.String(): 1, grain.Chalky.String(): 2}

// RubHolds tells whether the kernel rubs out as asked, or better: growth does not go
// back, so what was chalky an hour ago is not gritty now.
func RubHolds(asked, found string) bool { return rubOrder[found] >= rubOrder[asked] }
