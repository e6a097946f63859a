package forecast

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/draught"
	"maltwright/sim/kiln"
	"maltwright/sim/quality"
	"maltwright/sim/work"
)

// kilnModel is malt on the kiln, with what the kiln is set to.
type kilnModel struct {
	bed     *kiln.Bed
	target  kiln.Target
	rise    rise
	at      float64  // s since the step began
	flow    *float64 // m³/s, nil for the kiln's own
	share   *float64 // of the exhaust that is led back in the step, nil for the kiln's own
	stewed  bool
	still   bool    // an oven without a fan
	vent    float64 // its own airflow, m³/s
	returns float64 // share of the exhaust that it leads back by itself
	fan     bool    // what its fan draws is reckoned
	drew    float64 // J that it drew, as far as that is reckoned
	depth   float64 // m, of the bed as it was loaded
	wet     float64 // s above WitheredMoisture
	loaded  *loading
	onKiln  float64 // s
	airs    Airs
	lacks   wayShort     // of the step
	power   float64      // of the heater, W; 0 where it is not said
	hardest float64      // W, the most that the heater gave
	cools   *draught.Way // what draws while the malt cools, where that is not what drew before
	door    *kiln.Door
	floor   onFloor // of a kiln of several floors
	stirred *Stirring
	worst   *hotWet
	short   *shortfall
	warmest Warmest // of the step so far
	beyond  bool    // the malt has been where the model ends
	left    Beyond  // how it came there, s since it came onto the kiln
	breath  breath  // of malt that is alive

	quality        []quality.State // of each layer
	layers, before []kiln.Layer    // scratch
	meter          *work.Meter
}

// rise is a temperature that runs from one value to another, then stays.
type rise struct{ from, to, over float64 } // °C, °C, s

func (r rise) value(at float64) float64 {
	if r.over <= 0 || at >= r.over {
		return r.to
	}
	return r.from + (r.to-r.from)*at/r.over
}

// shortfall is by how much the kiln missed what was asked of it.
type shortfall struct {
	asked, got float64 // at last
	sum        float64 // °C·s that it gave in all
	limit      kiln.Limit
	seconds    float64
	flapped    bool // a floor that is fed came to what is asked without heat: a flap holds it to that at the most
}

// stewReturn is the share of the air that goes round while malt is stewed: the
// flaps are shut, and what leaks remains (common practice).
const stewReturn = 0.98

// coveredShare is the share of a still oven's vent that reaches malt stewed in a
// covered pan (common practice).
const coveredShare = 0.05

func (m *kilnModel) setting(dt float64) kiln.Setting {
	return kiln.Setting{Target: m.target, From: m.rise.value(m.at), To: m.rise.value(m.at + dt), Airflow: m.flow, Recirculation: m.share}
}

// shareOf is the share of the exhaust that a step has led back, nil for the kiln's own: what
// it says, and with shut flaps nearly all. A still oven has nothing to lead it back.
func (m *kilnModel) shareOf(s model.Step) *float64 {
	said := model.Returns(s)
	switch {
	case m.still:
		return nil
	case said != nil:
		return new(min(said.SI, stewReturn))
	case s.Kind() == model.StewStep:
		return new(stewReturn)
	}
	return nil
}

// advance moves the bed on, and stops a moment at the end of a rise so that the
// straight line of each piece is what was asked.
func (m *kilnModel) advance(dt float64) error {
	for dt > 0 {
		part := dt
		if left := m.rise.over - m.at; left > 0 && left < dt {
			part = left
		}
		m.before = m.bed.Layers(m.before[:0])
		if _, err := m.bed.AdvanceBy(part, m.setting(part), m); err != nil {
			return err
		}
		m.at += part
		dt -= part
		m.drew += part * m.drawn()
		m.watch(part)
	}
	return nil
}

// Stepped follows what the heat does to each layer in a step of the bed, which is short
// where the malt warms quickly.
func (m *kilnModel) Stepped(dt float64) error {
	if m.floor.bare {
		return nil
	}
	if err := m.meter.Spend(work.Heat * len(m.quality)); err != nil {
		return err
	}
	m.layers = m.bed.Layers(m.layers[:0])
	m.leave()
	for i := range m.quality {
		if m.beyond {
			break
		}
		b, a := m.before[i], m.layers[i]
		if err := m.quality[i].Step(dt, b.T, a.T, wetBasis(b.X), wetBasis(a.X), m.stewed); err != nil {
			return err
		}
	}
	if !m.beyond {
		m.worst.stepped(m.layers, dt)
	}
	m.before, m.layers = m.layers, m.before
	return nil
}

// mix stirs the bed, and with it what was done to its layers.
func (m *kilnModel) mix() {
	if v := m.bed.View(); m.stirred == nil {
		m.stirred = &Stirring{At: 3600 * v.Hours, Broken: v.Broken, Moisture: v.WetBasis}
	}
	m.bed.Mix()
	mean := quality.Mean(m.quality)
	for i := range m.quality {
		m.quality[i] = mean
	}
	m.worst.mix()
}

// watch notes when all of the malt is hotter than it bears, how warm it gets, and when the
// kiln gives other than what is asked.
func (m *kilnModel) watch(dt float64) {
	m.watchAir(dt)
	v := m.bed.View()
	for _, l := range hotLimits {
		if m.beyond {
			break
		}
		m.worst.mean = m.worst.mean || v.MaltT > l.t+hotBy && v.WetBasis > l.w+wetBy
	}
	m.hardest = max(m.hardest, v.HeaterPower)
	if m.warmest.see(v); m.beyond { // nothing but times is told of it
		m.warmest = coldest
	} else if m.target == kiln.AsComes {
		m.note(v.On.T)
	}
	if v.WetBasis > WitheredMoisture {
		m.wet += dt
	}
	m.breath.watch(v, dt)
	// malt takes hours to come to its heat, and so is told of only where the kiln is what lacks
	limited := v.Limit != kiln.Unlimited && v.Limit != kiln.ByLead || m.target == kiln.AirOff
	if asked := m.rise.value(m.at); m.target != kiln.Fresh && m.target != kiln.AsComes && limited {
		if got := m.gives(v); math.Abs(got-asked) > shortBy && !m.short.flapped {
			m.short.asked, m.short.got, m.short.limit = asked, got, v.Limit
			m.short.seconds += dt
			m.short.sum += got * dt
		}
	} else if m.floor.fed && v.Limit == kiln.Unlimited && v.HeaterPower == 0 {
		*m.short = shortfall{flapped: true}
	}
}

// gives is the temperature that the kiln gives where it is asked for.
func (m *kilnModel) gives(v kiln.View) float64 {
	switch m.target {
	case kiln.AirOff:
		return v.Off.T
	case kiln.Malt:
		return v.MaltT
	}
	return v.On.T
}

// shortBy is by how much the kiln must miss what was asked to be told, K.
const shortBy = 2.0

func wetBasis(x float64) float64 { return x / (1 + x) }

func (m *kilnModel) copy(spare physics) physics {
	c, _ := spare.(*kilnModel)
	if c == nil {
		c = &kilnModel{bed: new(kiln.Bed), worst: new(hotWet), short: new(shortfall)}
	}
	own := *c
	*c = *m
	c.bed, c.worst, c.short, c.layers, c.before = own.bed, own.worst, own.short, own.layers, own.before
	c.bed.Become(m.bed)
	c.worst.become(m.worst)
	*c.short = *m.short
	c.quality = append(own.quality[:0], m.quality...)
	return c
}

func (m *kilnModel) set(o physics) { *m = *o.(*kilnModel) }

// unwatched is short at first, for with what a step asks much changes within minutes, and
// shorter while the break is to come, so that it is found to within a minute.
func (m *kilnModel) unwatched() float64 {
	if m.bed.OnPlateau() {
		return min(max(m.at, atFirst), often)
	}
	return min(max(m.at, atFirst), onKiln)
}

func (m *kilnModel) moisture() float64 { return m.forecast(m.bed.WetBasis()) }
func (m *kilnModel) weight() float64   { return m.forecast(m.bed.Mass()) }

func (m *kilnModel) measure(name string) (float64, string, bool) {
	switch name {
	case vocabulary.MeasureMoisture:
		return m.moisture(), "", true
	case vocabulary.MeasureWeight:
		return m.weight(), "", true
	}
	if name == vocabulary.MeasureMalt && m.target == kiln.Fresh {
		return m.bed.Cooled() + zeroC, "", true
	}
	v := m.bed.View()
	switch name {
	case vocabulary.MeasureAirOff:
		return v.Off.T + zeroC, "", true
	case vocabulary.MeasureMalt:
		return v.MaltT + zeroC, "", true
	case vocabulary.MeasureBreak:
		if v.Broken {
			return 1, "", true
		}
		return 0, "", true
	}
	return 0, "", false
}
