package evidence

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
	"maltwright/sim/grain"
)

// Observation is one reading beside what a forecast gives for it. Values are in SI, but
// temperatures in °C; a rub is told by the modification at which it is felt.
type Observation struct {
	Reading model.Reading
	Value   float64
	Error   float64 // standard error of such a reading, model and all
	Struck  bool    // it cannot be, and is no evidence; see Strike
	Worth   float64 // of an independent reading, above 0 to 1: less where others of its kind are near; see serial.go

	lasts   float64         // share of the variance of its error that lasts to the next reading; see serial.go
	look    int             // which of the looks shows it; -1 where it has no time, and its step tells
	at      *model.StepName // the step at whose end it is told, where that tells more than its time
	scale   float64         // of the batch's weight to what was on the scale: the bag
	lower   float64         // of a rub: the modification from which on it feels so
	higher  float64         // and that to which
	expects func(s *forecast.Sight) float64
}

// How exact a reading is, model and all. Counts have their own chance besides; of a
// weight see weighing.go.
const (
	chitError    = 0.04 // of a share of kernels
	lengthError  = 0.05 // of a mean length, as a share of the kernel
	kernelSpread = 0.25 // of one kernel's length from the mean
	rubError     = 0.04 // of a modification
	fallback     = 100  // kernels looked at, where it is not said
)

// placeError is the same of a thermometer in a place, K (common practice).
var placeError = map[string]float64{vocabulary.PlaceWater: 0.7, vocabulary.PlaceAir: 1.5, vocabulary.PlaceRoom: 1.5, vocabulary.PlaceBed: 1, vocabulary.PlaceAirOn: 2, vocabulary.PlaceAirOff: 2.5, vocabulary.PlaceMalt: 2.5, vocabulary.PlaceOven: 5}

// takeObservations lists what was read, with the looks that show it.
func (t *Trial) takeObservations() {
	for _, x := range t.lines() {
		if !x.When().IsZero() && !t.counts(x) { // and what is written below it is yet to come as well
			break
		}
		if x.When().IsZero() && model.After(x) == nil {
			continue
		}
		o, ok := t.observation(x)
		if !ok {
			continue
		}
		if o.look = -1; x.When().IsZero() || o.at != nil {
			t.whole = true
		} else {
			o.look = len(t.course.Looks)
			t.course.Looks = append(t.course.Looks, t.since(x.When()))
		}
		t.Observations = append(t.Observations, o)
	}
	t.weigh()
	if t.Now > 0 {
		t.course.Looks = append(t.course.Looks, t.Now)
	}
}

// observation makes that of a reading that a forecast has something for.
func (t *Trial) observation(x model.Reading) (Observation, bool) {
	o := Observation{Reading: x, scale: 1}
	switch x := x.(type) {
	case *model.Weighed:
		return t.weighed(o, x)
	case *model.Counted:
		return o, o.counted(x)
	case *model.Felt:
		o.Error, o.lasts = rubError, lastingShare
		o.lower, o.higher = rubbed(x.Rub.Text)
		o.Value = (o.lower + o.higher) / 2
		o.expects = func(s *forecast.Sight) float64 { return s.Modification }
	case *model.Read:
		o.Value, o.Error, o.lasts = x.Temperature.Mid()-zeroC, placeError[x.Temperature.Where], lastingShare
		o.expects = func(s *forecast.Sight) float64 { return s.Temperature(x.Temperature.Where) }
	case *model.Tested:
		return t.tested(o, x), true
	default:
		return o, false
	}
	return o, true
}

// counted makes the observation of a count; it is false where its numbers are none of one.
func (m *Observation) counted(x *model.Counted) bool {
	switch {
	case x.What.Text == model.Chit && len(x.Kernels) > 0:
		n := kernels(x.Of)
		share := x.Kernels[0].SI / n
		p := min(max(share, 0.02), 0.98)
		m.Value, m.Error = share, math.Hypot(chitError, math.Sqrt(p*(1-p)/n))
		m.lasts = chitError * chitError / (m.Error * m.Error) // chance is anew each time
		m.expects = func(s *forecast.Sight) float64 { return s.Chit }
	case x.What.Text == model.Acrospire && len(x.Kernels) == len(lengths):
		length, n := MeanLength(x.Kernels)
		m.Value, m.Error = length, math.Hypot(lengthError, kernelSpread/math.Sqrt(n))
		m.lasts = lengthError * lengthError / (m.Error * m.Error)
		m.expects = classLength
	default:
		return false
	}
	return true
}

const zeroC = quantity.ZeroCelsius

func kernels(of *model.Quantity) float64 {
	if of == nil || !(of.SI >= 1) {
		return fallback
	}
	return of.SI
}

// lengths are the middles of the classes in which acrospires are counted, as a share
// of the kernel; what is longer than the kernel is taken as a tenth longer.
var lengths = [...]float64{0, 0.125, 0.375, 0.625, 0.875, 1.1}

// MeanLength gives the mean length of the counted acrospires, and how many there are.
func MeanLength(counts []model.Quantity) (length, n float64) {
	for i, c := range counts {
		n += c.SI
		length += c.SI * lengths[i]
	}
	if n == 0 {
		return 0, 1
	}
	return length / n, n
}

// classLength is the mean length that counting by classes would give.
func classLength(s *forecast.Sight) float64 {
	if !s.Growing {
		return math.NaN()
	}
	sum := 0.0
	for i, share := range s.Classes {
		sum += share * lengths[i]
	}
	return sum
}

// rubbed is the modification between which a kernel rubs out so.
func rubbed(word string) (lower, higher float64) {
	switch word {
	case grain.Gummy.String():
		return 0, grain.ModificationAt(grain.Gritty)
	case grain.Gritty.String():
		return grain.ModificationAt(grain.Gritty), grain.ModificationAt(grain.Chalky)
	}
	return grain.ModificationAt(grain.Chalky), 1
}

// Expect is what a forecast gives for the reading, of a thermometer that is so many
// kelvin off; NaN where it has nothing for it.
func (m *Observation) Expect(f *forecast.Forecast, offset float64) float64 {
	s := m.Sight(f)
	if s == nil {
		return math.NaN()
	}
	return m.expectOf(s, offset)
}

// expectOf is what is expected of the reading in a state of the batch.
func (m *Observation) expectOf(s *forecast.Sight, offset float64) float64 {
	v := m.scale * m.expects(s)
	if model.Thermometer(m.Reading) != nil {
		v += offset
	}
	return v
}

// Sight is the state that a forecast sees at the time of the reading, nil where it does
// not come so far.
func (m *Observation) Sight(f *forecast.Forecast) *forecast.Sight {
	switch {
	case m.at != nil:
		return atEnd(f, m.at)
	case m.look < 0:
		return atEnd(f, model.After(m.Reading))
	case m.look < len(f.Seen):
		return &f.Seen[m.look]
	}
	return nil
}

// Scale is the weight on the scale for one of the whole batch: that of the bag is less.
func (m *Observation) Scale() float64 { return m.scale }

// atEnd is what is to be seen of the weight at the end of a step.
func atEnd(f *forecast.Forecast, name *model.StepName) *forecast.Sight {
	for _, st := range f.Stages {
		if len(st.Steps) > 0 && string(st.Kind) == name.Kind.Text && st.Number >= name.Number {
			return endOf(f, st, st.Steps[len(st.Steps)-1])
		}
		for _, s := range st.Steps {
			if string(s.Kind) != name.Kind.Text {
				continue
			}
			if name.Number == 0 || s.Nth == name.Number {
				return endOf(f, st, s)
			}
		}
	}
	return nil
}

func endOf(f *forecast.Forecast, st forecast.Stage, s forecast.Step) *forecast.Sight {
	dry := s.WeightEnd * (1 - s.MoistureEnd)
	return &forecast.Sight{At: s.End, Stage: st.Kind, Of: st.Of, Moisture: s.MoistureEnd, Weight: s.WeightEnd, Dry: dry, Lost: 1 - dry/f.DryMass, Beyond: f.Beyond != nil && s.End > f.Beyond.At}
}

// unhad is the residual of a reading that a forecast has nothing for, such as the
// air off the kiln while the grain still grows.
// It costs more than any slip of the pen that is still believed.
const unhad = 30.0

// misses is how far the reading is from what a forecast has for it, in its own errors. Where the
// model ends before it, nothing is held against it: of what is not forecast that is 0.
func (m *Observation) misses(f *forecast.Forecast, offset float64) float64 {
	expected := m.Expect(f, offset)
	if s := m.Sight(f); s != nil && s.Beyond && math.IsNaN(expected) {
		return 0
	}
	return m.Residual(expected)
}

// Residual is how far the reading is from what was expected, in its own errors.
func (m *Observation) Residual(expected float64) float64 {
	switch {
	case math.IsNaN(expected):
		return unhad
	case model.Rub(m.Reading) != "":
		return (min(max(expected, m.lower), m.higher) - expected) / m.Error
	}
	return (m.Value - expected) / m.Error
}
