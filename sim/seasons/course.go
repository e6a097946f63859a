package seasons

import (
	"cmp"
	"math"

	"maltwright/lang/model"
	"maltwright/lang/sorted"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// Moment is what was read of a batch at one time. What was not is NaN.
type Moment struct {
	At       float64 // s from the beginning
	Part     float64 // weight of the whole batch as a part of the charge, without tare; of a bag by its share
	Moisture float64 // wet basis: as tested, or by the weight and the dry matter that the forecast has left
	Tested   bool    // it was tested
	Bed      float64 // °C
}

// Course is what the record says of a batch over time, in the order of the clock. Weights that cannot be are
// left out, and so is what has no time of its own. The forecast is that which Of takes.
func Course(b *model.Batch, f *forecast.Forecast) (list []Moment) {
	r := &record{b: b, f: f}
	for _, x := range r.b.Readings {
		at := r.since(x.When())
		if !at.Known() {
			continue
		}
		m := Moment{At: at.Value, Part: math.NaN(), Moisture: math.NaN(), Bed: math.NaN()}
		switch x := x.(type) {
		case *model.Weighed:
			if w := r.weight(x); w.Known() && r.charge() > 0 {
				m.Part = w.Value / r.charge()
				m.Moisture = r.moistureThen(w.Value, at.Value, x.Clean)
			}
		case *model.Read:
			if x.Temperature.Where == vocabulary.PlaceBed {
				m.Bed = x.Temperature.Mid() - zeroC
			}
		}
		if !math.IsNaN(m.Part) || !math.IsNaN(m.Moisture) || !math.IsNaN(m.Bed) {
			list = append(list, m)
		}
	}
	list = append(list, r.testedUntil(list)...)
	sorted.Stable(list, func(a, b Moment) int { return cmp.Compare(a.At, b.At) })
	return list
}

// testedUntil are the tested moistures until the last of what was read: what a laboratory finds later is
// of malt in store.
func (r *record) testedUntil(list []Moment) (tests []Moment) {
	last := 0.0
	for _, m := range list {
		last = max(last, m.At)
	}
	for i := range r.b.Tested {
		x := &r.b.Tested[i]
		if at := r.since(x.When()); x.What.Text == vocabulary.AnalysisMoisture && at.Known() && at.Value <= last {
			tests = append(tests, Moment{At: at.Value, Part: math.NaN(), Moisture: x.Found.SI, Tested: true, Bed: math.NaN()})
		}
	}
	return tests
}

// moistureThen is the moisture of a weight, kg, at a time: beside the dry matter that the forecast has left by
// then, in a straight line between the ends of its steps. It is NaN where there is no forecast, or the weight is
// less than that.
func (r *record) moistureThen(weight, at float64, clean bool) float64 {
	share, ok := r.leftAt(at, clean)
	if !ok {
		return math.NaN()
	}
	w, _ := r.moisture(weight, share)
	if !(w > 0 && w < 1) {
		return math.NaN()
	}
	return w
}

// leftAt is the share of the dry matter that the forecast has left at a time. Rootlets are off in clean malt.
func (r *record) leftAt(at float64, clean bool) (share float64, ok bool) {
	if r.f == nil || r.f.BrokenOff() || !(r.f.DryMass > 0) {
		return 0, false
	}
	from, left := 0.0, 1.0
	for _, st := range r.f.Stages {
		off := st.Kind == model.DeculmStage
		if off && !clean {
			break
		}
		for _, s := range st.Steps {
			then := s.WeightEnd * (1 - s.MoistureEnd) / r.f.DryMass
			if !clean && at < s.End && s.End > from {
				return left + (then-left)*max(0, at-from)/(s.End-from), true
			}
			from, left = s.End, then
		}
		if off {
			break
		}
	}
	return left, left > 0 && left <= 1
}
