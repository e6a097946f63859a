package forecast

import (
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/germinate"
)

// How a growing piece is kept: its room, its cover, and what the floor can do for it.

// ramp is a temperature that a hold leads from one value to another.
type ramp struct {
	rise
	began float64 // s, age of the piece
	room  bool    // it is that of the room, and not of the bed
}

// rampOf is the ramp of a hold that begins with a piece of that age, s.
func rampOf(s asked, age float64) *ramp {
	from, to := bandOf(s.From.Range.Range)
	r := &ramp{rise: rise{from: from, to: to}, began: age, room: ofRoom(s.From.Where)}
	if s.Over != nil {
		r.over = s.Over.SI
	}
	return r
}

// at is what it asks for of a piece of that age.
func (r *ramp) at(age float64) float64 { return r.value(age - r.began) }

// lead sets what the ramp asks for in the middle of the next dt seconds.
func (m *growModel) lead(dt float64) {
	if m.ramp == nil {
		return
	}
	t := m.ramp.at(m.piece.Age() + dt/2)
	if m.ramp.room {
		m.room.T = t
		return
	}
	m.room.Hold = &germinate.Band{Low: t, High: t}
	m.band = *m.room.Hold
}

// setRoom keeps the piece as a hold asks. The room has the air of the site, unless it
// is the room that is held.
func (r *run) setRoom(m *growModel, st *model.Germination, s asked) {
	m.kept, m.ramp, m.asked = Temperature{}, nil, nil
	m.room = germinate.Room{T: r.site.air, Pressure: &r.site.pressure}
	m.room.RH, m.room.Cover = r.moistAir(st)
	m.room.Lifts = st.Humidity == nil
	if on := st.Floor; on != nil && on.Heater != nil {
		m.room.Heater = model.Given(on.Heater, on.Efficiency)
	}
	if on := st.Floor; on != nil && on.Cooler != nil {
		m.room.Cooler = on.Cooler.SI
	}
	switch {
	case s.At != nil:
		r.keepAt(m, s.At)
	case s.From != nil:
		r.keepAlong(m, s)
	}
}

// keepAt keeps the bed, or the room, in a band.
func (r *run) keepAt(m *growModel, at *model.Temperature) {
	low, high := bandOf(at.Range.Range)
	m.kept = Temperature{r.heldPlace(at), low, high, true}
	if ofRoom(m.kept.Place) {
		m.room.T = (low+high)/2 + r.o.BandAt*(high-low)/2
		return
	}
	m.asked, m.band = at, germinate.Band{Low: low, High: high}
	m.room.Hold = aimed(m.band, r.o.BandAt)
}

// keepAlong leads the bed, or the room, from one temperature to another.
func (r *run) keepAlong(m *growModel, s asked) {
	from, to := bandOf(s.From.Range.Range)
	m.kept = Temperature{r.heldPlace(s.From), from, to, true}
	m.ramp = rampOf(s, m.piece.Age())
	if !m.ramp.room {
		m.asked = s.From
	}
	m.lead(0)
}

// aimed is the half of its band that the bed is kept in, where it can be: in the middle
// of the band at 0, its low half at −1 and its high half at 1. Nobody lets a bed go to
// the very end of its band before something is done (common practice).
func aimed(b germinate.Band, at float64) *germinate.Band {
	quarter := (b.High - b.Low) / 4
	return &germinate.Band{Low: b.Low + (1+at)*quarter, High: b.High - (1-at)*quarter}
}

func ofRoom(place string) bool { return place == vocabulary.PlaceRoom || place == vocabulary.PlaceAir }

// heldPlace is what a hold holds: the bed, where it does not say.
func (r *run) heldPlace(at *model.Temperature) string {
	if at.Where == "" {
		r.assume(BedHeld{})
		return vocabulary.PlaceBed
	}
	return at.Where
}

// moistRH is the humidity over a growing piece that is kept from drying: covered
// with damp cloth, or in a closed box; calibrated to a piece that keeps its moisture
// within a point (common practice). Nobody leaves it on a piece that grows wetter.
const moistRH = 0.97

// A piece under a cover or in a closed box has air of coverRH and more right over it, as
// warm as the bed; air of openRH and less is the room's (common practice). Between them
// it is some of both.
const openRH, coverRH = 0.80, 0.95

// moistAir is the humidity over the growing piece, and how far it is covered, 0 to 1.
func (r *run) moistAir(st *model.Germination) (rh, cover float64) {
	if st.Humidity == nil {
		r.assume(MoistAir{moistRH})
	}
	return r.keptMoist(st)
}

// keptMoist is the same, with nothing taken for granted in words: the fan of a box may
// never stand.
func (r *run) keptMoist(st *model.Germination) (rh, cover float64) {
	if st.Humidity != nil {
		mid := within(st.Humidity.Range, 0)
		return within(st.Humidity.Range, r.o.BandAt), min(max((mid-openRH)/(coverRH-openRH), 0), 1)
	}
	return moistRH, 1
}
