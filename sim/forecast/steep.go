package forecast

import (
	"maltwright/lang/vocabulary"
	"maltwright/sim/steep"
)

// steepModel is grain in the vessel, under water or drained.
type steepModel struct {
	state  steep.State
	water  steep.Water
	air    steep.Air
	soaked bool // under water now
}

func (m *steepModel) advance(dt float64) error {
	if m.soaked {
		return m.state.Soak(dt, m.water)
	}
	return m.state.Rest(dt, m.air)
}

func (m *steepModel) copy(spare physics) physics {
	c, _ := spare.(*steepModel)
	if c == nil {
		c = new(steepModel)
	}
	*c = *m
	return c
}

func (m *steepModel) set(o physics) { *m = *o.(*steepModel) }

func (m *steepModel) unwatched() float64 { return seldom }
func (m *steepModel) moisture() float64  { return m.state.Moisture() }
func (m *steepModel) weight() float64    { return m.state.DrainedMass() }

func (m *steepModel) measure(name string) (float64, string, bool) {
	switch name {
	case vocabulary.MeasureMoisture:
		return m.moisture(), "", true
	case vocabulary.MeasureWeight:
		return m.weight(), "", true
	case vocabulary.MeasureChit:
		return m.state.Batch().Chitted, "", true
	}
	return 0, "", false
}
