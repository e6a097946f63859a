package model

import (
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
)

// Change is a step that was done otherwise than the process says: for another time, at
// another temperature, with other air or water, or in smoke or without.
type Change struct {
	Place   source.Place
	Step    StepName
	What    Word        // airflow, returns or smoke; Text "" of a time, a temperature or water
	Without bool        // there was no smoke
	To      Temperature // of smoke its place alone; Where only of a temperature
	Because string
	By      Word // who did it; empty where it is not said
}

// The words of what a change can be of.
const (
	ChangedAirflow = "airflow"
	ChangedReturns = "returns"
	ChangedSmoke   = "smoke"
)

// Is tells whether the change is to a quantity of a dimension, such as a time.
func (c *Change) Is(d quantity.Dimension) bool {
	return c.What.Text != ChangedSmoke && c.To.Low.Dimension == d
}

// OfWater tells whether the change is of how much water was used.
func (c *Change) OfWater() bool { return c.Is(quantity.Volume) || c.Is(quantity.Mass) }

// Alike tells whether two changes are of the same thing, whatever steps they are of.
func (c *Change) Alike(other *Change) bool {
	return c.What.Text == other.What.Text && c.To.Where == other.To.Where && c.OfWater() == other.OfWater() &&
		(c.OfWater() || c.To.Low.Dimension == other.To.Low.Dimension)
}

// Said is what the step was changed to, as it is written: 5 h, air-on 55 °C, returns 50 %, no
// smoke.
func (c *Change) Said() string {
	switch {
	case c.Without:
		return "no " + c.What.Text
	case c.What.Text == ChangedSmoke:
		return c.What.Text
	}
	return strings.TrimLeft(c.What.Text+" ", " ") + strings.TrimLeft(c.To.Where+" ", " ") + c.To.Range.Range.String()
}

// Heats tells whether steps of that word have an airflow, returns and smoke that can be
// changed.
func Heats(kind StepKind) bool {
	return kind == DryStep || kind == StewStep || kind == CureStep || kind == RoastStep
}

// Otherwise is a step of the kiln with its air, its smoke and its water as they were changed.
// The step itself stays as it is; a change of time or temperature is not of these.
func Otherwise(s Step, changes ...Change) Step {
	for i := range changes {
		s = otherwise(s, &changes[i])
	}
	return s
}

func otherwise(s Step, c *Change) Step {
	much := &Quantity{Quantity: c.To.Low, Place: c.To.Place}
	if cool, ok := s.(*Cool); ok && c.OfWater() {
		done := *cool
		done.Water = much
		return &done
	}
	done, h := copyOf(s)
	switch {
	case h == nil:
		return s
	case c.What.Text == ChangedSmoke:
		h.Smoke = !c.Without
	case c.Is(quantity.Flow):
		h.Airflow = much
	case c.Is(quantity.Share):
		h.Returns = much
	}
	return done
}

// copyOf is a copy of a step that is heated, and what it says of its heat.
func copyOf(s Step) (Step, *Heated) {
	switch s := s.(type) {
	case *Dry:
		c := *s
		return &c, &c.Heated
	case *Stew:
		c := *s
		return &c, &c.Heated
	case *Cure:
		c := *s
		return &c, &c.Heated
	case *Roast:
		c := *s
		return &c, &c.Heated
	}
	return s, nil
}
