package records

import (
	"fmt"

	"maltwright/check/tell"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// span is how long a step of a kind takes at the least and at the most, s, and how warm
// it can be, °C (common practice, with room on both sides).
type span struct{ least, most, cold, warm float64 }

var spans = map[string]span{
	vocabulary.VerbSoak: {5 * 60, 30 * hour, 1, 35}, vocabulary.VerbRest: {10 * 60, 36 * hour, 1, 35},
	vocabulary.VerbGerminate: {day, 14 * day, 4, 40}, vocabulary.VerbHold: {2 * hour, 14 * day, 4, 40}, vocabulary.VerbWither: {hour, 6 * day, 5, 45},
	vocabulary.VerbStew: {10 * 60, 24 * hour, 25, 85}, vocabulary.VerbDry: {10 * 60, 4 * day, 15, 130}, vocabulary.VerbCure: {5 * 60, 24 * hour, 40, 230},
	vocabulary.VerbRoast: {60, 12 * hour, 80, 260},
	vocabulary.VerbCool:  {2 * 60, 24 * hour, 0, 60}, vocabulary.VerbDeculm: {60, 7 * day, 0, 60},
}

// hotterBy is by how much a heat that was changed may pass what grain or malt bears, K.
const hotterBy = 8.0

// changes finds changes out of sense, and gives the others.
func (r *record) changes() []model.Change {
	var kept []model.Change
	for _, c := range r.batch.Changes {
		s, ok := spans[c.Step.Kind.Text]
		if kind := c.Step.Kind.Text; r.batch.Process.Count(model.StageKind(kind)) > 1 {
			s.least = spans[vocabulary.VerbHold].least // it goes on growing elsewhere
		}
		if harm, ok := r.harmed(c); ok {
			if harm.Severity < finding.Fault && kindOf(c) != vocabulary.VerbCure { // it was done so, and the batch goes on
				kept = append(kept, c)
			}
			r.note(harm)
			continue
		}
		said := ""
		switch low, high := c.To.Low.SI, c.To.High.SI; {
		case !ok:
		case c.OfWater() && kindOf(c) == string(model.CoolStep):
			said = r.muchWater(c)
		case !c.Is(quantity.Time) && !c.Is(quantity.Temperature): // the language judges it
		case c.Is(quantity.Time):
			if c.Step.Kind.Text == vocabulary.VerbSoak {
				s.most = max(s.most, r.usual.SoakLost*hour)
			}
			if said = outside(c, low, high, s.least, s.most); said == "" {
				said = r.unlikePlan(c)
			}
		default:
			said = outside(c, low, high, s.cold+zeroC, r.bears(c.Step.Kind.Text, s.warm)+zeroC)
		}
		if said == "" {
			kept = append(kept, c)
			continue
		}
		r.note(changeDoubtful.At(c.To.Place, said))
	}
	return kept
}

func kindOf(c model.Change) string { return c.Step.Kind.Text }

const (
	morePoured = 1.3  // times the water that ends a roast; less is all the same, for all that is known
	wetsBy     = 0.09 // of the charge, water that no roast boils off beside it, by which roasted malt is surely wet
)

// muchWater says that a roast was cooled with more water than its heat boils off, or "".
func (r *record) muchWater(c model.Change) string {
	p := r.batch.Process
	hot := -zeroC
	for _, st := range model.Every[*model.Kilning](p) {
		for _, s := range st.Steps {
			for _, at := range []*model.Temperature{s.Warmth().At, s.Warmth().From} {
				if at != nil && s.Kind() != model.CoolStep {
					hot = max(hot, at.High.SI-zeroC)
				}
			}
		}
	}
	if p.Charge == nil {
		return ""
	}
	water, enough := 1000*model.WaterVolume(c.To.High), forecast.QuenchedBy(p.Charge.SI, hot)
	if water <= morePoured*enough+wetsBy*p.Charge.SI {
		return ""
	}
	if enough < tell.LeastSteam {
		return fmt.Sprintf("%s was changed to %s of water, and malt at %s boils none of it off: the water wets the malt", stepWords(&c.Step), c.To.Range.Range, p.Units().Degrees(hot, 0))
	}
	return fmt.Sprintf("%s was changed to %s of water, and only about %s boils off so much malt at %s: the rest wets it", stepWords(&c.Step), c.To.Range.Range, p.Units().Room(enough/1000), p.Units().Degrees(hot, 0))
}

const zeroC = quantity.ZeroCelsius

// bears is the warmest that a step can have been, °C, for the grain and the malt.
func (r *record) bears(kind string, warm float64) float64 {
	switch kind {
	case vocabulary.VerbSoak, vocabulary.VerbRest:
		return max(r.usual.HotWater, r.usual.Rest.High) + hotterBy
	case vocabulary.VerbGerminate, vocabulary.VerbHold:
		return r.usual.GrowsHot + hotterBy
	case vocabulary.VerbDry, vocabulary.VerbCure:
		return min(warm, r.usual.HottestCure()+2*hotterBy)
	}
	return warm
}

// outside says that a change lies outside of what makes sense for its step, or "".
func outside(c model.Change, low, high, least, most float64) string {
	words := [2]string{"shorter", "longer"}
	if !c.Is(quantity.Time) {
		words = [2]string{"colder", "warmer"}
	}
	said := fmt.Sprintf("%s was changed to %s, which is", stepWords(&c.Step), c.To.Range.Range)
	switch {
	case low < least:
		return fmt.Sprintf("%s %s than any %s: at least %s", said, words[0], c.Step.Kind.Text, likeOf(c, least))
	case high > most:
		return fmt.Sprintf("%s %s than any %s: at most %s", said, words[1], c.Step.Kind.Text, likeOf(c, most))
	}
	return ""
}

// likeOf writes a bound of a change in the unit of the change.
func likeOf(c model.Change, si float64) string { return c.To.Low.Lasting(si) }

// unlike is by how many times a changed time may differ from that of the process: h and
// min are 60 apart.
const unlike = 20.0

// unlikePlan says that a time is out of all proportion to what the process gives such
// steps, or "".
func (r *record) unlikePlan(c model.Change) string {
	var given []*model.Quantity
	for _, st := range r.batch.Process.Stages {
		given = append(given, timesOf(model.StepsOf(st), c.Step.Kind.Text)...)
	}
	for _, g := range given {
		if c.To.High.SI*unlike >= g.SI && c.To.Low.SI <= g.SI*unlike {
			return ""
		}
	}
	if len(given) == 0 {
		return ""
	}
	return fmt.Sprintf("%s was changed to %s, and the process gives it %s", stepWords(&c.Step), c.To.Range.Range, given[0])
}

// timesOf lists the times that steps of a kind are given, through repeats.
func timesOf(steps []model.Step, kind string) (list []*model.Quantity) {
	for _, s := range steps {
		if string(s.Kind()) == kind && s.Ends().For != nil {
			list = append(list, s.Ends().For)
		}
		list = append(list, timesOf(model.Inner(s), kind)...)
	}
	return list
}
