package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

var pieceTooDeep = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "piece-too-deep", Severity: finding.Caution, // a fault where no air comes to most of it
		Title: "the growing piece lies too deep to be kept cool by turning",
		Why:   "on a floor without a fan, air reaches 10 to 20 cm deep, and below that the grain heats. Oxygen gets about 20 cm deep by itself at the strongest growth (diffusion through the pores); 10 to 20 cm is usual on a floor (common practice)",
		Do:    "spread it thinner, on more floor or in two pieces",
		Bad: `from 14 kg of "base lot"
vessel "base tub" { holds 60 l }
floor "base tray" { area 0.1 m2 }
floor "base floor" { area 2 m2 }`,
		Good: `from 14 kg of "base lot"
vessel "base tub" { holds 60 l }
floor "base tray" { area 0.8 m2 }
floor "base floor" { area 2 m2 }`,
		Limits: "a bed with air blown through it may lie up to 1.35 m deep: Owens 2001 has 1.2 m"},
	Judge: func(r finding.Rule, c *Case) {
		most := c.Profile.DeepBed
		for _, st := range model.Every[*model.Germination](c.Process) {
			floor := c.onFloor(st)
			if floor != nil && floor.Blown != nil {
				c.blownTooDeep(r, floor)
				continue
			}
			if floor == nil || floor.Depth <= most {
				continue
			}
			units := c.Process.Units()
			f := r.At(floor.Place, fmt.Sprintf("the piece lies %s deep, and turning keeps %s cool at most", units.Depth(floor.Depth), units.Depth(most)))
			if floor.Depth > chokes*floor.Airy {
				f = r.At(floor.Place, fmt.Sprintf("the piece lies %s deep, and air gets only %s deep by itself: the grain below that chokes, overheats and dies", units.Depth(floor.Depth), units.Depth(floor.Airy)))
				f.Severity = finding.Fault
			}
			area := floor.Area * floor.Depth / usualDepth
			f.Hint = fmt.Sprintf("on %s it would lie %s deep", c.Process.Units().AboutArea(area), c.Process.Units().Depth(usualDepth))
			if st.Floor != nil && st.Floor.Area != nil {
				f.Hint = fmt.Sprintf("on %s it would lie %s deep", st.Floor.Area.Like(area), c.Process.Units().Depth(usualDepth))
				f.Related = []finding.Related{{Place: st.Floor.Area.Place, Message: "its area"}}
			}
			if f.Severity != finding.Fault { // of its depth the floor tells, of its warmth the room
				f = c.rests(r, c.lostToo(f), roomKnown...)
			}
			c.Note(f)
		}
	},
}

// chokes is how many times deeper than air comes into it by itself a piece must lie to
// be lost: most of it then has none, turned or not (calibrated).
const chokes = 2.0

// usualDepth is that of a piece on the floor, m (common practice: 10 to 15 cm).
const usualDepth = 0.12

// deepestBlown is the deepest that a bed with air blown through it lies, m: 1.2 after
// filling, Owens 2001, and what it swells.
const deepestBlown = 1.35

func (c *Case) blownTooDeep(r finding.Rule, floor *forecast.Piece) {
	if floor.Depth <= deepestBlown {
		return
	}
	units := c.Process.Units()
	f := r.At(floor.Place, fmt.Sprintf("the bed lies %s deep, and air is blown through %s at most", units.Depth(floor.Depth), units.Depth(deepestBlown)))
	f.Hint = fmt.Sprintf("on %s it would lie %s deep", units.AboutArea(floor.Area*floor.Depth), units.Depth(1))
	c.Note(f)
}
