package steep

import (
	"errors"

	"maltwright/sim/grain"
	"maltwright/sim/work"
)

// State is grain in the steep. Copy it with an assignment. Make it with [New].
type State struct {
	lot   grain.Lot
	first float64 // kg/kg of first dry matter that it held before it drank anything
	speed float64 // core uptake against barley of the usual weight

	water    uptake  // kg/kg of first dry matter
	leached  float64 // kg/kg of first dry matter
	respired float64 // kg/kg of first dry matter
	taken    float64 // water drawn from the vessel, kg/kg of first dry matter
	dried    float64 // water evaporated, kg/kg of first dry matter
	clock    float64 // °C·h
	chitted  float64 // share of kernels

	submerged bool
	soakAge   float64 // s since the grain went under
	waterAge  float64 // s since the water was fresh
	soaks     int
	wetted    bool    // it was under water, or sprayed
	wetTime   float64 // s since the first wetting
	waterTime float64 // s under water in all
	airTime   float64 // s in air in all, since the first wetting
	oxygen    float64 // mg per kg of grain as received, in the water now
	t         float64 // °C, of the grain
	warm      bool    // t is known
	airT      float64 // °C, of the air it was last rested in
	before    float64 // kg/kg that it had drunk when the water was poured that it stands in
	airless   float64 // s under water without oxygen
	held      float64 // s of that on end: as long with oxygen makes up for it, and so does fresh water
	debt      float64 // share by which it grows and breathes less

	meter *work.Meter
}

// Meter has the state, and every copy of it, spend what it does from a meter. It goes on
// when that is used up; a step of the steep is never long.
func (s *State) Meter(m *work.Meter) { s.meter = m }

// New returns the raw grain of the lot, before its first soak. It returns the
// errors of [grain.Lot.Check].
func New(lot grain.Lot) (State, error) {
	if err := lot.Check(); err != nil {
		return State{}, err
	}
	s := State{lot: lot, speed: lot.UptakeSpeed()}
	s.first = min(lot.Moisture0, storedMost)
	s.water.core = lot.Moisture0 - s.first
	return s, nil
}

// storedMost, kg/kg: what grain holds in store at the most, 16 % of the whole weight (common
// practice). What a moister lot holds beyond it counts as drunk: a core that comes wet from
// the field is no farther from being full than one that was soaked so far.
const storedMost = 0.19

// Again returns grain that goes to the steep so many seconds after its first wetting: raw
// grain, or grain that was steeped before and grew. What it holds its kernels have drunk, up
// to what a core can drink; the rest is loose. It returns the errors of
// [grain.Batch.Check].
func Again(b grain.Batch, wetted float64) (State, error) {
	if !(wetted > 0) {
		return New(b.Lot)
	}
	if err := b.Check(); err != nil {
		return State{}, err
	}
	s, m := State{lot: b.Lot, speed: b.Lot.UptakeSpeed(), first: min(b.Lot.Moisture0, storedMost)}, b.Lot.DryMass
	s.leached, s.respired, s.clock, s.chitted, s.debt = b.Leached/m, b.Respired/m, b.Clock, b.Chitted, b.Debt
	drunk := b.Water/m - s.first - grain.StarchWater*s.respired
	s.water.core = min(drunk, s.most().core)
	s.water.husk = drunk - s.water.core
	s.wetted, s.wetTime, s.airTime = true, wetted, wetted
	return s, nil
}

var errNotMade = errors.New("this steep holds no grain; make it with New")

func (s *State) dry() float64 { return 1 - s.leached - s.respired }

// X is the moisture a drained weighing sees, kg of water per kg of dry matter
// left: core, husk and film together. It is nil in a State that New did not
// make.
func (s *State) X() float64 {
	return s.x(s.water.sum(), s.respired, s.leached)
}

func (s *State) x(drunk, respired, leached float64) float64 {
	return (s.first + drunk + grain.StarchWater*respired) / (1 - leached - respired)
}

// Moisture is X on the wet basis, kg of water per kg of drained grain.
func (s *State) Moisture() float64 { x := s.X(); return x / (1 + x) }

// CoreX is the moisture without film and husk water, kg per kg of dry matter
// left.
func (s *State) CoreX() float64 {
	return s.x(s.water.core, s.respired, s.leached)
}

// FilmX and HuskX are the loose waters, kg per kg of dry matter left.
func (s *State) FilmX() float64 { return s.water.film / s.dry() }

// HuskX is the water in the husk, kg per kg of dry matter left.
func (s *State) HuskX() float64 { return s.water.husk / s.dry() }

// DryMatter is the dry matter left, kg.
func (s *State) DryMatter() float64 { return s.lot.DryMass * s.dry() }

// DrainedMass is the weight of the drained grain, kg.
func (s *State) DrainedMass() float64 { return s.DryMatter() * (1 + s.X()) }

// Absorbed is the water drawn from the vessel so far, kg, with what has
// evaporated since.
func (s *State) Absorbed() float64 { return s.lot.DryMass * s.taken }

// Evaporated is the water lost to the air in rests so far, kg.
func (s *State) Evaporated() float64 { return s.lot.DryMass * s.dried }

// Leached is the dry matter washed out so far, kg.
func (s *State) Leached() float64 { return s.lot.DryMass * s.leached }

// TimeInWater is the time under water in all, s.
func (s *State) TimeInWater() float64 { return s.waterTime }

// TimeInAir is the time in air since the first soak began, s.
func (s *State) TimeInAir() float64 { return s.airTime }

// Soaks is the number of soaks begun.
func (s *State) Soaks() int { return s.soaks }

// Submerged tells whether the grain is under water.
func (s *State) Submerged() bool { return s.submerged }

// Batch is the grain as it would be cast now, with its loose water.
func (s *State) Batch() grain.Batch {
	m := s.lot.DryMass
	return grain.Batch{
		Lot:      s.lot,
		Dry:      m * s.dry(),
		Water:    m * s.dry() * s.X(),
		Leached:  m * s.leached,
		Respired: m * s.respired,
		Clock:    s.clock,
		Chitted:  s.chitted,
		Debt:     s.debt,
	}
}
