package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// sameReach is within what a temperature counts as one that the kiln reaches, K: finer
// than is written.
const sameReach = 0.05

// setPoint is a temperature that a kiln step asks for.
type setPoint struct {
	where string
	t     quantity.Quantity
	place source.Place
	start bool // where a rise begins
}

// setPoints lists what a step asks for: of a band its middle, of a rise both its ends.
func setPoints(s model.Step) []setPoint {
	heat := s.Warmth()
	at, from := heat.At, heat.From
	switch {
	case s.Kind() == model.CoolStep:
		return nil
	case from != nil:
		return []setPoint{{from.Where, from.High, from.Place, false}, {from.Where, from.Low, from.Place, true}}
	case at == nil:
		return nil
	case at.Single():
		return []setPoint{{at.Where, at.High, at.Place, false}}
	}
	mid := at.High
	mid.SI = at.Mid()
	return []setPoint{{at.Where, mid, at.Place, false}}
}

// beyondReach compares a setting with what the kiln is said to reach. Nothing in a
// kiln gets hotter than its hottest air; cooler than its coolest the air cannot be,
// but malt that dries in it, and the air off that malt, can while they are wet. Malt
// that is stewed dries in nothing.
func (c *Case) beyondReach(r finding.Rule, k *model.Kiln, s model.Step) []finding.Finding {
	site := c.Process.Site
	if k.Reaches == nil {
		return nil
	}
	for _, a := range setPoints(s) {
		side := ""
		ofAir := s.Kind() == model.StewStep || a.where != vocabulary.PlaceMalt && a.where != vocabulary.PlaceAirOff
		switch {
		case a.t.SI > k.Reaches.High.SI+sameReach:
			side = "above"
		case a.t.SI < k.Reaches.Low.SI-sameReach:
			side = "below"
		default:
			continue
		}
		f := r.At(a.place, fmt.Sprintf("the step asks for %s of %s, and the kiln reaches %s: %s its reach", a.where, a.t.Like(a.t.SI), inDegreesLike(a.t.Unit(), k.Reaches.Range), side))
		switch {
		case side == "above":
		case !ofAir:
			f = c.belowCoolest(f, k, s, a)
		case a.start && (site == nil || site.Air == nil || a.t.SI >= site.Air.Low.SI):
			f.Severity = finding.Caution // the rise begins where the kiln begins
		}
		f.Related = []finding.Related{{Place: k.Reaches.Place, Message: "what it reaches"}}
		return []finding.Finding{f}
	}
	return nil
}

// moreThanItsOwn is the share of a kiln's own airflow above which a step asks for more
// than a fan that is set well may give.
const moreThanItsOwn = 1.5

// beyondAir compares the airflow of a step with that of the kiln.
func beyondAir(r finding.Rule, k *model.Kiln, s model.Step) []finding.Finding {
	if model.Airflow(s) == nil {
		return nil
	}
	own := k.Airflow
	var f finding.Finding
	switch still := k.Draught.Text == vocabulary.DraughtStill; {
	case own != nil && model.Airflow(s).SI <= own.SI*1.05 || own == nil && !still:
		return nil
	case still:
		f = r.At(model.Airflow(s).Place, fmt.Sprintf("the step asks for %s of air, and an oven without a fan has nothing to move it", model.Airflow(s)))
		f.Hint = "leave the airflow out, or write draught fan where there is one"
		f.Related = []finding.Related{{Place: k.Draught.Place, Message: "the line that says it has no fan"}}
		return []finding.Finding{f}
	default:
		f = r.At(model.Airflow(s).Place, fmt.Sprintf("the step asks for %s of air, %s the kiln's own %s", model.Airflow(s), timesAs(model.Airflow(s).SI/own.SI), own))
		f.Hint = "ask for no more than the kiln has, or correct its airflow"
		if model.Airflow(s).SI <= moreThanItsOwn*own.SI {
			f.Severity = finding.Caution
		}
	}
	f.Related = []finding.Related{{Place: own.Place, Message: "its airflow"}}
	return []finding.Finding{f}
}

// noReturn tells of a step that leads exhaust back in an oven that has nothing to move it.
func noReturn(r finding.Rule, k *model.Kiln, s model.Step) []finding.Finding {
	said := model.Returns(s)
	if said == nil || said.SI == 0 || k.Draught.Text != vocabulary.DraughtStill {
		return nil
	}
	f := r.At(said.Place, fmt.Sprintf("the process leads %s of the exhaust back, and an oven without a fan has nothing to move it", said))
	f.Hint = "leave it out: an oven loses only the air that leaks or is vented; or write draught fan where there is one"
	f.Related = []finding.Related{{Place: k.Draught.Place, Message: "the line that says it has no fan"}}
	return []finding.Finding{f}
}

// timesAs writes how often as much: 1.5 times, 10 times.
func timesAs(n float64) string {
	if n < 9.5 {
		return fmt.Sprintf("%.1f times", n)
	}
	return fmt.Sprintf("%.0f times", n)
}
