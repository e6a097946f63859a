package follow

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
)

// Judged is a reading beside what is expected of it, in SI and °C.
type Judged struct {
	Observation *evidence.Observation
	Expected    ensemble.Spread // over the members, before the reading's own error
	Residual    float64         // how far the reading is from the middle, in its own errors and those of the members
	Unjudged    bool            // the model ends before it: see [forecast.EndsAt]
}

// DoubtKind says what is wrong with a reading.
type DoubtKind string

// The doubts.
const (
	BelowDry    DoubtKind = "below-dry"    // lighter than the dry matter in it: Value is the moisture it would have
	Impossible  DoubtKind = "impossible"   // it cannot be by its words alone: more than the grain, or wetter than grain can be
	GainedWater DoubtKind = "gained"       // heavier than before, although it only dries: Other is the reading before
	ChargesDry  DoubtKind = "charges-dry"  // as dry as asked only by the dry matter of the charge: Value is the moisture it has
	NoTare      DoubtKind = "no-tare"      // right if the tare is in none of it, or what it says that it was weighed in: Holder
	WithHolder  DoubtKind = "weighed-in"   // right if it was weighed in what it lay in: Holder
	Unit        DoubtKind = "unit"         // right in another unit: Detail names it
	Swapped     DoubtKind = "swapped"      // right with two digits the other way round: Detail
	Nought      DoubtKind = "nought"       // right with the point elsewhere: Detail
	OtherTime   DoubtKind = "other-time"   // right in the other half of the day, or a day off: Value is when, s from the first soak
	NotYet      DoubtKind = "not-yet"      // the step that is said to have ended waits for drier malt: Value is the moisture it had
	GoesBack    DoubtKind = "goes-back"    // fewer or shorter than counted before: Other is that reading
	OutOfPlace  DoubtKind = "out-of-place" // there is nothing of the kind to be read then: its time or the step behind after is wrong
	NoStep      DoubtKind = "no-step"      // air onto the malt at which no step of the kiln is held
	Disagrees   DoubtKind = "disagrees"    // no slip explains it
)

const (
	far       = 3.0   // errors from which on a reading is in doubt
	near      = 2.0   // errors within which a slip explains it
	dryPoints = 0.007 // of moisture, within which a weight is that which was wanted
	wetPoints = 0.012 // above what was asked, from where on the malt is too moist
)

// Doubt is a reading that cannot be right, or that nothing explains.
type Doubt struct {
	Kind        DoubtKind
	Observation int // of the judged
	Other       int // the reading it goes against; -1 for none
	Value       float64
	Wanted      float64 // of NotYet: the moisture that the step waits for
	Detail      string
	Holder      *model.Holder // nil where it is none of this
}

// tenToNinety is how many standard deviations lie between the 10 and the 90 % point of
// a normal distribution.
const tenToNinety = 2.5631

// judge holds every reading beside the members.
func (f *Following) judge() []Judged {
	out := make([]Judged, len(f.Trial.Observations))
	for i := range f.Trial.Observations {
		o := &f.Trial.Observations[i]
		j := Judged{Observation: o, Expected: f.spread(func(m *Member) float64 { return m.expected[i] })}
		if s := o.Sight(f.Centre); s != nil && s.Beyond {
			j.Unjudged = j.Expected.Share < 0.5
		}
		switch mid := j.Expected.P50; {
		case j.Expected.Share < 0.5:
			j.Residual = math.NaN()
		default:
			spread := (j.Expected.P90 - j.Expected.P10) / tenToNinety / o.Error
			j.Residual = o.Residual(mid) / math.Hypot(1, spread)
		}
		out[i] = j
	}
	return out
}

// doubts finds the readings that cannot be right.
func (f *Following) doubts() []Doubt {
	var out []Doubt
	for i := range f.Judged {
		if f.Judged[i].Unjudged {
			continue
		}
		for _, find := range finders {
			if d, ok := find(f, i); ok {
				out = append(out, d)
				break
			}
		}
	}
	return out
}

// finders seek what is wrong with a reading, the surest first.
var finders = []func(*Following, int) (Doubt, bool){
	(*Following).elsewhen, (*Following).outOfPlace, (*Following).noTare, (*Following).withHolder, (*Following).unit, (*Following).digits, (*Following).belowDry,
	(*Following).struck, (*Following).gained, (*Following).chargesDry, (*Following).notYet, (*Following).otherTime, (*Following).goesBack, (*Following).noStep, (*Following).disagrees,
}

// sight is what the centre sees at the time of a reading.
func (f *Following) sight(i int) *forecast.Sight { return f.Judged[i].Observation.Sight(f.Centre) }

func (f *Following) inDoubt(i int) bool { return math.Abs(f.Judged[i].Residual) > far }

// fits tells whether the reading would agree if it had another value.
func (f *Following) fits(i int, value float64) bool {
	j := f.Judged[i]
	spread := (j.Expected.P90 - j.Expected.P10) / tenToNinety
	own := j.Observation.Error
	if model.Weight(j.Observation.Reading) != nil {
		own *= value / j.Observation.Value // a weight is as exact as it is heavy
	}
	return math.Abs(value-j.Expected.P50) <= near*math.Hypot(own, spread)
}

func (f *Following) belowDry(i int) (Doubt, bool) {
	o, s := f.Judged[i].Observation, f.sight(i)
	if model.Weight(o.Reading) == nil || s == nil || !(s.Dry > 0) {
		return Doubt{}, false
	}
	dry := s.Dry * o.Scale()
	return Doubt{Kind: BelowDry, Observation: i, Other: -1, Value: 1 - dry/o.Value}, o.Value < dry*(1-drySlack)
}

func (f *Following) struck(i int) (Doubt, bool) {
	return Doubt{Kind: Impossible, Observation: i, Other: -1}, f.Judged[i].Observation.Struck
}

// drySlack is how much lighter than its dry matter a weight may be and still be the
// scale's doing: malt has never less than some water in it.
const drySlack = 0.005

// outOfPlace finds what cannot be read at its time, such as the air off a kiln while the
// grain is steeped. Water and air can be measured whenever somebody is there.
func (f *Following) outOfPlace(i int) (Doubt, bool) {
	t := model.Thermometer(f.Judged[i].Observation.Reading)
	anywhere := t != nil && (t.Where == vocabulary.PlaceWater || t.Where == vocabulary.PlaceAir || t.Where == vocabulary.PlaceRoom)
	return Doubt{Kind: OutOfPlace, Observation: i, Other: -1}, !anywhere && f.Judged[i].Expected.Share < 0.5
}

func (f *Following) unit(i int) (Doubt, bool) {
	o := f.Judged[i].Observation
	if !f.inDoubt(i) {
		return Doubt{}, false
	}
	switch x := o.Reading; {
	case model.Weight(x) != nil && f.fits(i, o.Value*quantity.Pound):
		return Doubt{Kind: Unit, Observation: i, Other: -1, Detail: "lb"}, true
	case model.Weight(x) != nil && f.fits(i, o.Value/quantity.Pound):
		return Doubt{Kind: Unit, Observation: i, Other: -1, Detail: "kg"}, true
	case model.Thermometer(x) != nil && f.fits(i, quantity.Celsius(o.Value)):
		return Doubt{Kind: Unit, Observation: i, Other: -1, Detail: "°F"}, true
	case model.Thermometer(x) != nil && f.fits(i, quantity.Fahrenheit(o.Value)):
		return Doubt{Kind: Unit, Observation: i, Other: -1, Detail: "°C"}, true
	}
	return Doubt{}, false
}

// gained finds a weight above the one before, where the grain only dries.
func (f *Following) gained(i int) (Doubt, bool) {
	o, s := f.Judged[i].Observation, f.sight(i)
	if model.Weight(o.Reading) == nil || s == nil || !dries(s.Stage) {
		return Doubt{}, false
	}
	for k := i - 1; k >= 0; k-- {
		before := f.Judged[k].Observation
		if model.Weight(before.Reading) == nil || model.OfBag(before.Reading) != model.OfBag(o.Reading) {
			continue
		}
		if t := f.sight(k); t == nil || !dries(t.Stage) {
			break
		}
		return Doubt{Kind: GainedWater, Observation: i, Other: k}, o.Value > before.Value*(1+2*drySlack) && (f.inDoubt(i) || f.worse(i, k))
	}
	return Doubt{}, false
}

// worse tells whether the first of two readings is farther off.
func (f *Following) worse(i, k int) bool {
	return !(math.Abs(f.Judged[i].Residual) < math.Abs(f.Judged[k].Residual))
}

func dries(k model.StageKind) bool { return k == model.WitherStage || k == model.KilnStage }

// chargesDry finds a weight at which the malt is as dry as its step asks only if none
// of the charge's dry matter were gone.
func (f *Following) chargesDry(i int) (Doubt, bool) {
	s := f.sight(i)
	x, ok := f.Judged[i].Observation.Reading.(*model.Weighed)
	if !ok || x.OfBag || x.After == nil || s == nil || !dries(s.Stage) {
		return Doubt{}, false
	}
	wanted, ok := f.Trial.Asked(x.After)
	if !ok {
		return Doubt{}, false
	}
	whole := s.Dry / (1 - s.Lost)
	weight := f.Judged[i].Observation.Value
	by, has := 1-whole/weight, 1-s.Dry/weight
	return Doubt{Kind: ChargesDry, Observation: i, Other: -1, Value: has}, math.Abs(by-wanted) < dryPoints && has > wanted+wetPoints
}

// notYet finds a weight behind a step that waits for dryness, by which the malt was
// still much too moist.
func (f *Following) notYet(i int) (Doubt, bool) {
	s := f.sight(i)
	x, ok := f.Judged[i].Observation.Reading.(*model.Weighed)
	if !ok || x.OfBag || x.After == nil || s == nil || !vocabulary.Dries(x.After.Kind.Text) {
		return Doubt{}, false
	}
	wanted, ok := f.Trial.Asked(x.After)
	has := 1 - s.Dry/f.Judged[i].Observation.Value
	return Doubt{Kind: NotYet, Observation: i, Other: -1, Value: has, Wanted: wanted}, ok && has > wanted+muchTooWet
}

// muchTooWet is by how much malt may be moister than was waited for without a word, of
// the whole weight: the error of a scale and of what was lost.
const muchTooWet = 0.025

// goesBack finds a count below an earlier one by more than chance.
func (f *Following) goesBack(i int) (Doubt, bool) {
	o := f.Judged[i].Observation
	if !model.Is[*model.Counted](o.Reading) {
		return Doubt{}, false
	}
	for k := i - 1; k >= 0; k-- {
		before := f.Judged[k].Observation
		if model.Counts(before.Reading) != model.Counts(o.Reading) {
			continue
		}
		gap := (before.Value - o.Value) / math.Hypot(before.Error, o.Error)
		return Doubt{Kind: GoesBack, Observation: i, Other: k}, gap > far && f.worse(i, k) || gap > near && f.inDoubt(i)
	}
	return Doubt{}, false
}

// noStep finds air onto the malt that disagrees, and is of no heat at which the kiln is held.
func (f *Following) noStep(i int) (Doubt, bool) {
	return Doubt{Kind: NoStep, Observation: i, Other: -1}, f.inDoubt(i) && f.Trial.FitsNoStep(f.Judged[i].Observation.Reading)
}

func (f *Following) disagrees(i int) (Doubt, bool) {
	return Doubt{Kind: Disagrees, Observation: i, Other: -1}, f.inDoubt(i)
}
