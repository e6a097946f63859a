package follow

import "maltwright/lang/model"

// noTare finds a weight that would fit if what is weighed along were not in it.
func (f *Following) noTare(i int) (Doubt, bool) {
	x, ok := f.Judged[i].Observation.Reading.(*model.Weighed)
	if !ok || !f.inDoubt(i) {
		return Doubt{}, false
	}
	if x.In != nil {
		return Doubt{Kind: NoTare, Observation: i, Other: -1, Value: x.In.Weighs.SI, Holder: x.In}, f.fits(i, f.Judged[i].Observation.Value+x.In.Weighs.SI)
	}
	tare := f.Trial.Batch.Tare
	if tare == nil {
		return Doubt{}, false
	}
	return Doubt{Kind: NoTare, Observation: i, Other: -1, Value: tare.SI}, f.fits(i, f.Judged[i].Observation.Value+tare.SI)
}

// withHolder finds a weight of drained grain that is that of the grain with what it lay in.
func (f *Following) withHolder(i int) (Doubt, bool) {
	x, ok := f.Judged[i].Observation.Reading.(*model.Weighed)
	if !ok || !f.inDoubt(i) || x.In != nil || x.OfBag {
		return Doubt{}, false
	}
	for _, h := range f.Trial.Process.Holders() {
		if f.fits(i, f.Judged[i].Observation.Value-h.Weighs.SI) {
			return Doubt{Kind: WithHolder, Observation: i, Other: -1, Value: h.Weighs.SI, Holder: h}, true
		}
	}
	return Doubt{}, false
}
