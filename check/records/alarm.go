package records

import (
	"fmt"
	"slices"

	"maltwright/check/tell"
	"maltwright/lang/finding"
	"maltwright/lang/model"
)

// alarms tells again of the dangers that the remarks tell of.
func (r *record) alarms() {
	for i := range r.batch.Remarks {
		text := r.batch.Remarks[i].Text
		for _, a := range tell.Alarms(text.Text) {
			if r.meansIt(a.Kind) {
				continue
			}
			f := remarkAlarms.At(text.Place, fmt.Sprintf("the remark says %s: %s", a.Word, a.Means))
			f.Hint = a.Do
			if !a.People {
				f.Severity = finding.Caution
			}
			r.note(f)
		}
	}
}

// meansIt tells whether the process makes on purpose what would be an alarm elsewhere.
func (r *record) meansIt(kind tell.AlarmKind) bool {
	switch kind {
	case tell.AlarmSmoke:
		return slices.ContainsFunc(model.Every[*model.Kilning](r.batch.Process), func(st *model.Kilning) bool {
			return slices.ContainsFunc(model.EveryStep(model.StepsOf(st)), model.Smoked)
		})
	case tell.AlarmSour:
		return r.usual.Malt.Least.Soured
	}
	return false
}
