package forecast

import (
	"maltwright/lang/model"
	"maltwright/sim/air"
	"maltwright/sim/steep"
)

// drawn is the water that a steep took.
type drawn struct {
	usual    int     // soaks of which it is not said how much
	measured float64 // kg: all else
	fullest  float64 // m³ of grain and water in the soaks of which it is said
}

// total is all of it for a charge, kg.
func (d drawn) total(charge float64) float64 {
	return float64(d.usual)*steep.DefaultWaterPerKg*charge + d.measured
}

// room is what the vessel must hold, m³.
func (d drawn) room(m *steepModel) float64 {
	if d.usual == 0 && d.fullest > 0 {
		return max(d.fullest, m.state.BedVolume())
	}
	return max(d.fullest, m.state.FillVolume(steep.DefaultWaterPerKg))
}

// warmth is the temperature of the grain, or what it stands in where that is not known yet.
func (m *steepModel) warmth(otherwise float64) float64 {
	if m.state.T() == m.state.T() {
		return m.state.T()
	}
	return otherwise
}

// each is a flow for each kg of grain as received.
func (r *run) each(q *model.Quantity) float64 {
	if q == nil {
		return 0
	}
	return q.SI / r.p.Charge.SI
}

// soakIn sets the water of a soak.
func (r *run) soakIn(m *steepModel, s *model.Soak) {
	m.water.Aerated, m.water.Airflow, m.water.Overflow = s.Aerated, r.each(s.Airflow), 1000*r.each(s.Overflow)
	m.water.PerKg = nil
	m.air.Drawn, m.air.Spray = 0, nil // once it is drained, it waits in still air
	if s.Water == nil {
		r.assume(SoakWater{steep.DefaultWaterPerKg / 1000})
		return
	}
	perKg := 1000 * model.WaterVolume(s.Water.Quantity) / r.p.Charge.SI
	m.water.PerKg = &perKg
	r.assume(MixedWater{m.warmth(r.site.air)})
	r.covered(m, s)
}

// covered looks whether the water of a soak covers the grain, unless it was found already
// that it does not. What overflows has filled its vessel.
func (r *run) covered(m *steepModel, s *model.Soak) {
	need := m.state.Covers()
	if s.Overflow != nil || model.WaterVolume(s.Water.Quantity) >= need {
		return
	}
	if list := Troubles[NotCovered](r.f); len(list) > 0 && list[len(list)-1].Soak == r.soaks {
		return
	}
	r.trouble(NotCovered{r.meets(s.Place()), r.soaks, *s.Water, need})
}

// restWith sets the air and the spray of a rest.
func (r *run) restWith(m *steepModel, s *model.Rest) {
	if m.air.Area == nil {
		r.assume(DrainedDepth{steep.OpenDepth})
	}
	m.air.Drawn, m.air.Spray = r.each(s.Airflow), nil
	if s.Spray == nil {
		return
	}
	m.air.Spray = &steep.Spray{T: r.site.water, Rate: 1000 * r.each(s.Spray.Flow)}
	if s.Spray.Flow == nil {
		r.assume(Sprayed{})
	}
}

// given counts the water that a soak or a rest took, and looks at what it was given, once
// it is over.
func (r *run) given(m *steepModel, s model.Step, before steep.State) {
	steps := r.f.Stages[len(r.f.Stages)-1].Steps
	took := steps[len(steps)-1].End - steps[len(steps)-1].Start
	if took <= 0 {
		return
	}
	switch s := s.(type) {
	case *model.Soak:
		r.soakedIn(m, s, before, took)
	case *model.Rest:
		if s.Spray != nil {
			r.drawn.measured += max(m.air.Spray.Rate*r.p.Charge.SI*took, m.state.Absorbed()-before.Absorbed())
		}
		if s.Airflow != nil {
			now, then := m.state.Batch(), before.Batch()
			gas := now.CO2() - then.CO2()
			r.trouble(AirDrawn{r.meets(s.Place()), *s.Airflow, m.air.Drawn, gas / carbonDioxide / (s.Airflow.SI * took)})
		}
	}
}

// carbonDioxide, kg/m³: its density at 15 °C and sea level, as an ideal gas of 0.04401
// kg/mol.
const carbonDioxide = 0.04401 * air.StandardPressure / (air.MolarGas * (15 + air.ZeroCelsius))

func (r *run) soakedIn(m *steepModel, s *model.Soak, before steep.State, took float64) {
	r.drawn.measured += m.water.Overflow * r.p.Charge.SI * took
	if s.Airflow != nil {
		r.trouble(AirBlown{r.meets(s.Place()), *s.Airflow, m.water.Airflow})
	}
	if s.Water == nil {
		r.drawn.usual++
		return
	}
	water := model.WaterVolume(s.Water.Quantity)
	r.drawn.measured += 1000 * water
	r.drawn.fullest = max(r.drawn.fullest, before.PourVolume(*m.water.PerKg))
	r.covered(m, s)
}
