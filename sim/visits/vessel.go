package visits

import (
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/steep"
)

// Portion is what goes into one of several vessels.
type Portion struct {
	In           string
	Grain, Water float64 // kg, and m³ of which water flows over it later is no part
}

// portions share out the grain and the water of a soak among the vessels of a steep, by what
// each holds; none where there is one vessel, or one does not say what it holds.
func (l *lister) portions(st *model.Steep, s *forecast.Step, weight float64) (list []Portion) {
	water := steep.DefaultWaterPerKg / 1000 * l.p.Charge.SI
	if soak, ok := l.steps[s.Place].(*model.Soak); ok && soak.Water != nil {
		water = model.WaterVolume(soak.Water.Quantity)
	}
	for _, share := range st.Shares() {
		list = append(list, Portion{share.In.Name, share.Of * weight, share.Of * water})
	}
	return list
}

// Weighing is what a vessel weighs with what is in it, kg.
type Weighing struct {
	In    string
	Gross float64
}

// weighings are what the vessels of a steep weigh with drained grain of so many kg in them
// all; none where there is one vessel, or one does not say what it holds or weighs.
func weighings(st *model.Steep, weight float64) (list []Weighing) {
	for _, share := range st.Shares() {
		if share.In.Weighs == nil {
			return nil
		}
		list = append(list, Weighing{share.In.Name, share.In.Weighs.SI + share.Of*weight})
	}
	return list
}

// stays tells whether a piece grows in the vessel that it was steeped in, alone.
func (l *lister) stays(piece *model.Piece) bool {
	st, steeped := l.before.(*model.Steep)
	return steeped && piece.In != nil && st.Vessel == piece.In && len(st.More) == 0
}
