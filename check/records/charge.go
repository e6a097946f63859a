package records

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// vesselTooSmall is the rule of a process, here of the charge of a record. It is a caution:
// the batch was steeped, somehow.
var vesselTooSmall = finding.Rule{Name: "vessel-too-small", Severity: finding.Caution,
	Why: "grain swells by two fifths as it steeps; grain above the water stays dry, and tightly pressed grain has no air",
	Do:  "look at the weight and its unit, and at the vessel of the process"}

// charged finds a charge of the record's own that its vessels do not hold.
func (r *record) charged() {
	if r.plan == nil || !r.batch.OwnCharge() {
		return
	}
	for _, full := range forecast.Troubles[forecast.VesselFull](r.plan) {
		for _, st := range model.Every[*model.Steep](r.batch.Process) {
			room := st.Room()
			if st.Place() != full.Place || room == nil {
				continue
			}
			f := vesselTooSmall.At(r.batch.From.Weight.Place, fmt.Sprintf("%s needs %s when it is swollen and in its water, and there is room for %s", r.batch.From.Weight, room.Like(full.Need), room))
			for _, v := range st.Vessels() {
				f.Related = append(f.Related, finding.Related{Place: v.Place, Message: "the vessel"})
			}
			r.note(f)
			return
		}
	}
}
