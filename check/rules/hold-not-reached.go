package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var holdNotReached = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "hold-not-reached", Severity: finding.Caution, // a note where it is the corn that ends the growth
		Title: "a hold that the piece never comes to",
		Why:   "the holds before it last as long as the whole stage, so the bed is not brought to this temperature (common practice)",
		Do:    "shorten the hold before it, or give the stage more time",
		Bad: `germinate on "base tray" {
  hold bed at 14 to 16 °C for 5 days
  hold bed at 12 to 14 °C
  humidity 95 to 99 %
  turn every 8 h
  for 5 days
  accept stop-by-days-only because "an example"
}`,
		Good: `germinate on "base tray" {
  hold bed at 14 to 16 °C for 2 days
  hold bed at 14 to 17 °C
  humidity 95 to 99 %
  turn every 8 h
  until acrospire at least 3/4 and rub is chalky
  allow 4 to 8 days
}`,
		Limits: "Where the growth ends by the corn, a slower lot may come to the hold: that is a note."},
	Judge: func(r finding.Rule, c *Case) {
		for _, st := range model.Every[*model.Germination](c.Process) {
			if floor := c.onFloor(st); floor != nil {
				c.holdsNotReached(r, st, floor.Took)
			}
		}
	},
}

// holdsNotReached reports the holds of a stage that took so long, which never began.
func (c *Case) holdsNotReached(r finding.Rule, st *model.Germination, took float64) {
	sooner := 0.0 // s that the holds before may take
	for _, s := range st.Steps {
		if s.Kind() != model.HoldStep || c.run(s) != nil {
			if t, ok := lasts(s); ok && s.Kind() == model.HoldStep {
				sooner += t
			}
			continue
		}
		f := r.At(s.Place(), fmt.Sprintf("the growth ends after %s, before this hold begins", Hours(took)))
		if last, ok := latest(st); ok && took < last-60 && sooner < last-60 {
			f.Severity = finding.Note
		}
		c.Note(f)
	}
}
