package seasons

import "maltwright/lang/model"

// malt makes the figures of the finished malt, from the last weighing of it without
// its rootlets. Its moisture follows from the dry matter that the forecast leaves;
// one weighing cannot tell it from a loss that was another.
func (r *record) malt(s *Season) {
	clean := r.last(func(x *model.Weighed) bool {
		return x.Clean || x.After != nil && x.After.Kind.Text == string(model.DeculmStage)
	})
	if s.Malt = r.weight(clean); !s.Malt.Known() {
		return
	}
	s.Total = r.since(clean.When())
	if raw := r.charge(); raw > 0 {
		s.Yield = Figure{s.Malt.Value / raw, s.Malt.Standing}
	}
	dry := r.dry()
	if dry <= 0 {
		return
	}
	s.DryYield = Figure{s.Malt.Value / dry, s.Malt.Standing}
	if s.RawMoisture.Standing == Reckoned {
		s.DryYield.Standing = Reckoned
	}
	if r.f == nil || r.f.BrokenOff() || len(r.f.Kilns) == 0 {
		return
	}
	w, left, ok := r.moisture(s.Malt.Value, r.f.Totals.YieldDry)
	if !ok {
		s.Doubts = append(s.Doubts, Doubt{Clean: true, Weight: s.Malt.Value, Dry: left})
		return
	}
	s.EndMoisture = Figure{w, Reckoned}
}
