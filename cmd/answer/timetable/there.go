package timetable

import (
	"maltwright/lang/model"
	"maltwright/sim/visits"
)

// There fills in who is there at a visit, by the hours of the site.
func (out *Visit) There(v visits.Visit, clock visits.Clock, hours model.Hours) {
	out.Away = clock.Away(hours, v.At)
	if n, known := hours.Hands(clock(v.At).Second); known && !out.Away {
		out.Hands, out.Short = &n, n < v.Hands()
	}
}
