package rules

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/quality"
)

var cureCoolOrShort = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "cure-cool-or-short", Severity: finding.Caution,
		Title:  "the cure of a pale malt is too cool or too short for its DMS precursor",
		Why:    "the rest of the precursor turns into DMS in the copper and tastes of cooked vegetables; 5.5 h at 84 °C and 3 h at 90 °C have the same effect (published process of a maltings), and 3 h at 80 °C is the mildest cure in use (published small-scale practice)",
		Do:     "cure at 80 to 85 °C for 4 to 6 h, once the malt is below 10 % moisture",
		Bad:    "cure at air-on 70 °C for 2 h",
		Good:   "cure at air-on 82 °C for 5 h",
		Limits: "The half-life of the precursor was measured in wort, and in malt it is an indication. A long and open boil drives DMS off too; the rule does not know the brewery."},
	Judge: func(r finding.Rule, c *Case) {
		hottest, top, place, short := c.hottestGiven()
		got, least := c.splits()
		if !place.Known() || got >= least {
			return
		}
		cure := hottest
		for _, s := range c.steps(model.KilnStage) {
			if s.Kind() == model.CureStep {
				cure = s // be another step hotter, the cure is what is too cool
			}
		}
		asked, at, _ := peak(cure)
		gives := fmt.Sprintf("on this kiln, %s at most", top)
		if short {
			gives = fmt.Sprintf("the process asks for %s, and the kiln reaches %s at most", asked, top)
		}
		if run := c.run(hottest); run != nil && run.Warmest.Known && run.Warmest.Malt+zeroC < top.SI-maltLags {
			gives += fmt.Sprintf(", and the malt comes to %s", inDegrees(run.Warmest.Malt+zeroC, asked))
		}
		left := c.Forecast.Totals.Quality.Precursor
		if math.Round(100*(1-left)) >= math.Round(100*(1-math.Exp2(-least))) {
			return // by what can be told of it, it is as mild as the mildest
		}
		f := r.At(at, fmt.Sprintf("%s: %s of the DMS precursor is split, and the mildest usual cure splits %s", gives, split(1-left), share(1-math.Exp2(-least))))
		if more, warm := c.moreCure(cure, least-got); more <= mostCure {
			f.Hint = fmt.Sprintf("%s more at the malt's forecast %s would do the same as the mildest usual cure; the trade cures from 5.5 h at %s to 3 h at %s",
				Hours(more), inDegrees(warm+zeroC, asked), c.Process.Units().Degrees(84, 0), c.Process.Units().Degrees(90, 0))
		}
		c.Note(f)
	},
}

// moreCure is by how much longer a cure would have to be to split so many half-lives more of
// the precursor, s, and how warm the malt is in it, °C: at its end, by the forecast.
func (c *Case) moreCure(cure model.Step, halves float64) (seconds, warm float64) {
	run := c.run(cure)
	if run == nil || !run.Warmest.Known {
		return math.Inf(1), 0
	}
	warm = run.Warmest.Malt
	return halves * math.Ln2 / quality.PrecursorRate(warm, 0), warm
}

// splits gives the half-lives of the DMS precursor that the kiln lasts, and how many it
// should at the least; both are 0 where that is not judged.
func (c *Case) splits() (got, least float64) {
	least = c.Profile.Malt.Split
	if least == 0 || !c.Profile.Grain.Precursor || c.kilned() == nil || math.IsNaN(c.Forecast.Totals.Quality.Precursor) {
		return 0, 0
	}
	return -math.Log2(c.Forecast.Totals.Quality.Precursor), least
}

// maltLags is by how much cooler than what is given malt must stay, K, for that to be told.
const maltLags = 5.0

// mostCure is the longest time, s, by which anybody would lengthen a cure.
const mostCure = 6 * hour

// share writes a share to a whole per cent.
// split says how little is split.
func split(v float64) string {
	if v < 0.005 {
		return "next to nothing"
	}
	return "only " + share(v)
}

func share(v float64) string { return fmt.Sprintf("%.0f %%", 100*v) }
