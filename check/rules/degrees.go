package rules

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
)

// How it works
//
// Who writes 185 °C for 185 °F has a roast in place of a cure, and every rule of roasting speaks
// of it. A setting that its kiln or its malt does not bear, and that fits both by the other
// scale of degrees, is told as that slip by the finding that stands at it; what comes of the
// roast that was never meant is not told beside it.

// degreeSlip is a setting whose number fits in the other scale of degrees.
type degreeSlip struct {
	at    *model.Temperature
	stage model.Stage
	meant quantity.Range
}

// wrongDegrees lists the settings of all kilns that were likely meant in the other scale. Of a
// house that writes both scales a setting that only its malt does not bear may be either.
func (c *Case) wrongDegrees() (list []degreeSlip) {
	for _, st := range model.Every[*model.Kilning](c.Process) {
		for _, s := range st.Steps {
			if s.Kind() == model.RoastStep {
				continue
			}
			for _, at := range []*model.Temperature{s.Warmth().At, s.Warmth().From} {
				if at == nil || !c.degreesOdd(st.Kiln, s, at) {
					continue
				}
				if meant, ok := inOtherDegrees(at.Range.Range); ok && c.bears(st.Kiln, s, meant) {
					list = append(list, degreeSlip{at, st, meant})
				}
			}
		}
	}
	return list
}

// degreesOdd tells whether a setting is outside what its kiln reaches; or hotter than its malt
// is cured, in another scale than the house writes; or frost to which malt is cooled.
func (c *Case) degreesOdd(k *model.Kiln, s model.Step, at *model.Temperature) bool {
	if s.Kind() == model.CoolStep {
		return at.High.SI < zeroC+frost
	}
	if k != nil && k.Reaches != nil && (at.High.SI > k.Reaches.High.SI+sameReach || at.High.SI < k.Reaches.Low.SI-sameReach) {
		return true
	}
	return max(at.Low.SI, at.High.SI)-zeroC > c.Profile.HottestCure()+sameHeat && (at.High.Unit() == "°F") != c.Process.Units().Fahrenheit
}

const (
	frost       = 2.0  // °C below which nobody cools malt
	coolestCool = 10.0 // °C below which a room seldom is
	warmestCool = 60.0 // °C above which malt is not cool
	coolestDry  = 25.0 // °C below which nobody sets a kiln
	coolestCure = 60.0 // °C below which nothing is cured
)

// bears tells whether a step may well be set so.
func (c *Case) bears(k *model.Kiln, s model.Step, r quantity.Range) bool {
	least := coolestDry
	if s.Kind() == model.CureStep {
		least = coolestCure
	}
	low, high := min(r.Low.SI, r.High.SI), max(r.Low.SI, r.High.SI)
	if s.Kind() == model.CoolStep {
		return low-zeroC >= coolestCool && high-zeroC <= warmestCool
	}
	return low-zeroC >= least && high-zeroC <= c.Profile.HottestCure()+sameHeat &&
		(k == nil || k.Reaches == nil || low >= k.Reaches.Low.SI-sameReach && high <= k.Reaches.High.SI+sameReach)
}

// inOtherDegrees reads the numbers of temperatures in the other scale.
func inOtherDegrees(r quantity.Range) (quantity.Range, bool) {
	other := map[string]string{"°C": "°F", "°F": "°C"}[r.High.Unit()]
	part := func(q quantity.Quantity) []quantity.Part {
		return []quantity.Part{{Number: strings.TrimSuffix(q.String(), " "+q.Unit()), Unit: other}}
	}
	made, err := quantity.Between(part(r.Low), part(r.High))
	return made, err == nil && other != ""
}

// ofRoast are the rules that speak of a roast, which where it is a slip is none.
var ofRoast = []string{"roast-fire", "roast-wet", "roast-without-quench", "never-stirred", "hot-surfaces", "end-moisture-very-low"}

// tellDegrees writes the slips into what stands at them, and takes out what comes of them.
func (c *Case) tellDegrees() {
	for _, x := range c.wrongDegrees() {
		told := false
		for i := range c.Found {
			if f := &c.Found[i]; within(f.Place, x.at.Place) && slices.Contains([]string{"equipment-cannot", "cure-too-hot-for-claim"}, f.Rule) {
				told = true
				f.Hint = fmt.Sprintf("if %s was meant, write %s, which is %s; if not, %s", x.meant.High.Unit(), x.meant, inDegreesLike(x.at.High.Unit(), x.meant), f.Hint)
				f.Offers = append(f.Offers, offerOf(x.at.Place, x.at.Range.Range, x.meant)...)
			}
		}
		if told {
			c.Found = slices.DeleteFunc(c.Found, func(f finding.Finding) bool {
				return f.Severity < finding.Danger && slices.Contains(ofRoast, f.Rule) && c.stageAt(f.Place.Start) == x.stage
			})
		}
	}
}

// offerOf offers to write a value in the place of another, where that stands as it is printed at the end of its words.
func offerOf(place source.Place, written, meant quantity.Range) []finding.Offer {
	before, alone := strings.CutSuffix(place.Text(), written.String())
	if !alone || strings.ContainsAny(before, "0123456789") {
		return nil
	}
	place.Start += len(before)
	return []finding.Offer{{Says: meant.String(), Edits: []finding.Edit{{Place: place, New: meant.String()}}}}
}

// within tells whether a place is one of those words.
func within(words, place source.Place) bool {
	return words.File == place.File && words.Start <= place.Start && place.End <= words.End
}

// inDegreesLike writes temperatures in another unit to whole degrees, and as they are written
// where it is their own.
func inDegreesLike(unit string, r quantity.Range) string {
	if r.High.Unit() == unit {
		return r.String()
	}
	low, high := wholeDegrees(r.Low.SI, unit), wholeDegrees(r.High.SI, unit)
	if low == high {
		return high
	}
	return strings.TrimSuffix(low, " "+unit) + " to " + high
}

func wholeDegrees(kelvin float64, unit string) string {
	t := kelvin - zeroC
	if unit == "°F" {
		t = 1.8*t + 32
	}
	return fmt.Sprintf("%.0f %s", t, unit)
}

// stageAt is the stage in whose words an offset lies, nil for none.
func (c *Case) stageAt(offset int) (in model.Stage) {
	for _, st := range c.Process.Stages {
		if st.Place().Start <= offset {
			in = st
		}
	}
	return in
}

// inDegreesOf retells what a rule says in general in the degrees of what it found: a setting
// in °C has its finding in °C, though the house writes °F.
func inDegreesOf(said finding.Rule, units quantity.System, f *finding.Finding) {
	celsius, fahrenheit := strings.Contains(f.Message, "°C"), strings.Contains(f.Message, "°F")
	if celsius == fahrenheit || fahrenheit == units.Fahrenheit || f.Rule != said.Name {
		return
	}
	of := units
	of.Fahrenheit = fahrenheit
	f.Why = strings.Replace(f.Why, units.Retold(said.Why), of.Retold(said.Why), 1)
	f.Hint = strings.Replace(f.Hint, units.Retold(said.Do), of.Retold(said.Do), 1)
}
