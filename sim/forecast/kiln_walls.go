package forecast

import (
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/air"
	"maltwright/sim/draught"
	"maltwright/sim/kiln"
)

var fabrics = map[string]kiln.Fabric{
	vocabulary.WallsBrick: kiln.Brick, vocabulary.WallsMetal: kiln.Metal, vocabulary.WallsWood: kiln.Wood, vocabulary.WallsStone: kiln.Stone,
}

// wallsOf are the walls of a kiln, nil where it says nothing of them. Without an area they stand
// around its bed, or as a cabinet around its trays; those of a drum are its shell.
func (r *run) wallsOf(k *model.Kiln, kit kiln.Equipment) *kiln.Walls {
	if k.Walls == nil {
		return nil
	}
	w := &kiln.Walls{Of: fabrics[k.Walls.Material.Text], Insulated: k.Walls.Insulated}
	a := KilnWalls{Of: k.Walls.Material.Text, Called: r.called()}
	switch {
	case k.Walls.Area != nil:
		w.Area = k.Walls.Area.SI
	case k.Tumbles:
		w.Area, a.Shell = kit.Drum.Shell(), true
	default:
		around := kiln.WallsAround
		if a.Trays = r.stacked(k, kit); a.Trays {
			around = kiln.CabinetAround
		}
		w.Area, a.Height = around(kit.Area)
	}
	a.Area = w.Area
	a.Thick, a.Wool = w.Thickness()
	r.assume(a)
	return w
}

// Malt that lies no deeper than onTrays, m, on no more than cabinetTrays, m², in an oven or under a fan lies on
// trays, several of them one above the other (common practice: 3 to 5 cm; a floor is loaded deeper).
const onTrays, cabinetTrays = 0.06, 20.0

// stacked tells whether the area of a kiln is taken to be that of trays one above the other.
func (r *run) stacked(k *model.Kiln, kit kiln.Equipment) bool {
	return (kit.Still || moved(k)) && kit.Area <= cabinetTrays && r.lies(r.batch.X())/kit.Area <= onTrays
}

// doorOf is the door of an oven that stands ajar, nil where it is shut, where an airflow says
// what leaves the oven, and of a kiln that is no still oven. How much it lets out is told of the first step that heats.
func (r *run) doorOf(st *model.Kilning, k *model.Kiln, kit kiln.Equipment) *kiln.Door {
	switch {
	case k.Door == nil:
		return nil
	case k.Airflow != nil || !kit.Still:
		r.assume(DoorIdle{Said: kit.Still, Called: r.called()})
		return nil
	}
	d, at := &kiln.Door{Gap: k.Door.SI, Height: kiln.OvenDoor}, r.site.air
	if list := draughts(st, kit); len(list) > 0 {
		at = list[0].T
	}
	r.assume(OvenDoor{Height: d.Height, Flow: r.draws(d, at), At: at, Called: r.called()})
	return d
}

// draws is what leaves an oven of t °C by its door, m³/s, its air as dry as the room's.
func (r *run) draws(d *kiln.Door, t float64) float64 {
	outside, err := air.FromRH(r.site.air, r.site.rh, r.site.pressure)
	if err != nil {
		return 0
	}
	return d.Draws(air.State{T: t, W: outside.W, P: outside.P}, outside)
}

// coolsBy is what draws air through the malt of a kiln once its fire is out, where all that is
// said of its draught is the airflow that the fire drew; nil for any other, which has what it had.
func (r *run) coolsBy(k *model.Kiln, area float64) *draught.Way {
	if k.Draught.Text != vocabulary.DraughtNatural || k.Airflow == nil || k.Tumbles || k.AirFrom != nil || k.Chimney != nil || len(k.Fan) > 1 {
		return nil
	}
	return &draught.Way{Above: houseAbove, Below: houseBelow, Opening: draught.UsualOpening * area}
}

// underCover is what of an oven's air reaches malt in a covered pan, m³/s.
func (r *run) underCover(m *kilnModel, s asked) float64 {
	vent := m.vent
	if m.door != nil {
		vent += r.draws(m.door, hottest(s.Warming))
	}
	return coveredShare * vent
}

// nearlyAll is the share of its power from which a heater may be too weak for what walls take
// beside it (common practice: they take a tenth to a fifth).
const nearlyAll = 0.8

// unwalled takes for granted that walls take nothing, where the heater came so near to its power
// that they could matter, and of a still oven.
func (r *run) unwalled(m *kilnModel, k *model.Kiln) {
	if k == nil || k.Walls != nil || k.Tumbles {
		return
	}
	switch share := m.hardest / m.power; {
	case m.power > 0 && share >= nearlyAll:
		r.assume(NoWalls{min(share, 1), r.called()})
	case Still(k):
		r.assume(NoWalls{Called: r.called()})
	}
}
