package evidence

import (
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// Strike takes weights out of the evidence that are below the dry matter which a forecast
// of the trial leaves in them, by more than a forecast may be off. Those that cannot be
// whatever the forecast are struck from the beginning.
func (t *Trial) Strike(f *forecast.Forecast) {
	for i := range t.Observations {
		if o := &t.Observations[i]; o.BelowDry(f) {
			o.Struck = true
		}
	}
	t.weigh()
}

// Adopt takes over what another trial of the same batch struck, as far as both have it.
func (t *Trial) Adopt(other *Trial) {
	struck := map[model.Reading]bool{}
	for i := range other.Observations {
		struck[other.Observations[i].Reading] = other.Observations[i].Struck
	}
	for i := range t.Observations {
		if o := &t.Observations[i]; struck[o.Reading] {
			o.Struck = true
		}
	}
	t.weigh()
}

// BelowDry tells whether a weight is below the dry matter in it by more than a forecast
// may be off.
func (m *Observation) BelowDry(f *forecast.Forecast) bool {
	s := m.Sight(f)
	return model.Weight(m.Reading) != nil && s != nil && s.Dry > 0 && m.Value < s.Dry*m.scale*(1-forecast.DryError)
}

// Struck are the readings that are no evidence since they cannot be.
func (t *Trial) Struck() (list []model.Reading) {
	for i := range t.Observations {
		if t.Observations[i].Struck {
			list = append(list, t.Observations[i].Reading)
		}
	}
	return list
}
