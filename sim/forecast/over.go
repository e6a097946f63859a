package forecast

import (
	"maps"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
	"maltwright/sim/air"
	"maltwright/sim/kiln"
)

// The air that a floor gives to the one above has to go through that bed as well: what drives
// it is lost in both, and what a chimney draws by is what leaves the upper one. The batch above is this
// process's own upper stage, which began as the batch before came onto the lower floor. Each round of the
// search in floors.go therefore dries the lower floors with the beds above as the last round left
// them, until these too come out as they were supposed.

const (
	// betweenFloors is from one floor of a kiln to the next, m (common practice: malt is turned
	// and shovelled down by people who stand there).
	betweenFloors = 2.5

	// What is taken to leave a floor above at first, °C, saturated (numerical: where the search
	// begins).
	firstAbove = 25.0

	// otherKelvin is by how much what leaves the floors above may be another, K in the mean, for
	// the places that were tried to count on (numerical).
	otherKelvin = 1.0
)

// inTheWay tells whether all the air of another stage goes through a stage: it takes it, and has no fan
// of its own beside it.
func (r *run) inTheWay(st *model.Kilning) bool {
	return r.p.Giver(st) != nil && !st.Kiln.Tumbles && !Still(st.Kiln) && st.Kiln.BlowsBy() == source.Place{}
}

// taker is the stage that takes the air of another, nil where that goes out.
func (r *run) taker(st *model.Kilning) *model.Kilning {
	for _, other := range model.Every[*model.Kilning](r.p) {
		if r.p.Giver(other) == st {
			return other
		}
	}
	return nil
}

// stageAbove is the stage whose bed lies in the way of the air of another, nil for none.
func (r *run) stageAbove(st *model.Kilning) *model.Kilning {
	if up := r.taker(st); up != nil && r.inTheWay(up) {
		return up
	}
	return nil
}

// floorsOver gives the name of the kiln above a stage, how high the last floor lies over this one, m,
// and the chimney that the kiln of that one says.
func (r *run) floorsOver(st *model.Kilning) (name string, height float64, chimney *model.Quantity) {
	for up := r.stageAbove(st); up != nil; up = r.stageAbove(up) {
		if name == "" {
			name = up.Kiln.Name
		}
		height += betweenFloors
		chimney = up.Kiln.Chimney
	}
	return name, height, chimney
}

// bedsOver lists the beds above a stage, as far as it is known how they lie.
func (r *run) bedsOver(st *model.Kilning) (list []kiln.Over) {
	for up := r.stageAbove(st); up != nil; up = r.stageAbove(up) {
		e := r.above[up]
		if !e.blows() {
			return list
		}
		area := r.loads / usualLoad
		if up.Kiln.Area != nil {
			area = up.Kiln.Area.SI
		}
		list = append(list, kiln.Over{Area: area, Height: betweenFloors, Course: e.course})
	}
	return list
}

// supposeAbove supposes what lies above the lower floors: as in the forecast that this one is like,
// or the batch as it is, with air that leaves it as it leaves green malt.
func (r *run) supposeAbove(floors []*model.Kilning) {
	if like := r.o.Like; like != nil && like.fixed[floors[0]].above != nil {
		r.above, r.cut = like.fixed[floors[0]].above, maps.Clone(like.fixed[floors[0]].cut) // to which this one adds
		return
	}
	r.above, r.cut = map[*model.Kilning]*exhaust{}, map[*model.Kilning]float64{}
	p, err := air.Pressure(r.site.altitude)
	for _, st := range floors[:len(floors)-1] {
		if err != nil || !r.inTheWay(st) || st.Kiln.Area == nil {
			continue
		}
		t := max(firstAbove, r.site.air)
		w := air.HumidityRatio(air.Saturation(t), p)
		r.above[st] = &exhaust{course: kiln.Intake{{T: t, W: w, Depth: r.lies(r.batch.X()) / st.Kiln.Area.SI}}}
	}
}

// hangsOn tells whether the air of a floor hangs on what lies in its way.
func hangsOn(low *model.Kilning) bool {
	return driverOf(low.Kiln) != "" || low.Kiln.Draught.Text == vocabulary.DraughtNatural
}

// throughBoth tells whether the air of one of the lower floors hangs on a bed above it.
func (r *run) throughBoth(floors []*model.Kilning) bool {
	return slices.ContainsFunc(floors[1:], func(low *model.Kilning) bool { return hangsOn(low) && r.stageAbove(low) != nil })
}

// aboveApart is how far what leaves the floors above is off what was supposed of it, K in the mean
// of the time: nil where the air of the lower floors does not hang on it.
func (r *run) aboveApart(floors []*model.Kilning, above map[*model.Kilning]*exhaust) (apart float64) {
	for _, low := range floors[1:] {
		if !hangsOn(low) {
			continue
		}
		for up := r.stageAbove(low); up != nil; up = r.stageAbove(up) {
			was, now := r.above[up], above[up]
			if !was.blows() || !now.blows() {
				continue
			}
			kelvin, _ := was.course.Apart(now.course, now.course[len(now.course)-1].At)
			apart = max(apart, kelvin)
		}
	}
	return apart
}

// nameAbove is the kiln on the floor above the stage under way, "" for none in the way of its air.
func (r *run) nameAbove() string {
	st, ok := r.f.Stages[len(r.f.Stages)-1].Of.(*model.Kilning)
	if !ok {
		return ""
	}
	name, _, _ := r.floorsOver(st)
	return name
}
