package records

import (
	"fmt"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// cannot finds weights that cannot be by the words alone: of more malt than there was
// grain, or of more water than grain can hold.
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
			f := readingImpossible.At(w.Weight.Place, fmt.Sprintf("%s of dried malt is more than the raw grain it is of, %s", w.Weight, raw))
			f.Hint = "look at the number, its unit and the tare"
			r.slip(i, f)
		case model.TooMoist:
			r.slip(i, readingImpossible.At(w.Weight.Place, fmt.Sprintf("at %s it would hold more than %.3g %% of water, which grain cannot", w.Weight, 100*most)))
		}
	}
}
