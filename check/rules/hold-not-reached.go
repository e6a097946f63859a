package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var holdNotReached = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "hold-not-reached", Severity: finding.Caution, // a note where it is the kernel that ends the growth
		Title: "a hold that never begins, or does not come to its end",
		Why:   "the growth ends before the bed reaches this temperature (common practice)",
		Do:    "shorten the holds before it, or the time of its change; or give the stage more time",
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
		Limits: "Where the kernel ends the growth, a slower lot may come to the hold: that is a note. A hold that changes the temperature may stay a quarter short of its end."},
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
		if ran := c.run(s); s.Kind() != model.HoldStep || ran != nil {
			if ran != nil && s.Kind() == model.HoldStep {
				c.endNotReached(r, st, s, ran.End-ran.Start, sooner)
			}
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

// endNotReached reports a hold that ran for so long, and leads the bed for much longer.
// The holds before it may take so many s.
func (c *Case) endNotReached(r finding.Rule, st *model.Germination, s model.Step, ran, sooner float64) {
	over, from := s.Warmth().Over, s.Warmth().From
	if over == nil || from == nil || s.Ends().Until != nil || ran > ledEnough*over.SI || c.Forecast.BrokenOff() {
		return
	}
	led := from.Low.SI + (from.High.SI-from.Low.SI)*ran/over.SI
	f := r.At(over.Place, fmt.Sprintf("this hold goes from %s over %s, and the growth ends %s into it, at %s", from.Range.Range, over, over.Lasting(ran), from.Low.Like(led)))
	if last, ok := latest(st); ok && sooner+over.SI <= last+60 {
		f.Severity = finding.Note
	}
	c.Note(f)
}

// ledEnough is the part of its way that a bed may be led, and no more is said.
const ledEnough = 0.75
