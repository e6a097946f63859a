package rules

import (
	"cmp"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"maltwright/check/tell"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
	"maltwright/sim/kiln"
)

// What a forecast had to take for granted proves no fault: the kiln may well have another
// heater, more air, more room. Each rule that raises a fault on the ground of a forecast
// names the assumptions that can decide it; where one of them was made, in its stage or in
// one before, the fault is a caution that says what was assumed and what settles it. Where no value
// of it would cure the fault it stays one, see settles.go.

// What may decide a fault, by what it is a fault of.
var (
	kilnAir = []forecast.Assumption{forecast.KilnAir{}, forecast.OvenAir{}, forecast.OvenDoor{}, forecast.DrumAir{}, forecast.KilnFresh{}, forecast.AirOfFloor{},
		forecast.DraughtHeight{}, forecast.DrivenAir{}}
	kilnKnown = append(slices.Clone(kilnAir), forecast.KilnArea{})
	kilnHeat  = append(slices.Clone(kilnAir), forecast.KilnWalls{}, forecast.KilnFlaps{})
	roomKnown = []forecast.Assumption{forecast.RoomAir{}}
	soakKnown = []forecast.Assumption{forecast.SoakWater{}}
	rawKnown  = []forecast.Assumption{forecast.GrainMoisture{}}
)

// assumedOnly is what the rules say of it.
const assumedOnly = ". Where it depends on a fact that is not written and had to be assumed, it is a caution that says what to write"

// rests makes a caution of a fault that rests on one of the assumptions, if the forecast
// made it for the stage of the finding or one before.
func (c *Case) rests(r finding.Rule, f finding.Finding, on ...forecast.Assumption) finding.Finding {
	if f.Severity != finding.Fault || c.Forecast == nil || c.trial {
		return f
	}
	var settle []string
	for _, a := range c.Forecast.Assumed {
		if c.airOfStep(a, f.Place) || !among(on, a) {
			continue
		}
		how, of, called := c.settled(a)
		if how == "" || !c.reaches(called, f.Place) || !c.couldCure(a, f) {
			continue
		}
		f.Severity = finding.Caution
		said := tell.Assumption(a, c.Process.Units())
		settle = append(settle, fmt.Sprintf("the forecast assumes %s, %s: %s to settle it", said.What, said.Value, how))
		if of.Known() && !slices.ContainsFunc(f.Related, func(r finding.Related) bool { return r.Place == of }) {
			f.Related = append(f.Related, finding.Related{Place: of, Message: "it is not written here"})
		}
	}
	if len(settle) > 0 {
		f.Hint = strings.Join(append(settle, cmp.Or(f.Hint, r.Do)), "; or ")
	}
	return f
}

// among tells whether an assumption is of one of the kinds.
func among(kinds []forecast.Assumption, a forecast.Assumption) bool {
	return slices.ContainsFunc(kinds, func(kind forecast.Assumption) bool { return reflect.TypeOf(kind) == reflect.TypeOf(a) })
}

// airOfStep tells whether an assumption is of the air of a kiln, and the step at a place has its own.
func (c *Case) airOfStep(a forecast.Assumption, at source.Place) bool {
	switch a.(type) {
	case forecast.KilnAir, forecast.OvenAir, forecast.OvenDoor, forecast.DrumAir:
		s := c.stepAt(at)
		return s != nil && model.Airflow(s) != nil
	}
	return false
}

// settled says what to write that settles an assumption, with the block that does not say
// it, and the stage for which it was made, "" for any; "" for one that the process settles
// well enough, or that nothing written settles.
func (c *Case) settled(a forecast.Assumption) (how string, of source.Place, called string) {
	switch a := a.(type) {
	case forecast.KilnAir, forecast.DrumAir, forecast.OvenAir, forecast.OvenDoor:
		return c.ofKiln(vocabulary.WithAirflow, forecast.StageOf(a))
	case forecast.KilnWalls:
		if a.Height > 0 || a.Shell {
			return c.ofKiln("the area of the walls", a.Called)
		}
	case forecast.AirOfFloor:
		return c.settledBelow(a)
	case forecast.DraughtHeight:
		if !a.Chimney {
			return c.ofKiln(vocabulary.FactChimney, a.Called)
		}
	case forecast.KilnFlaps:
		return c.ofKiln(vocabulary.WithAirflow, a.Called)
	case forecast.DrivenAir:
		if c.flapsOpen() && !c.flapsAssumed(a.Called) {
			return c.ofKiln(vocabulary.WithAirflow, a.Called)
		}
	case forecast.KilnFresh:
		return c.ofKiln(vocabulary.WithReturns, a.Called)
	case forecast.KilnArea:
		return c.ofKiln(vocabulary.FactArea, a.Called)
	case forecast.RoomAir:
		if a.Band == nil {
			return c.ofSite(vocabulary.PlaceAir)
		}
	case forecast.SoakWater:
		return "write how much water there is, as in soak 7 h in 12 l water", source.Place{}, ""
	case forecast.GrainMoisture:
		if g := c.Process.Grain; g != nil {
			of = g.Place
		}
		return "write moisture of the lot", of, ""
	case forecast.GateWait:
		return "write how long the gate may wait, as in allow 0 to 24 h", source.Place{}, ""
	}
	return "", source.Place{}, ""
}

// settledBelow is settled of the air that comes from a floor below: what settles that of the
// floor below. Where the house says all of that, the air of the floor above follows from it.
func (c *Case) settledBelow(a forecast.AirOfFloor) (how string, of source.Place, called string) {
	for _, st := range model.Every[*model.Kilning](c.Process) {
		if c.Process.Called(st) != a.Called {
			continue
		}
		for _, low := range c.Process.Floors(st)[1:] {
			for _, b := range c.Forecast.Assumed {
				if forecast.StageOf(b) != c.Process.Called(low) || !among(kilnKnown, b) {
					continue
				}
				if _, ok := b.(forecast.AirOfFloor); ok {
					continue
				}
				if how, of, _ := c.settled(b); how != "" {
					return how, of, a.Called
				}
			}
		}
	}
	return "", source.Place{}, ""
}

// flapsOpen tells whether a heater is too weak for the air that fan or draught drive through a
// kiln whose flaps stand open: whoever stands at it shuts them as far as the heat wants, and
// nothing says how far that is.
func (c *Case) flapsOpen() bool {
	return slices.ContainsFunc(forecast.Troubles[forecast.KilnShort](c.Forecast), func(t forecast.KilnShort) bool {
		k := c.kilnAt(t.Place)
		return t.Limit == kiln.ByHeater && k != nil && k.Airflow == nil
	})
}

// flapsAssumed tells whether flaps of the kiln of a stage were taken to be shut as far as the heat wants.
func (c *Case) flapsAssumed(called string) bool {
	return slices.Contains(c.Forecast.Assumed, forecast.Assumption(forecast.KilnFlaps{Called: called}))
}

// ofKiln is a statement that the kiln of a stage lacks.
func (c *Case) ofKiln(word, called string) (how string, of source.Place, stage string) {
	for _, st := range model.Every[*model.Kilning](c.Process) {
		if k := st.Kiln; k != nil && (called == "" || c.Process.Called(st) == called) {
			return fmt.Sprintf("write %s of kiln %q", word, k.Name), k.Place, cmp.Or(called, string(model.KilnStage))
		}
	}
	return fmt.Sprintf("name the kiln, and write its %s", word), source.Place{}, cmp.Or(called, string(model.KilnStage))
}

// ofSite is a statement that the site lacks.
func (c *Case) ofSite(word string) (how string, of source.Place, stage string) {
	if s := c.Process.Site; s != nil {
		return fmt.Sprintf("write %s of site %q", word, s.Name), s.Place, ""
	}
	return fmt.Sprintf("name the site, and write its %s", word), source.Place{}, ""
}

// reaches tells whether the stage so called stands at a place or in front of it.
func (c *Case) reaches(called string, place source.Place) bool {
	if called == "" {
		return true
	}
	for _, st := range c.Process.Stages {
		if c.Process.Called(st) == called {
			return st.Place().Start <= place.Start
		}
	}
	return true
}
