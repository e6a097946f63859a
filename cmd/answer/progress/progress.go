// Package progress says how a batch under way stands: its state now, how much longer what
// is open will take, what falls due and what is late, which readings cannot be right, and
// what the rest of it will look like.
package progress

import (
	"math"
	"time"

	"maltwright/check/records"
	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/timetable"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/follow"
	"maltwright/sim/visits"
)

// Result is how a batch stands. Figures that are not certain are spreads; one that fewer
// than half of the forecasts have is nil.
type Result struct {
	Batch   string
	Dangers []finding.Finding `json:"-"` // that the remarks tell of
	outlook.Head
	Began       time.Time `doc:"when the first soak began"`
	At          time.Time `doc:"as of when the batch is followed"`
	AsOf        AsOf      `doc:"why as of then: asked, now, last-reading (it is over three days old) or clock-behind (the last reading lies ahead of the computer's clock)"`
	Elapsed     answer.Seconds
	Stage       string `doc:"where it stands, as a record names it"`
	StageNumber int    `json:",omitempty" doc:"which of its kind it is, where there are several"`
	Step        string
	StepNumber  int  `doc:"which of the steps of that kind"`
	Growing     bool `json:"-"`
	Over        bool `doc:"the rootlets are off"`
	Complete    bool `doc:"the forecast came to its end, and did not break off"`
	Now         State
	Passed      *outlook.Passed               `json:",omitempty" doc:"where the steep needs no further soak: the grain is as moist as it is to become"`
	Waits       []Wait                        `doc:"conditions that are open or to come"`
	Due         []timetable.Visit             `doc:"the visits to come"`
	Late        []Late                        `doc:"what should have been done"`
	Steps       []outlook.StepSpread          `doc:"the steps that are still to end"`
	NotForecast *outlook.ModelEnd             `json:",omitempty" doc:"where the malt comes to where the model ends"`
	Outcome     outlook.TotalsSpread          `doc:"what will come of it"`
	Enzymes     *outlook.Enzymes              `json:",omitempty" doc:"what the enzymes of the malt will suffice for; left out where they are not forecast"`
	Drivers     outlook.Drivers               `doc:"what is still open of each total, and what to do to know it better"`
	Readings    []Reading                     `doc:"those that count, each beside what is expected"`
	Ignored     int                           `json:"ignored_readings" doc:"how many are of a later time"`
	Factors     []Factor                      `doc:"what the batch says of lot and house so far"`
	Thermometer *answer.Spread[answer.Kelvin] `doc:"how much more the thermometer shows than it is"`
	RelativeTo  Reference                     `doc:"what the factors stand beside: the model, or the house where it has learnt"`
	Posterior   Posterior                     `doc:"how the answer was reached"`
	Pinned      *answer.Pin                   `json:",omitempty" doc:"left out where the record does not say by which text of its process it was begun"`
	Assumed     []outlook.Assumption          `doc:"what is taken for granted of the readings"`
	Cautions    []outlook.Caution             `doc:"what can hurt somebody in the process"`
}

// Reference is what factors stand beside.
type Reference string

// The references.
const (
	Model Reference = "model"
	House Reference = "house" // what it has learnt
)

// State is the batch now.
type State struct {
	Moisture *answer.Spread[answer.Share]     `json:"moisture_wb"`
	Weight   *answer.Spread[answer.Kilograms] `doc:"on the scale, drained"`
	outlook.OnScale[answer.Spread[answer.Kilograms]]
	DryMatterLost *answer.Spread[answer.Share]  `doc:"of the dry matter of the grain"`
	Chit          *answer.Spread[answer.Share]  `doc:"of the kernels"`
	Acrospire     *answer.Spread[answer.Number] `json:"acrospire_mean" doc:"mean length as a part of the kernel"`
	Modification  *answer.Spread[answer.Number] `doc:"0 to 1"`
	Bed           *answer.Spread[answer.Celsius]
	AirOff        *answer.Spread[answer.Celsius]
	Oven          *answer.Spread[answer.Celsius] `doc:"the air of an oven without a fan, which has no air-off"`
	Malt          *answer.Spread[answer.Celsius]
}

// Factor is one of lot or house.
type Factor struct {
	Factor    string  `doc:"growth, chit, respiration, withering, uptake, husk-water or drying"`
	Of        *string `doc:"the kiln, where the process has several; else null"`
	Posterior *answer.Spread[answer.Number]
	Edge      int `doc:"-1 or 1 where its middle is pressed against the low or the high edge of what is thought possible, else 0"`
}

// Posterior is how the answer was reached.
type Posterior struct {
	Members             int            `doc:"forecasts of likely lots, houses and weather that were weighed by the readings"`
	EffectiveSampleSize answer.Number  `doc:"how many of equal weight they are worth"`
	ParetoTail          *answer.Number `doc:"shape k of the tail of their weights; null where all weigh the same, or they are too few to tell"`
	Trusted             bool           `doc:"whether they stand for what can be: the tail is at most 0.7, or all weigh the same"`
	Rounds              int            `doc:"of adaptation: how often more were drawn about those that agree"`
}

func posteriorOf(f *follow.Following) Posterior {
	p := Posterior{Members: f.Members, EffectiveSampleSize: answer.Number(f.EffectiveSize), Trusted: f.Trusted(), Rounds: f.Rounds}
	if !math.IsInf(f.Tail, 0) {
		tail := answer.Number(f.Tail)
		p.ParetoTail = &tail
	}
	return p
}

// Of is the answer of what was followed.
func Of(f *follow.Following, at time.Time, why AsOf) Result {
	b, p, s := f.Trial.Batch, f.Trial.Process, f.Stand.Sight
	bag := outlook.BagOfBatch(b)
	r := Result{Batch: b.Name, Dangers: records.Dangers(b), Head: outlook.HeadOf(p), Began: b.Began.Time, At: at, AsOf: why, Elapsed: answer.Seconds(f.Now),
		Stage: string(s.Stage), StageNumber: outlook.NameOf(f.Trial.Process, s.Of).Number, Step: s.Step, StepNumber: s.Number, NotForecast: outlook.ModelEndOf(f.Centre), Growing: s.Growing, Over: f.Over(), Complete: !f.Centre.BrokenOff(),
		Now: stateOf(f.Stand, bag), Waits: waitsOf(f), Late: lateOf(f), Outcome: outlook.TotalsOver(f.Ensemble), Drivers: outlook.DriversBy(f.Drivers),
		Readings: ReadingsOf(f), Ignored: len(f.Ignored), Pinned: answer.PinOf(b), RelativeTo: Model, Cautions: outlook.CautionsOf(f.Centre.Process),
		Posterior: posteriorOf(f)}
	if r.Now.Moisture != nil && len(f.Trial.Observations) > 0 {
		r.Passed = outlook.PassedOf(f.Centre, f.Now, float64(r.Now.Moisture.P50))
	}
	if p.Learnt() != nil {
		r.RelativeTo = House
	}
	if kept := r.Outcome.Diastatic; kept.Share >= half {
		r.Enzymes = outlook.EnzymesOf(f.Centre, float64(kept.P50))
	}
	if x := b.TestOf(vocabulary.AnalysisDiastatic); x != nil && r.Enzymes != nil {
		r.Enzymes.Measured(answer.DiastaticPower(x.Found.SI))
	}
	for _, a := range f.Trial.Assumed() {
		r.Assumed = append(r.Assumed, outlook.AssumptionOf(a))
	}
	for _, v := range f.Due {
		visit := timetable.VisitOf(v, r.Began, bag)
		if p.Site != nil {
			visit.There(v, visits.From(r.Began), p.Site.Hours)
		}
		r.Due = append(r.Due, visit)
	}
	for _, x := range f.ToCome() {
		r.Steps = append(r.Steps, outlook.StepSpreadOf(x, p, bag))
	}
	for _, x := range f.Factors() {
		if x.Thermometer {
			r.Thermometer = had[answer.Kelvin](x.Spread)
			continue
		}
		r.Factors = append(r.Factors, Factor{string(x.Which), outlook.KilnOf(x.Unknown), had[answer.Number](x.Spread), x.Edge})
	}
	return r
}

func stateOf(s follow.Stand, bag outlook.Bag) State {
	var on outlook.OnScale[answer.Spread[answer.Kilograms]]
	if had[answer.Kilograms](s.Weight) != nil {
		on = bag.OnSpread(model.HolderOf(s.Sight.Of), s.Weight)
	}
	off, oven := had[answer.Celsius](s.AirOff), (*answer.Spread[answer.Celsius])(nil)
	if forecast.InStillOven(s.Sight.Of) {
		off, oven = oven, off
	}
	return State{OnScale: on, Moisture: had[answer.Share](s.Moisture), Weight: had[answer.Kilograms](s.Weight), DryMatterLost: had[answer.Share](s.Lost),
		Chit: had[answer.Share](s.Chit), Acrospire: had[answer.Number](s.Acrospire), Modification: had[answer.Number](s.Modification),
		Bed: had[answer.Celsius](s.Bed), AirOff: off, Oven: oven, Malt: had[answer.Celsius](s.Malt)}
}

// half is the share of the forecasts that must have a figure for it to be told.
const half = 0.5

// had is a spread, nil where under half of the forecasts have the figure.
func had[T answer.Single](s ensemble.Spread) *answer.Spread[T] {
	if s.Share < half {
		return nil
	}
	out := outlook.Points[T](s)
	return &out
}
