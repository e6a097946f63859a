package outlook

import (
	"math"
	"slices"

	"maltwright/check/profile"
	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/grain"
)

// Enzymes says what the enzymes of the malt suffice for in a mash. How strong those of a lot are is
// not forecast, only what share of them the kiln leaves: so it is told by what malts are used
// for that are kilned to such a share.
type Enzymes struct {
	Standing string        `doc:"common practice: by the share that is kept, which is calibrated, no laboratory value; measured: by the diastatic power that the record has"`
	Enough   Suffice       `doc:"itself-and-unmalted; itself; cannot-say; no"`
	Why      Lack          `json:",omitempty" doc:"why it cannot be said, or is not enough: heat, grain (its malt may have too few of its own), growth (it is hardly modified) or power (too little was measured)"`
	Unmalted *answer.Share `json:",omitempty" doc:"of the whole mash, that may be unmalted grain"`
	Gentle   *bool         `json:",omitempty" doc:"whether it was dried down to 10 % moisture no hotter than wet enzymes bear; left out where it is not dried here, or is made without them"`
	Hottest  *TooHot       `json:",omitempty" doc:"where it was not: the worst of it"`
}

// TooHot is malt that is hotter than its enzymes bear at its moisture.
type TooHot struct {
	Temperature answer.Celsius
	Moisture    answer.Share `json:"moisture_wb"`
	Bears       answer.Celsius
}

// Suffice is what enzymes are enough for.
type Suffice string

// What they are enough for.
const (
	ForUnmalted Suffice = "itself-and-unmalted"
	ForItself   Suffice = "itself"
	CannotSay   Suffice = "cannot-say"
	NotEnough   Suffice = "no"
)

// Lack is why it cannot be said, or is not enough.
type Lack string

// Why it cannot be said.
const (
	LackHeat   Lack = "heat"
	LackGrain  Lack = "grain"
	LackGrowth Lack = "growth"
	LackPower  Lack = "power"
)

// The standings of what enzymes suffice for.
const (
	ByPractice = "common practice"
	ByMeasure  = "measured"
)

// Shares of the β-amylase of green malt that are kept, from which on malt is used so (common
// practice, from memory: pale malts carry some unmalted grain, Vienna and Munich malts themselves,
// amber malts hardly, crystal and roasted malts nothing; the shares are those that the forecast has
// for such malts). Unmalted grain is told for a quarter of the mash, though pale malt often carries more.
const (
	carries      = 0.60
	itself       = 0.40
	hardly       = 0.15
	unmaltedMost = 0.25
)

// EnzymesOf says what the enzymes of the malt suffice for of which such a share is kept, 0 to 1; nil
// where they are not forecast.
func EnzymesOf(f *forecast.Forecast, kept float64) *Enzymes {
	if math.IsNaN(kept) || f.Totals.Quality.Colour == 0 || f.OffWet() {
		return nil
	}
	e := &Enzymes{Standing: ByPractice}
	p := profile.Of(f.Process)
	switch {
	case kept < hardly:
		e.Enough, e.Why = NotEnough, LackHeat
	case !p.Grain.Converts:
		e.Enough, e.Why = CannotSay, LackGrain
	case f.Totals.Quality.Modified < grain.ModificationAt(grain.Gritty):
		e.Enough, e.Why = CannotSay, LackGrowth
	case kept < itself:
		e.Enough, e.Why = CannotSay, LackHeat
	case kept < carries:
		e.Enough = ForItself
	default:
		most := answer.Share(unmaltedMost)
		e.Enough, e.Unmalted = ForUnmalted, &most
	}
	if p.Malt.NeedsEnzymes {
		e.dried(f)
	}
	return e
}

// dried says whether the malt was dried gently.
func (e *Enzymes) dried(f *forecast.Forecast) {
	if !slices.ContainsFunc(f.Stages, func(st forecast.Stage) bool { return st.Kind == model.KilnStage && len(st.Steps) > 0 }) {
		return
	}
	worst := (*forecast.HotWet)(nil)
	for _, t := range forecast.Troubles[forecast.HotWet](f) {
		if t.ByAir && t.Temperature-t.Limit < airMay {
			continue
		}
		if worst == nil || t.Temperature-t.Limit > worst.Temperature-worst.Limit {
			worst = &t
		}
	}
	gentle := worst == nil
	if !gentle || !slices.ContainsFunc(f.Stages, ovenTakesWet) {
		e.Gentle = &gentle
	}
	if worst != nil {
		e.Hottest = &TooHot{answer.Celsius(worst.Temperature), answer.Share(worst.Moisture), answer.Celsius(worst.Limit)}
	}
}

const (
	wetIn   = 0.20 // moisture from which on malt that goes into a hot oven dries by what leaks alone
	ovenHot = 60.0 // °C of it
)

// ovenTakesWet tells whether malt goes so wet into an oven without a fan that what leaks from it, which
// nobody has measured, decides how hot it gets: such malt is not said to be dried gently.
func ovenTakesWet(st forecast.Stage) bool {
	return forecast.InStillOven(st.Of) && slices.ContainsFunc(st.Steps, func(s forecast.Step) bool {
		return s.MoistureStart > wetIn && s.Temperature.Known && s.Temperature.From > ovenHot
	})
}

// airMay is by how much malt may be hotter than its enzymes bear where only the air is set, K: the
// forecast cannot tell it from what they bear, and the rule hot-while-wet does not tell it either.
const airMay = 3.0

// mashNeeds is the diastatic power that a mash needs in the mean, °WK: 35 °Lintner (common practice,
// from memory; sources have 30 to 40).
const mashNeeds = 3.5*35 - 16

// unmaltedEver is the most unmalted grain that is told, of the mash: with more of it other things
// than enzymes go wrong (common practice).
const unmaltedEver = 0.5

// Measured says what enzymes suffice for by the diastatic power that was measured of the malt.
func (e *Enzymes) Measured(power answer.DiastaticPower) {
	e.Standing, e.Why, e.Unmalted = ByMeasure, "", nil
	switch spare := 1 - mashNeeds/float64(power); {
	case !(power > 0) || spare < 0:
		e.Enough, e.Why = NotEnough, LackPower
	case spare < leastUnmalted:
		e.Enough = ForItself
	default:
		most := answer.Share(min(unmaltedEver, math.Floor(spare*20)/20)) // by twentieths
		e.Enough, e.Unmalted = ForUnmalted, &most
	}
}

// leastUnmalted is the least share of unmalted grain that is told.
const leastUnmalted = 0.05
