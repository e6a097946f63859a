package forecast

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
	"maltwright/sim/grain"
	"maltwright/sim/pneumatic"
)

// boxModel is a bed with air blown through it, growing or withering.
type boxModel struct {
	bed     pneumatic.Bed
	blow    []blowing        // what may be blown, in the order of precedence; shared and never changed
	still   pneumatic.Supply // while the fan stands
	on      int              // which of them is, or -1
	latched uint64           // those whose condition holds, a bit for each; beyond 64 none is remembered
	kept    Temperature
	area    float64 // m²
	fan     float64 // W that the fan draws, 0 where it is not said
	seen    watched
	blown   Blown
	runs    float64 // s for which the same air has run without a break
	looks   int     // of its control to take at once next
	within  int     // looks within which a condition is known to change; 0 where that is not known
	between between
	band    band   // in which a hold has the bed
	cold    adrift // while its air is colder than asked
	warm    adrift // while it is warmer
	last    pneumatic.Draught
	ramp    *ramp // nil where its temperature is not led
}

// blowing is one air that a fan blows, and when.
type blowing struct {
	supply pneumatic.Supply
	when   *model.Condition // nil for always
	clock  *pneumatic.Clock // nil for all the time
	asked  bool             // its temperature was asked for, and is no mere consequence
	place  source.Place     // where it was
}

// boxLayers are enough: with forty no temperature moves by more than 0.03 K, nor the moisture
// by 0.01 points.
const boxLayers = 8

// advance moves the bed on, from one time at which its air may change to the next.
func (m *boxModel) advance(dt float64) error {
	m.lead(dt)
	for dt > 0 {
		was := m.on
		m.choose()
		if m.on != was {
			m.runs, m.looks, m.within = 0, 2, 0
		}
		part, err := m.goOn(dt)
		if err != nil {
			return err
		}
		m.runs += part
		m.watch(part)
		dt -= part
	}
	m.look()
	return nil
}

// choose finds the first air that is on: its clock has the fan run and its condition holds.
func (m *boxModel) choose() {
	m.on = -1
	for i := range m.blow {
		b, bit := &m.blow[i], uint64(1)<<i
		holds := b.when == nil || holdsOn(timed(m, m.bed.Age()), b.when, m.latched&bit != 0)
		m.latched &^= bit
		if holds {
			m.latched |= bit
			m.blown.held |= bit
		}
		if holds && m.on < 0 && b.runs(m.bed.Age()) {
			m.on = i
		}
	}
}

// clockEdge, s: so near to a switch of the clock it has switched.
const clockEdge = 1e-6

func (b *blowing) runs(age float64) bool {
	return b.clock == nil || math.Mod(age+clockEdge, b.clock.Every) < b.clock.On
}

// untilClock is the time, s, to the next switch of a clock, as long as no condition
// changes: of an air that does not hold, or stands behind that which is on, none counts.
func (m *boxModel) untilClock() float64 {
	next, age := math.Inf(1), m.bed.Age()
	for i := range m.blow {
		if m.on >= 0 && i > m.on {
			break
		}
		if c := m.blow[i].clock; c != nil && (i >= 64 || m.latched&(1<<i) != 0) {
			at := math.Mod(age+clockEdge, c.Every)
			if at < c.On {
				next = min(next, c.On-at)
			} else {
				next = min(next, c.Every-at)
			}
		}
	}
	return next + clockEdge
}

// holdsOn tells whether a condition holds. One that did so far holds until it is missed
// by more than slack, so that a fan does not chatter about its mark.
func holdsOn(measure func(string) (float64, string, bool), c *model.Condition, so bool) bool {
	if !so {
		return holds(measure, c)
	}
	return nearlyHolds(measure, c)
}

// slacks are by how much what a fan is switched by may be missed, in SI, by its measure.
var slacks = map[string]float64{vocabulary.MeasureBed: 0.5, vocabulary.MeasureMoisture: 0.005}

func nearlyHolds(measure func(string) (float64, string, bool), c *model.Condition) bool {
	for i := range c.Tests {
		t := &c.Tests[i]
		si, word, ok := measure(t.Measure)
		slack := slacks[t.Measure]
		if !ok || !testHolds(t, si, word) && !testHolds(t, si+slack, word) && !testHolds(t, si-slack, word) {
			return false
		}
	}
	return true
}

func (m *boxModel) copy(spare physics) physics {
	c, _ := spare.(*boxModel)
	if c == nil {
		c = new(boxModel)
	}
	*c = *m
	return c
}

func (m *boxModel) set(o physics) { *m = *o.(*boxModel) }

// unwatched is short while the bed is led, as that of the piece, and while its air follows
// it: what that air lacks is told as it is before the bed runs away.
func (m *boxModel) unwatched() float64 {
	if m.ramp != nil || !m.controlled() {
		return often
	}
	return seldom
}

func (m *boxModel) moisture() float64 { return m.bed.Moisture() }
func (m *boxModel) weight() float64   { return m.bed.Mass() }

func (m *boxModel) measure(name string) (float64, string, bool) {
	switch name {
	case vocabulary.MeasureMoisture:
		return m.moisture(), "", true
	case vocabulary.MeasureWeight:
		return m.weight(), "", true
	case vocabulary.MeasureChit:
		return m.bed.Chitted(), "", true
	case vocabulary.MeasureAcrospire:
		return m.bed.Acrospire(), "", true
	case vocabulary.MeasureBed:
		return m.core() + zeroC, "", true
	case vocabulary.MeasureRub:
		return 0, m.bed.Rub().String(), true
	}
	return 0, "", false
}

// core is the temperature in the middle of the depth, °C.
func (m *boxModel) core() float64 { return m.bed.At(0.5).T }

// faces are the temperatures of the bed where the air comes on and where it goes off, °C,
// half a layer outward from the last two of each side. A drum is alike throughout.
func (m *boxModel) faces() (bottom, top float64) {
	const half = 0.5 / boxLayers
	bottom, top = m.bed.At(half).T, m.bed.At(1-half).T
	return bottom - (m.bed.At(3*half).T-bottom)/2, top + (top-m.bed.At(1-3*half).T)/2
}

func (m *boxModel) see(s *Sight) {
	d := m.bed.Draught()
	s.Dry, s.Air, s.Bed, s.Grain = m.bed.DryMatter(), m.still.Room.T, m.core(), m.core()
	s.Bottom, s.Top = m.faces()
	s.AirOn, s.AirOff, s.Airflow, s.Humidity = d.On.T, d.Off.T, d.Flow, d.OnRH
	if m.blown.Fan > 0 {
		s.lastOn, s.lastOff = m.last.On.T, m.last.Off.T
	}
	if d.Flow == 0 {
		s.Humidity = m.still.Room.RH
	}
	s.grown(m.bed.Batch())
}

func (m *boxModel) batch() grain.Batch           { return m.bed.Batch() }
func (m *boxModel) mean() float64                { return m.bed.T() }
func (m *boxModel) age() float64                 { return m.bed.Age() }
func (m *boxModel) turn()                        { m.parted(); m.bed.Turn() }
func (m *boxModel) sprinkle(kg, t float64) error { return m.bed.Sprinkle(kg, t) }
func (m *boxModel) keeps() Temperature           { return m.kept }
func (m *boxModel) noted() *watched              { return &m.seen }
func (m *boxModel) spread() float64              { return m.area }

func (m *boxModel) look() {
	m.seen.look(m.bed.Age(), m.bed.Depth(), max(m.bed.At(0).T, m.bed.At(1).T), m.bed.Batch())
}
