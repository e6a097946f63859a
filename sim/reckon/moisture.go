package reckon

import (
	"fmt"
	"math"
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
	Answer    Answer
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
		w, err := r.addSample(numbered(i, len(samples)), s, tare)
		if err != nil {
			return MoistureResult{}, err
		}
		r.Each = append(r.Each, w)
	}
	r.Mean = r.Each[0]
	if len(samples) > 1 {
		r.Mean, r.Deviation = stat.MeanStdDev(r.Each, nil)
	}
	r.show()
	return r, nil
}

// numbered is " 2" for the second of several.
func numbered(i, of int) string {
	if of == 1 {
		return ""
	}
	return fmt.Sprintf(" %d", i+1)
}

func (r *MoistureResult) addSample(number string, s Sample, tare *quantity.Quantity) (float64, error) {
	wet, err := readWeight("wet weight"+number, s.Wet)
	if err != nil {
		return 0, err
	}
	dried, err := readWeight("dried weight"+number, s.Dried)
	if err != nil {
		return 0, err
	}
	if dried > wet {
		return 0, &Error{fmt.Sprintf("dried weight%s: %s is above the wet weight, %s", number, s.Dried, s.Wet),
			"an oven only takes water away; give the wet weight first, and weigh with the same dish"}
	}
	water, grain := s.Wet.Like(wet-dried), s.Wet.String()
	r.Answer.addLine("water"+number, fmt.Sprintf("%s − %s = %s", s.Wet, s.Dried, water))
	net := wet
	if tare != nil {
		if net, err = r.takeOff(number, s, *tare); err != nil {
			return 0, err
		}
		grain = s.Wet.Like(net)
		r.Answer.addLine("grain"+number, fmt.Sprintf("%s − %s = %s", s.Wet, tare, grain))
	}
	w := (wet - dried) / net
	r.Answer.addLine("moisture"+number, fmt.Sprintf("%s / %s = %s", water, grain, percent().Like(w)))
	return w, nil
}

// takeOff gives the wet weight without the dish.
func (r *MoistureResult) takeOff(number string, s Sample, tare quantity.Quantity) (float64, error) {
	if err := kind("tare", tare, quantity.Mass, "5 g"); err != nil {
		return 0, err
	}
	switch {
	case tare.SI < 0:
		return 0, &Error{fmt.Sprintf("tare: %s is below nothing", tare), "give the weight of the empty dish"}
	case tare.SI >= s.Dried.SI:
		return 0, &Error{fmt.Sprintf("tare: %s leaves no grain of the dried weight%s, %s", tare, number, s.Dried),
			"give the weights with the dish in them, or leave the tare out"}
	}
	return s.Wet.SI - tare.SI, nil
}

func (r *MoistureResult) show() {
	a, like := &r.Answer, percent()
	if len(r.Each) == 1 {
		a.addFigure("moisture", "moisture", like, r.Mean)
		return
	}
	a.addFigure("moisture", "mean moisture", like, r.Mean)
	a.addFigure("lowest", "lowest", like, slices.Min(r.Each))
	a.addFigure("highest", "highest", like, slices.Max(r.Each))
	a.Figures = append(a.Figures, points("deviation", "standard deviation", r.Deviation))
	for i, w := range r.Each {
		a.addFigure(fmt.Sprintf("sample_%d", i+1), fmt.Sprintf("sample %d", i+1), like, w)
	}
	a.addLine("mean", fmt.Sprintf("of %d samples = %s", len(r.Each), like.Like(r.Mean)))
	a.addLine("spread", fmt.Sprintf("%s to %s, standard deviation %s", like.Like(slices.Min(r.Each)), like.Like(slices.Max(r.Each)), a.Figures[3].Text))
}

// points is a difference of shares, in per cent.
func points(key, label string, si float64) Figure {
	return Figure{key, label, tenFigures(100 * si), "points", tenFigures(si), fmt.Sprintf("%.2f points", math.Abs(100*si))}
}
