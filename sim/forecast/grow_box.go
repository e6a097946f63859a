package forecast

import (
	"cmp"
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/draught"
	"maltwright/sim/pneumatic"
)

// lay spreads the batch out where a stage has it: on a floor, or in a box or drum.
func (r *run) lay(st model.Stage, t float64) (growing, error) {
	floor := model.PieceOf(st).Floor
	if !floor.Blown() {
		m, err := r.spread(st, t)
		return m, err
	}
	area := r.floorArea(st)
	bed, err := pneumatic.New(r.batch, r.maltOf(st),
		pneumatic.Vessel{Area: area, Layers: boxLayers, Mixed: floor.Tumbles.Text == vocabulary.SaidYes}, t)
	bed.Meter(r.effort.Meter)
	m := &boxModel{bed: bed, area: area, on: -1}
	if floor.FanPower != nil {
		m.fan = floor.FanPower.SI
	}
	if err == nil {
		m.look()
	}
	return m, err
}

// keep sets the air of a growing bed as a hold asks.
func (m *boxModel) keep(r *run, st *model.Germination, s asked) {
	at := s.At
	if at == nil {
		at = s.From // that of a room is taken at the middle of its way
	}
	room, held := m.heldAs(r, s, at)
	own := r.plantOf(&st.Piece, room)
	m.blown.Summer.T, m.blown.Summer.RH = r.summer(st.Floor, room)
	if st.AirOnHumidity == nil {
		r.assume(WashedAir{washedRH})
	}
	switch {
	case len(st.Blown) > 0:
		m.blow = r.asWritten(&st.Piece, own)
		if m.band.known {
			r.assume(AirGoverns{at})
		}
		if m.band.known || !m.kept.Known {
			m.kept = airOn(st.Blown)
		}
	case m.band.known:
		own.Follow, own.T = follow(held), held
		r.assume(FollowingAir{own.Flow, r.called()})
		m.blow = []blowing{{supply: own, asked: true, place: at.Place}}
	default:
		own.T = room
		r.assume(RoomAirBlown{own.Flow, r.called()})
		m.blow = []blowing{{supply: own}}
	}
	m.still = own
	m.still.Flow, m.still.Follow = 0, nil
	if slices.ContainsFunc(m.blow, func(b blowing) bool { return b.when != nil || b.clock != nil }) {
		m.still.Room.RH, _ = r.keptMoist(st) // the box is shut while its fan stands
	}
}

// heldAs notes the band in which a hold has the bed, and gives the temperature of the room
// and that to which the bed is to be led, °C.
func (m *boxModel) heldAs(r *run, s asked, at *model.Temperature) (room, held float64) {
	m.kept, m.ramp = Temperature{}, nil
	m.band.ended(&m.blown)
	if at == nil {
		return r.site.air, math.NaN()
	}
	low, high := bandOf(at.Range.Range)
	held = (low+high)/2 + r.o.BandAt*(high-low)/2
	if ofRoom(at.Where) {
		m.kept = Temperature{at.Where, low, high, true}
		return held, held
	}
	m.kept = Temperature{r.heldPlace(at), low, high, true}
	m.band = band{BandMissed: BandMissed{Place: at.Place, Asked: at, Low: min(low, high), High: max(low, high)}, known: true, since: m.bed.Age()}
	if s.At == nil {
		m.ramp = rampOf(s, m.bed.Age())
		m.band.Led = true
		held = m.ramp.from
	}
	return r.site.air, held
}

// lead sets what a ramp asks for in the middle of the next dt seconds. The band of the hold
// goes with it, and the air that follows the bed.
func (m *boxModel) lead(dt float64) {
	if m.ramp == nil {
		return
	}
	t := m.ramp.at(m.bed.Age() + dt/2)
	m.band.Low, m.band.High = t, t
	for i := range m.blow {
		if m.blow[i].supply.Follow == nil {
			continue
		}
		m.blow = slices.Clone(m.blow) // copies of the bed share it
		m.blow[i].supply.Follow, m.blow[i].supply.T = follow(t), t
	}
}

// follow has the air bring a bed to t °C.
func follow(t float64) *pneumatic.Follow {
	return &pneumatic.Follow{T: t, By: pneumatic.AirOn, Least: max(0, t-coolestBelow), Most: min(45, t+warmestAbove)}
}

// How far air-on may be from the bed that it is to hold, K: colder than common practice
// has it, so that a weak fan still holds its bed, and as warm as a bed that is to warm up
// needs.
const coolestBelow, warmestAbove = 8.0, 2.0

// summer is the warmest air of the site, °C, and its humidity, for a cooler that stands in the site's
// own air; nil where it stands in none that is warmer than reckoned.
func (r *run) summer(f *model.Floor, room float64) (t, rh float64) {
	s := r.p.Site
	if f.Cooler == nil || s == nil || s.Air == nil || room != r.site.air {
		return 0, 0
	}
	if t = s.Air.High.SI - zeroC; t-room < sameAir {
		return 0, 0
	}
	return t, r.site.rh
}

// sameAir is how much warmer air is no other, K.
const sameAir = 0.5

// plantOf is what there is to make the air of a stage with, its fan at full speed, in a
// room of so many °C.
func (r *run) plantOf(piece *model.Piece, room float64) pneumatic.Supply {
	f := piece.Floor
	s := pneumatic.Supply{
		Room: pneumatic.Room{T: room, RH: r.site.rhAt(room), Pressure: &r.site.pressure},
		Flow: f.Airflow.SI, T: room, RH: washedRH, Cooler: new(0.0), Heater: new(0.0),
	}
	if f.Cooler != nil {
		*s.Cooler = f.Cooler.SI
	}
	if f.Heater != nil {
		*s.Heater = model.Given(f.Heater, f.Efficiency)
	}
	if f.Cooler == nil || f.Heater == nil {
		r.assume(BoxPlant{f.Name, f.Cooler == nil, f.Heater == nil})
	}
	if f.Returns != nil {
		s.Return = f.Returns.SI
	}
	if piece.AirOnHumidity != nil {
		s.RH = within(piece.AirOnHumidity.Range, r.o.BandAt)
	}
	if f.FanPower == nil {
		r.assume(FanPressure{ductPressure, draught.Efficiency})
	} else {
		r.assume(FanWarms{})
	}
	return s
}

// washedRH is the humidity of air that is sprayed before it comes on (common practice: 95
// to 99 %).
const washedRH = 0.98

// asWritten are the airs that a stage writes, made by its plant.
func (r *run) asWritten(piece *model.Piece, own pneumatic.Supply) []blowing {
	list := make([]blowing, 0, len(piece.Blown))
	for _, a := range piece.Blown {
		b := blowing{supply: own, when: a.When, asked: true, place: a.At.Place}
		low, high := bandOf(a.At.Range.Range)
		b.supply.T = (low+high)/2 + r.o.BandAt*(high-low)/2
		if a.Airflow != nil {
			b.supply.Flow = min(a.Airflow.SI, own.Flow) // the fan gives no more than it has
		}
		if a.For != nil && a.Every != nil {
			b.clock = &pneumatic.Clock{On: a.For.SI, Every: a.Every.SI}
		}
		list = append(list, b)
	}
	return list
}

// airOn is the temperature of air-on, from the coldest to the warmest air that may be blown:
// what stands behind one that always is never comes on.
func airOn(list []*model.Air) Temperature {
	t := Temperature{vocabulary.PlaceAirOn, math.Inf(1), math.Inf(-1), true}
	for _, a := range list {
		low, high := bandOf(a.At.Range.Range)
		t.From, t.To = min(t.From, low, high), max(t.To, low, high)
		if a.When == nil && a.Every == nil {
			break
		}
	}
	return t
}

// witherBlown sets the air that is blown through a withering bed: what is written at
// air-on, or else the room's own, as it is. It is not sprayed unless its humidity is given.
func (r *run) witherBlown(m *boxModel, st *model.Withering, t, rh float64, room Temperature) Temperature {
	own := r.plantOf(&st.Piece, t)
	own.Room.RH = rh
	own.Room.Open, own.Room.AirSpeed, own.Room.Passes = true, witherSpeed, new(r.withering())
	if st.AirOnHumidity == nil {
		own.RH, own.NoSpray = 1, true
	}
	m.still = own
	m.still.Flow = 0
	if len(st.Blown) == 0 {
		r.assume(RoomAirBlown{own.Flow, cmp.Or(r.called(), string(model.WitherStage))})
		m.blow, m.kept = []blowing{{supply: own}}, room
		return m.kept
	}
	m.blow, m.kept = r.asWritten(&st.Piece, own), airOn(st.Blown)
	return m.kept
}

// tell looks at how the bed fared.
func (m *boxModel) tell(r *run, st model.Stage) {
	if grow, ok := st.(*model.Germination); ok && m.blown.Stood > 0 {
		r.moistAir(grow)
	}
	r.trouble(BedWarm{r.meets(st.Place()), m.bed.Highest(), m.seen.warm.stayed(), m.bed.Depth()})
}
