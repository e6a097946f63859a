package rules

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/check/profile"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

var claimNotKept = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "claim-not-kept", Severity: finding.Caution, // a note where flue gas may bring the smoke
		Title: "the process leaves out what makes the malt that it names",
		Why: "the kiln makes the malt: caramel malt is sugar inside because it was stewed wet, amber and brown malt are roasted, " +
			"and Munich malt lay wet and warm or was cured hot (published Munich schedules, common practice). Many other rules go by the name of the malt",
		Do:     "add the step that makes that malt, or name the malt that this is: make another malt",
		Bad:    "make caramel malt",
		Good:   "make pale malt",
		Limits: "It goes by what the kiln is set to, and reports only what is plainly another malt. It does not judge the colour of a Munich or Vienna malt: that forecast is too weak. The other rules judge as pale malt what is neither caramel nor roasted."},
	Judge: func(r finding.Rule, c *Case) {
		if model.First[*model.Kilning](c.Process) == nil {
			return
		}
		for _, kept := range claims {
			if f, ok := kept(r, c); ok {
				c.Note(f)
				return
			}
		}
		if c.Claim.Malt.Least.Soured {
			c.NotJudged(r, "a process does not say whether its malt is soured")
		}
	},
}

// claims look at one thing each that makes a malt; the first that is missing is told.
var claims = []func(finding.Rule, *Case) (finding.Finding, bool){
	neverStewed, hardlyHeated, stewedFor, enzymesGone, leftPale, grownLong, neverSmoked,
}

// claimed is a finding at the claim, with what the process has instead.
func (c *Case) claimed(r finding.Rule, is string, at source.Place, here string) finding.Finding {
	f := r.At(c.claimPlace(), fmt.Sprintf("%s malt is %s, and here %s", c.claimWord(), is, here))
	if at.Known() {
		f.Related = []finding.Related{{Place: at, Message: "this is that malt"}}
	}
	return f
}

func (c *Case) claimPlace() source.Place {
	if c.Process.Make.Place.Known() {
		return c.Process.Make.Place
	}
	return c.Process.Place
}

// claimWord is the malt as it is written: crystal is another word for caramel.
func (c *Case) claimWord() string {
	if at := c.Process.Make.Place; at.Known() {
		return at.Text()
	}
	return c.Claim.Malt.Name
}

func neverStewed(r finding.Rule, c *Case) (f finding.Finding, missing bool) {
	least := c.Claim.Malt.Least.Stew
	if least == 0 || c.stewed(least) {
		return f, false
	}
	wet := fmt.Sprintf("stewed wet at %s", c.band(profile.Band{Low: 60, High: 75}))
	for _, s := range c.steps(model.KilnStage) {
		if top, at, ok := peak(s); ok && s.Kind() == model.StewStep {
			return c.claimed(r, wet, at, fmt.Sprintf("it is stewed at %s", top)), true
		}
	}
	_, _, at := c.hottestStep()
	return c.claimed(r, wet, at, "nothing keeps it wet in such a heat"), true
}

// band writes two temperatures in the unit in which the kiln is set.
func (c *Case) band(b profile.Band) string {
	if _, top, at := c.hottestStep(); at.Known() {
		low := strings.TrimSuffix(top.Like(b.Low+zeroC), " "+top.Unit())
		return fmt.Sprintf("%s to %s", low, top.Like(b.High+zeroC))
	}
	return c.Process.Units().DegreesBetween(b.Low, b.High)
}

// hardlyHeated finds a kiln that gets less hot than the malt needs. Pale malt whose cure
// the DMS precursor tells of is left to that, and a cure that is cooler than the drying
// before it to the rule of that.
func hardlyHeated(r finding.Rule, c *Case) (f finding.Finding, missing bool) {
	s, top, at, short := c.hottestGiven()
	if s == nil || c.Claim.Malt.Split > 0 && c.Claim.Grain.Precursor && c.kilned() != nil {
		return f, false
	}
	least, how := c.Claim.LeastHeat(), ""
	if plain := c.Claim.LeastUnstewed(); plain > least && !c.warmAndWet() {
		least, how = plain, "wet and warm for hours first, or "
	}
	if _, _, cooler := c.curedCooler(); cooler || top.SI-zeroC >= least-sameHeat {
		return f, false
	}
	is := fmt.Sprintf("%sheated to %s at the least", how, top.Like(least+zeroC))
	if how != "" {
		is = "kept " + is
	}
	if short {
		return c.claimed(r, is, at, fmt.Sprintf("the kiln reaches %s at most", top)), true
	}
	return c.claimed(r, is, at, fmt.Sprintf("%s is the hottest", top)), true
}

// warmAndWet tells whether the malt is kept wet and warm for a while, which makes Munich malt.
func (c *Case) warmAndWet() bool {
	for _, s := range c.steps(model.KilnStage) {
		if top, _, ok := peak(s); ok && s.Kind() == model.StewStep && top.SI-zeroC >= warmStew {
			return true
		}
	}
	return c.stewed(warmStew + 15)
}

const warmStew = 35.0 // °C

// stewedFor finds a stew where the malt is none that is stewed. One that takes the
// enzymes is told by the heat of the wet malt.
func stewedFor(r finding.Rule, c *Case) (f finding.Finding, missing bool) {
	if c.Claim.Malt.Stewed {
		return f, false
	}
	for _, s := range c.steps(model.KilnStage) {
		if s.Kind() != model.StewStep || c.Claim.Malt.NeedsEnzymes && c.heatsWet() {
			continue
		}
		f = c.claimed(r, "dried at once", s.Place(), "the malt is stewed first")
		f.Hint = fmt.Sprintf("malt stewed at up to %s is Munich malt, and from %s on it is caramel malt", c.Degrees(50), c.Degrees(60))
		return f, true
	}
	return f, false
}

func (c *Case) heatsWet() bool { return c.Forecast != nil && len(c.hotWet()) > 0 }

func enzymesGone(r finding.Rule, c *Case) (f finding.Finding, missing bool) {
	least := c.Claim.Malt.Least.Enzymes
	if least == 0 || c.kilned() == nil || c.heatsWet() || !(c.Forecast.Totals.Quality.Diastatic < least) {
		return f, false
	}
	_, _, at := c.hottestStep()
	return c.claimed(r, "mashed by its own enzymes", at, fmt.Sprintf("the forecast leaves it %s of those", share(c.Forecast.Totals.Quality.Diastatic))), true
}

// leftPale finds a coloured malt that stays far paler than the palest of its kind.
func leftPale(r finding.Rule, c *Case) (f finding.Finding, missing bool) {
	least := c.Claim.Malt.Least.Colour
	if !c.paler(least) {
		return f, false
	}
	_, _, at := c.hottestStep()
	band := c.Claim.Malt.Colour
	return c.claimed(r, fmt.Sprintf("%g to %g EBC dark", band.Low, band.High), at, fmt.Sprintf("the forecast makes it about %.0f EBC", c.Forecast.Totals.Quality.Colour)), true
}

// grownLong finds a malt that is grown longer than its kind, of a grain whose acrospire
// tells nothing.
func grownLong(r finding.Rule, c *Case) (f finding.Finding, missing bool) {
	days, st := c.Claim.Malt.Days, c.lastGrowth()
	if !days.Known() || c.Claim.Grain.Acrospire.Known() || c.Forecast == nil || st == nil {
		return f, false
	}
	floor, _ := c.grown()
	if floor == nil || floor.Took <= (days.High+overstayed)*day {
		return f, false
	}
	return c.claimed(r, fmt.Sprintf("grown for %g to %g days", days.Low, days.High), timeOf(st), fmt.Sprintf("it grows for %s", Hours(floor.Took))), true
}

const overstayed = 0.5 // days

// neverSmoked tells that no smoke is written of: a note where flue gas may come to the malt.
func neverSmoked(r finding.Rule, c *Case) (f finding.Finding, missing bool) {
	var k *model.Kiln
	for _, st := range model.Every[*model.Kilning](c.Process) {
		if st.Kiln == nil || st.Kiln.Fired.Text == "" || smokes(st.Kiln) && (st.Kiln.Direct || st.Kiln.Flue.Text == "") || slices.ContainsFunc(st.Steps, model.Smoked) {
			return f, false
		}
		if k == nil {
			k = st.Kiln
		}
	}
	if !c.Claim.Malt.Least.Smoked || k == nil {
		return f, false
	}
	how := k.Fired.Text
	if k.Flue.Text != "" {
		how += " by " + k.Flue.Text
	}
	f = c.claimed(r, "dried in smoke", k.Fired.Place, fmt.Sprintf("the kiln is fired %s", how))
	if how == vocabulary.FiredGas || how == vocabulary.FiredOil || k.Direct {
		f.Severity = finding.Note
	}
	f.Hint = "name the malt that this is; if smoke is led to it from elsewhere, accept this and say so"
	return f, true
}
