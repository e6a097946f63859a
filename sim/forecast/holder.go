package forecast

import "maltwright/lang/model"

// Holders gives for each stage of the forecast what the grain lies in; nil where the
// process does not say, or it lies in nothing.
func (f *Forecast) Holders() []*model.Holder {
	list := make([]*model.Holder, len(f.Stages))
	nth := map[model.StageKind]int{}
	for i, st := range f.Stages {
		nth[st.Kind]++
		n := 0
		for _, of := range f.Process.Stages {
			if of.Kind() != st.Kind {
				continue
			}
			if n++; n == nth[st.Kind] {
				list[i] = model.HolderOf(of)
			}
		}
	}
	return list
}
