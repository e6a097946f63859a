package outlook

import (
	"slices"

	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// NoMalt is what comes off the kiln wet: it sours and moulds within days, its rootlets stay on, and
// what is told of malt does not hold of it.
type NoMalt struct {
	Moisture answer.Share   `json:"moisture_wb" doc:"as it comes off the kiln"`
	Most     answer.Share   `json:"most_wb" doc:"from which on it is no malt"`
	At       answer.Seconds `doc:"when it comes off; what would be done with it then is not told"`
}

// noMalt leaves out of an outlook what is of malt, where the kiln gives none.
func (r *Result) noMalt(f *forecast.Forecast) {
	if r.NoMalt = NoMaltOf(f); r.NoMalt == nil {
		return
	}
	r.Stages = slices.DeleteFunc(r.Stages, func(st Stage) bool {
		return st.Stage == string(model.DeculmStage) || st.Stage == string(model.StoreStage)
	})
	r.Assumed = slices.DeleteFunc(r.Assumed, func(a Assumption) bool {
		_, so := a.What.Of.(forecast.DeculmTime)
		return so
	})
	r.Rest, r.Indications, r.Enzymes = "", nil, nil
	t := &r.Totals
	t.Total = r.NoMalt.At
	t.Malt, t.Rootlets = unknown[answer.Kilograms](), unknown[answer.Kilograms]()
	t.Yield, t.YieldDry, t.DryMatterLost = unknown[answer.Share](), unknown[answer.Share](), unknown[answer.Share]()
	t.HeatPerKilogram = unknown[answer.Joules]()
	if t.Energy != nil {
		t.Energy.FuelPerTonne, t.Energy.PowerPerTonne = unknown[answer.Joules](), unknown[answer.Joules]()
	}
}

// NoMaltOf is what comes off the kiln of a forecast wet; nil where that is dry, or there is no kiln.
func NoMaltOf(f *forecast.Forecast) *NoMalt {
	if !f.OffWet() {
		return nil
	}
	n := &NoMalt{Moisture: answer.Share(f.Totals.FinalMoisture), Most: answer.Share(forecast.WitheredMoisture)}
	for _, st := range f.Stages {
		if st.Kind == model.KilnStage && len(st.Steps) > 0 {
			n.At = answer.Seconds(st.Steps[len(st.Steps)-1].End)
		}
	}
	return n
}
