package forecast

import (
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/draught"
)

// Blown is the air that was blown through a bed, and what it took to make it.
type Blown struct {
	Fan       float64 // s for which the fan ran
	FanEnergy float64 // J that it drew
	Heat      float64 // J that the heater gave to the air
	Cold      float64 // J that the cooler took out of it
	PeakHeat  float64 // W, the most that the heater gave
	PeakCold  float64 // W, the most that the cooler took
	Outside   float64 // °C of the air about it, in which that was the most
	Summer    Summer  // what the cooler would have to take in the warmest air of the site
	Sprayed   float64 // kg of water evaporated to humidify it
	Air       float64 // kg of dry air through the bed
	CO2       float64 // the largest share in the exhaust above that of fresh air, by volume
	CO2At     float64 // s from the first soak
	Growing   float64 // J of respiration while it lay there

	Uneven  Uneven
	Missed  []BandMissed // the holds of which the air did not keep the band
	Short   AirOnShort   // the worst; its Short is 0 where there is none
	Stood   float64      // s, the longest for which the fan stood
	Never   []*model.Air // those of which the condition never held
	Behind  []*model.Air // those that never were on since one before them always was
	Highest float64      // °C, in any layer
	Hot     float64      // s for which some layer was so hot that its grain is lost
	Fastest float64      // m³/s, the most that was blown

	held, ran uint64  // those whose condition ever held, and that were ever on, a bit for each
	stands    float64 // s for which the fan has stood
}

// Summer is the most that a cooler would take in the warmest air of the site, as damp as its
// middle: the bed that it keeps is the same. A room that is held warm knows no summer, nor does a
// site that is no warmer: it is nil then.
type Summer struct {
	T, RH float64 // °C, and relative humidity
	Cold  float64 // W
}

// Uneven is the largest difference between the faces of a bed at rest with its air, or of
// one that never comes to rest between its turns.
type Uneven struct {
	Bottom, Top float64 // °C
	Heat        float64 // W of respiration then
	Flow        float64 // m³/s
	At          float64 // s from the first soak
}

// Difference is that between the faces, K.
func (u Uneven) Difference() float64 { return u.Top - u.Bottom }

// BandMissed is a hold of which the bed was outside its band for long.
type BandMissed struct {
	Place         source.Place       // of the band
	Asked         *model.Temperature // as the hold writes it
	Low, High     float64            // °C, as asked
	Coldest, Most float64            // °C of the middle of the bed while it was outside
	Below, Above  float64            // s for which it was
	Led           bool               // along its band, as time goes on
	Later         float64            // s that its growth took longer than in the band; below nil, sooner
}

// band is a band in which a bed is to be held.
type band struct {
	BandMissed
	known bool
	since float64 // s, age of the bed at which the hold began
	pace  paces
}

const (
	// bandNear is by how much a bed may leave its band untold, K: two thermometers in it
	// differ by as much.
	bandNear = 1.0
	// bandSoon is how long a bed may take to come to it, s: 12 h.
	bandSoon = 12 * 3600.0
	// bandLong is for how long in all it is outside to be told, s: 6 h.
	bandLong = 6 * 3600.0
)

// watch notes where the bed is beside its band.
func (b *band) watch(m *boxModel, dt float64) {
	core, age := m.core(), m.bed.Age()
	if !b.known || age-b.since < bandSoon {
		return
	}
	if core > b.High+bandNear || core < b.Low-bandNear {
		b.pace.add(m, dt, core, min(max(core, b.Low), b.High))
	}
	if core > b.High+bandNear {
		b.Above, b.Most = b.Above+dt, max(b.Most, core)
	}
	if core < b.Low-bandNear {
		if b.Below == 0 {
			b.Coldest = core
		}
		b.Below, b.Coldest = b.Below+dt, min(b.Coldest, core)
	}
}

// ended closes the account of a hold.
func (b *band) ended(into *Blown) {
	if b.known && b.Above+b.Below > bandLong {
		b.Later = b.pace.later()
		into.Missed = append(slices.Clip(into.Missed), b.BandMissed)
	}
	b.known = false
}

// watch notes what the air did in the last dt seconds.
func (m *boxModel) watch(dt float64) {
	d, b := m.bed.Draught(), &m.blown
	b.Highest = m.bed.Highest()
	m.band.watch(m, dt)
	if m.bed.Warmest() > m.lostAt() {
		b.Hot += dt
	}
	if m.on < 0 {
		m.between.rested = true
		b.stands += dt
		b.Stood = max(b.Stood, b.stands)
		return
	}
	b.stands, m.last = 0, d
	b.ran |= 1 << m.on
	b.Fan += dt
	b.FanEnergy += dt * m.fanPower(d.Flow)
	b.Fastest = max(b.Fastest, d.Flow)
	if d.CO2 > b.CO2 {
		b.CO2, b.CO2At = d.CO2, m.bed.Age()
	}
	m.uneven(d)
	m.shorts(dt)
	m.inSummer()
}

// inSummer notes what the cooler takes at most, in which air, and what it would take now in the
// warmest of the site.
func (m *boxModel) inSummer() {
	s := &m.blown.Summer
	if peak := m.bed.Plant().PeakCooler; peak > m.blown.PeakCold {
		m.blown.PeakCold, m.blown.Outside = peak, m.air().Room.T
	}
	if s.T == 0 || m.blown.Short.RunsAway {
		return
	}
	if cold, err := m.bed.Cooling(m.air(), s.T, s.RH); err == nil {
		s.Cold = max(s.Cold, cold)
	}
}

const (
	// offBy is by how much air-on must miss what was asked to be told, K.
	offBy = 0.5
	// soonReached is how long the air has run before it is judged, s.
	soonReached = 1800.0
)

// ductPressure is what the fan of a box works against beside the bed, Pa: common practice.
const ductPressure = 300.0

// fanPower is what the fan draws, W, at a flow: what it is said to, or what bed and ducts take.
func (m *boxModel) fanPower(flow float64) float64 {
	if m.fan > 0 {
		return m.fan
	}
	bed, err := m.bed.Resistance(flow)
	if err != nil { // a bed that was not made
		bed = 0
	}
	return draught.Power(flow, bed+ductPressure)
}

// through closes the account of the air.
func (m *boxModel) through(lines []*model.Air, began float64) *Blown {
	m.band.ended(&m.blown)
	m.parted()
	b, p := m.blown, m.bed.Plant()
	b.Heat, b.Cold, b.Sprayed, b.Air = p.Heater, p.Cooler, p.Sprayed, p.AirPassed
	b.PeakHeat = p.PeakHeater
	if b.Summer.T != 0 {
		b.Summer.Cold = max(b.Summer.Cold, b.PeakCold)
	}
	b.Growing = m.bed.Ledger().Respired
	b.CO2At += began
	b.Uneven.At += began
	b.Short.At += began
	b.Short.Bed = m.warm.then()
	if b.Short.Got < b.Short.Asked {
		b.Short.Bed = m.cold.then()
	}
	for i, a := range lines {
		bit := uint64(1) << i
		switch {
		case b.ran&bit != 0 || bit == 0:
		case b.held&bit != 0:
			b.Behind = append(b.Behind, a)
		default:
			b.Never = append(b.Never, a)
		}
	}
	return &b
}

// blew adds what the air of one bed took to that of the batch.
func (t *Totals) blew(b *Blown) {
	t.FanTime += b.Fan
	t.FanEnergy += b.FanEnergy
	t.AirHeat += b.Heat
	t.AirCold += b.Cold
	t.Sprayed += b.Sprayed
}
