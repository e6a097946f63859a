package records

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// cannot finds weights that cannot be by the words alone: of more malt than there was
// grain, or of more dry matter, or of more water than grain can hold.
func (r *record) cannot() {
	for i, x := range r.batch.Readings {
		w, ok := x.(*model.Weighed)
		if !ok {
			continue
		}
		most := forecast.MostMoisture(r.batch.Process)
		_, raw, _ := r.batch.Net(w)
		switch r.batch.Impossible(w, most) {
		case model.MoreThanGrain:
			f := readingImpossible.At(w.Weight.Place, fmt.Sprintf("%s of dried malt is more than the raw grain that it was made from, %s", w.Weight, raw))
			f.Hint = "look at the number, its unit and the tare"
			r.slip(i, f)
		case model.MoreDry:
			r.slip(i, r.moreDry(w, raw))
		case model.TooMoist:
			r.slip(i, readingImpossible.At(w.Weight.Place, fmt.Sprintf("at %s the grain would hold more than %.3g %% of water, which grain cannot hold", w.Weight, 100*most)))
		}
	}
}

// moreDry tells of malt that holds more dry matter, by its tested moisture, than its grain.
func (r *record) moreDry(w *model.Weighed, raw *model.Quantity) finding.Finding {
	net, _, _ := r.batch.Net(w)
	malt, grain, _ := r.batch.DryMatter(net, raw.SI)
	tested := r.batch.TestOf(vocabulary.AnalysisMoisture)
	f := readingImpossible.At(w.Weight.Place, fmt.Sprintf("%s of malt with %s of water holds %s of dry matter, more than the raw grain held, %s",
		w.Weight, tested.Found, about(w.Weight.Quantity, malt), about(w.Weight.Quantity, grain)))
	f.Hint = "look at the number, its unit and the tare, and at the moisture of grain and malt"
	f.Related = []finding.Related{{Place: tested.Found.Place, Message: "the moisture of the malt"}}
	return f
}
