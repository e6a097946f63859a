package forecast

import (
	"fmt"
	"math"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/steep"
	"maltwright/sim/work"
)

// steep runs the soaks and rests.
func (r *run) steep(st *model.Steep) error {
	state, err := steep.Again(r.batch, r.clock+r.wetted)
	if err != nil {
		return err
	}
	r.steeped = false
	state.Meter(r.effort.Meter)
	state.Begin(r.t)
	m := &steepModel{state: state, water: steep.Water{T: r.site.water, Blown: blown(st.Aerate)}, air: steep.Air{T: r.site.air, RH: r.site.rh, Pressure: &r.site.pressure}}
	if area := min(st.Area(), r.batch.Lot.SwollenVolume()/thinnest); area > 0 {
		m.air.Area = &area
	}
	r.drawn = drawn{}
	began := r.clock
	if err := r.wet(m, st, st.Steps, began); err != nil {
		return err
	}
	if st.Until != nil && !r.steeped && !r.over() {
		r.unmet(st, m, st.Until, began, false, nil)
	}
	r.batch = m.state.Batch()
	r.f.Totals.SteepOut, r.f.Totals.SteepOutMoisture = r.clock, m.moisture()
	r.f.Totals.SteepWater += r.drawn.total(r.p.Charge.SI)
	r.steepTroubles(m, st)
	return nil
}

// thinnest, m: drained grain lies no thinner, and covers a part of a wider vessel only (common
// practice).
const thinnest = 0.02

// wet runs a list of steps of the steep that began so many seconds after the first soak. Once what ends the steep holds, the gates are
// all that follows of it.
func (r *run) wet(m *steepModel, st *model.Steep, steps []model.Step, began float64) error {
	for _, s := range steps {
		var err error
		switch s := s.(type) {
		case *model.Gate:
			err = r.gate(m, st, s, nil)
		case *model.Repeat:
			if !r.steeped {
				err = r.repeat(m, st, s, began)
			}
		default:
			if !r.steeped {
				err = r.soakOrRest(m, st, s, began)
			}
		}
		if err != nil || r.over() {
			return err
		}
		if !r.steeped && r.wetEnough(m, st.Until, began) {
			r.steeped = true
			r.met(st, m, st.Until, began, false)
		}
	}
	return nil
}

// wetEnough tells whether a condition that is waited on since began holds, and no more
// soaks or rests are known to have been.
func (r *run) wetEnough(m *steepModel, c *model.Condition, began float64) bool {
	return c != nil && holds(timed(m, r.clock-began), c) && !r.toCome(model.SoakStep, model.RestStep)
}

// repeat does its steps so many times, or until its condition holds after one of them.
func (r *run) repeat(m *steepModel, st *model.Steep, s *model.Repeat, steeped float64) error {
	times := 1
	if s.Times != nil {
		times = int(math.Round(s.Times.Range.High.SI))
	}
	began := r.clock
	for range times {
		if err := r.effort.spend(work.Look, s.Place()); err != nil {
			return err
		}
		for _, inner := range s.Steps {
			if err := r.wet(m, st, []model.Step{inner}, steeped); err != nil {
				return err
			}
			if r.over() || r.steeped {
				return nil
			}
			if r.wetEnough(m, s.Until, began) {
				r.met(st, m, s.Until, began, false)
				return nil
			}
		}
	}
	if s.Until != nil {
		r.unmet(st, m, s.Until, began, false, nil)
	}
	return nil
}

// longestSteep is how long a steep is followed: far beyond what any grain lives
// through, so that a slip in a repeat cannot run for ever, s.
const longestSteep = 21 * 86400.0

// soakOrRest runs one soak or rest.
func (r *run) soakOrRest(m *steepModel, st *model.Steep, s model.Step, began float64) error {
	left := longestSteep - (r.clock - began)
	if left <= 0 {
		r.at = s.Place()
		return LongSteep{longestSteep}
	}
	r.start(string(s.Kind()))
	as := r.asDone(s, r.now)
	out := Step{Kind: s.Kind(), Place: s.Place()}
	if s.Kind() == model.SoakStep {
		r.soaks++
		out.Label = fmt.Sprintf("soak %d", r.soaks)
		m.soaked, m.water.T = true, r.wetTemperature(as, r.site.water)
		r.soakIn(m, s.(*model.Soak))
		out.Temperature = Temperature{vocabulary.PlaceWater, m.water.T, m.water.T, true}
		if b := m.water.Blown; b != nil && !m.water.Aerated {
			r.assume(BlownAir{m.water.BroughtIn(b.For)})
		}
	} else {
		r.rests++
		out.Label = fmt.Sprintf("rest %d", r.rests)
		m.soaked, m.air.T = false, r.wetTemperature(as, r.site.air)
		m.air.RH = r.site.rhAt(m.air.T)
		r.restWith(m, s.(*model.Rest))
		out.Temperature = Temperature{vocabulary.PlaceAir, m.air.T, m.air.T, true}
	}
	airless, before := m.state.Airless(), m.state
	if err := r.freshWater(m); err != nil {
		return err
	}
	end := stopAt(as)
	if end.latest > left {
		end.latest, end.ending = left, BrokenOff
	}
	err := r.through(m, st, as.Until, end, out, nil)
	if err == nil && end.ending == BrokenOff && r.clock-began >= longestSteep {
		r.at = s.Place()
		err = LongSteep{longestSteep}
	}
	r.t = m.warmth(out.Temperature.From)
	r.given(m, s, before)
	if more := m.state.Airless() - airless; more > 0 {
		r.trouble(OxygenGone{r.meets(s.Place()), r.soaks, more})
	}
	if dead := m.state.Drowned(); dead > before.Drowned() {
		r.trouble(Drowned{r.meets(s.Place()), r.soaks, m.state.AirlessNow(), dead})
	}
	m.soaked = false // drained: whatever waits after a soak waits in air
	return err
}

// blown is the air of a steep that has it at intervals, nil for none.
func blown(a *model.Aerate) *steep.Blown {
	if a == nil {
		return nil
	}
	return &steep.Blown{Every: a.Every.SI, For: a.For.SI}
}

// freshWater changes the water for a soak that follows another with no rest between.
func (r *run) freshWater(m *steepModel) error {
	if !m.soaked || !m.state.Submerged() {
		return nil
	}
	return m.state.ChangeWater(m.water)
}

func (r *run) wetTemperature(s asked, otherwise float64) float64 {
	if s.At == nil {
		return otherwise
	}
	return within(s.At.Range.Range, r.o.BandAt) - zeroC
}

// steepTroubles looks at vessel and target once the steep is over.
func (r *run) steepTroubles(m *steepModel, st *model.Steep) {
	if holds := st.Room(); holds != nil {
		if need := r.drawn.room(m); need > holds.SI {
			r.trouble(VesselFull{r.meets(st.Place()), need, m.state.BedVolume()})
		}
	}
	if st.Target != nil && !st.Target.Contains(math.Round(1000*m.moisture())/1000) {
		r.trouble(TargetMissed{r.meets(st.Target.Place), m.moisture()})
	}
}
