package reckon

import (
	"fmt"
	"slices"

	"gonum.org/v1/gonum/stat"

	"maltwright/lang/quantity"
)

// Sample is grain weighed before and after the oven, in its dish or without.
type Sample struct{ Wet, Dried quantity.Quantity }

// MoistureResult is the moisture of one or more oven samples, wet basis, 0 to 1.
type MoistureResult struct {
	Mean      float64
	Each      []float64
	Deviation float64 // standard deviation, n − 1; 0 for a single sample
	Working   []Step
}

// Moisture gives the moisture of samples dried in an oven to a constant weight:
//
//	w = (wet − dried) / (wet − tare)
//
// on the wet basis, with the weights in any unit; tare is the empty dish that
// stands in both, or nil. Several samples are averaged, each counting once. It
// returns an *Error for no sample, for weights that are not above nothing, for a
// dried weight above the wet, or for one that is not above the tare.
func Moisture(samples []Sample, tare *quantity.Quantity) (MoistureResult, error) {
	var r MoistureResult
	if len(samples) == 0 {
		return r, &Error{"no sample is given", "give its weight before and after the oven"}
	}
	for i, s := range samples {
		number := i + 1
		if len(samples) == 1 {
			number = 0
		}
		w, err := r.sample(number, s, tare)
		if err != nil {
			return MoistureResult{}, err
		}
		r.Each = append(r.Each, w)
	}
	r.Mean = r.Each[0]
	if len(samples) > 1 {
		r.Mean, r.Deviation = stat.MeanStdDev(r.Each, nil)
		r.Working = append(r.Working, Mean{len(samples), percents(r.Mean)},
			Scatter{percents(slices.Min(r.Each)), percents(slices.Max(r.Each)), r.Deviation})
	}
	return r, nil
}

// numbered is " 2" for the second of several, and "" for the only one.
func numbered(sample int) string {
	if sample == 0 {
		return ""
	}
	return fmt.Sprintf(" %d", sample)
}

func (r *MoistureResult) sample(number int, s Sample, tare *quantity.Quantity) (float64, error) {
	wet, err := weight("wet weight"+numbered(number), s.Wet)
	if err != nil {
		return 0, err
	}
	dried, err := weight("dried weight"+numbered(number), s.Dried)
	if err != nil {
		return 0, err
	}
	if dried > wet {
		return 0, &Error{fmt.Sprintf("dried weight%s: %s is above the wet weight, %s", numbered(number), s.Dried, s.Wet),
			"an oven only takes water away; give the wet weight first, and weigh with the same dish"}
	}
	water, grain := like(wet-dried, s.Wet), given(s.Wet)
	r.Working = append(r.Working, Water{number, given(s.Wet), given(s.Dried), water})
	if tare != nil {
		net, err := takeOff(number, s, *tare)
		if err != nil {
			return 0, err
		}
		grain = like(net, s.Wet)
		r.Working = append(r.Working, Net{number, given(s.Wet), given(*tare), grain})
	}
	w := water.SI / grain.SI
	r.Working = append(r.Working, OfSample{number, water, grain, percents(w)})
	return w, nil
}

// takeOff gives the wet weight without the dish.
func takeOff(number int, s Sample, tare quantity.Quantity) (float64, error) {
	if err := kind("tare", tare, quantity.Mass, "5 g"); err != nil {
		return 0, err
	}
	switch {
	case tare.SI < 0:
		return 0, &Error{fmt.Sprintf("tare: %s is below nothing", tare), "give the weight of the empty dish"}
	case tare.SI >= s.Dried.SI:
		return 0, &Error{fmt.Sprintf("tare: %s leaves no grain of the dried weight%s, %s", tare, numbered(number), s.Dried),
			"give the weights with the dish in them, or leave the tare out"}
	}
	return s.Wet.SI - tare.SI, nil
}
