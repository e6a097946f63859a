package seasons

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// malt makes the figures of the finished malt, from the last weighing of it without
// its rootlets. Its moisture follows from the dry matter that the forecast leaves;
// one weighing cannot tell it from a loss that was another.
func (r *record) malt(s *Season) {
	clean := r.last(func(x *model.Weighed) bool {
		return x.Clean || x.After != nil && x.After.Kind.Text == string(model.DeculmStage) || r.kilned() && r.off(x)
	})
	if s.Malt = r.weight(clean); s.Malt.Standing == Missing {
		return
	}
	s.Total = r.since(clean.When())
	s.EndMoisture = r.tested()
	if r.f != nil && !r.f.BrokenOff() && len(r.f.Kilns) > 0 && r.dry() > 0 && s.Malt.Known() {
		r.endMoisture(s)
		r.energy(s)
	}
	r.yields(s)
}

// endMoisture makes the moisture of the clean malt, unless a laboratory has found it, with
// the dry matter that the forecast leaves. Malt that weighs less than that is doubtful, and
// by more than the forecast may be off it cannot be.
func (r *record) endMoisture(s *Season) {
	switch w, left := r.moisture(s.Malt.Value, r.f.Totals.YieldDry); {
	case math.IsNaN(w): // what is left is not forecast
	case w < 0:
		s.Doubts = append(s.Doubts, Doubt{Clean: true, Weight: s.Malt.Value, Dry: left})
		if s.Malt.Value < left*(1-forecast.DryError) {
			s.Malt.Standing = Impossible
		}
	case s.EndMoisture.Standing == Missing:
		s.EndMoisture = Figure{w, Reckoned}
	}
}

// littleEnergy is the share of what a batch takes below which fuel or power is left out: a mat
// under a tray is no fuel of a batch.
const littleEnergy = 0.02

// energy makes what the batch took, for each kg that was weighed.
func (r *record) energy(s *Season) {
	if s.Malt.Standing == Impossible {
		return
	}
	e := &r.f.Totals.Energy
	each := func(took float64) Figure {
		if !(took > littleEnergy*(e.Fuel+e.Power)) { // or it is not forecast
			return Figure{}
		}
		return Figure{took / s.Malt.Value, Reckoned}
	}
	s.Fuel, s.Power = each(e.Fuel), each(e.Power)
}

// tested is the moisture of the finished malt as a laboratory found it.
func (r *record) tested() Figure {
	if x := r.b.TestOf(vocabulary.AnalysisMoisture); x != nil {
		return Figure{x.Found.SI, Measured}
	}
	return Figure{}
}

// yields makes those of the clean malt. Of a weight that cannot be they cannot be either.
func (r *record) yields(s *Season) {
	if raw := r.charge(); raw > 0 {
		s.Yield = Figure{s.Malt.Value / raw, s.Malt.Standing}
	}
	dry := r.dry()
	if dry <= 0 {
		return
	}
	s.OnDryGrain = Figure{s.Malt.Value / dry, s.Malt.Standing}
	if s.RawMoisture.Standing == Reckoned && s.OnDryGrain.Standing == Measured {
		s.OnDryGrain.Standing = Reckoned
	}
	r.dryYield(s, dry)
}

// dryYield makes the dry matter of the clean malt by that of the raw grain, kg:
//
//	Y = M·(1 − m) / (B·(1 − b))
//
// the dry of reckon yield, and of the totals of a forecast. It is measured where the batch was
// weighed, its grain was dried as a sample and its malt by a laboratory. Where the moisture of the
// malt is reckoned it is what that leaves, and so the share of the forecast that the moisture goes by.
func (r *record) dryYield(s *Season, dry float64) {
	m := s.EndMoisture
	if !m.Known() || !(m.Value < 1) {
		return
	}
	s.DryYield = Figure{s.Malt.Value * (1 - m.Value) / dry, s.Malt.Standing}
	_, sampled := r.b.SampleMoisture()
	if s.Malt.Standing == Measured && (m.Standing != Measured || !sampled) {
		s.DryYield.Standing = Reckoned
	}
}
