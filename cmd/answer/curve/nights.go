package curve

import (
	"time"

	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/sim/visits"
)

// nightsOf are the spans of a batch in which nobody is awake, to the minute. There are none where the site
// does not say when somebody is, or the start is not known.
func nightsOf(p *model.Process, start time.Time, to answer.Seconds) (list []Span) {
	if start.IsZero() || p.Site == nil || !p.Site.Said() {
		return nil
	}
	clock := visits.From(start)
	whole := -float64(start.Second()) // so that it is looked at on the minute
	open := false
	for at := whole; at < float64(to); at += wholeMinute {
		switch awake := clock.Awake(p.Site.Hours, at); {
		case !awake && !open:
			list, open = append(list, Span{From: max(0, answer.Seconds(at))}), true
		case awake && open:
			list[len(list)-1].To, open = answer.Seconds(at), false
		}
	}
	if open {
		list[len(list)-1].To = to
	}
	return list
}
