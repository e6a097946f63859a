package records

import (
	"fmt"
	"slices"

	"maltwright/check/profile"
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

// Dangers lists the dangers to people that the remarks of a batch tell of.
func Dangers(b *model.Batch) (list []finding.Finding) {
	r := &record{batch: b, usual: profile.Of(b.Process)}
	r.alarms()
	return slices.DeleteFunc(r.found, func(f finding.Finding) bool { return f.Severity < finding.Danger })
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
