package follow

import (
	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

// digits finds a number that would fit with two digits the other way round, or with the point
// elsewhere.
func (f *Following) digits(i int) (Doubt, bool) {
	if !f.inDoubt(i) {
		return Doubt{}, false
	}
	q, to, ok := f.number(i)
	if !ok {
		return Doubt{}, false
	}
	for _, n := range quantity.Slips(q) {
		if !f.fits(i, to(n.SI)) {
			continue
		}
		kind := Nought
		if n.Swapped {
			kind = Swapped
		}
		return Doubt{Kind: kind, Observation: i, Other: -1, Detail: n.Text}, true
	}
	return Doubt{}, false
}

// number is that of a reading as written, and how its SI value becomes one of the
// observation; false where there is none.
func (f *Following) number(i int) (q quantity.Quantity, to func(float64) float64, ok bool) {
	o := f.Judged[i].Observation
	switch x := o.Reading.(type) {
	case *model.Weighed:
		along := x.Weight.SI - o.Value
		return x.Weight.Quantity, func(si float64) float64 { return si - along }, true
	case *model.Read:
		return x.Temperature.Low, func(si float64) float64 { return si - quantity.ZeroCelsius }, x.Temperature.Low.SI == x.Temperature.High.SI
	case *model.Tested:
		return x.Found.Quantity, func(si float64) float64 { return si }, true
	case *model.Counted:
		if x.What.Text == model.Chit && x.Kernels[0].SI > 0 {
			one := o.Value / x.Kernels[0].SI
			return x.Kernels[0].Quantity, func(n float64) float64 { return n * one }, true
		}
	}
	return q, nil, false
}

// elsewhen finds what cannot be read at its time and fits at another.
func (f *Following) elsewhen(i int) (Doubt, bool) {
	if _, ok := f.outOfPlace(i); !ok {
		return Doubt{}, false
	}
	return f.meantTime(i)
}

// otherTime finds a reading that disagrees at its time and fits at another.
func (f *Following) otherTime(i int) (Doubt, bool) {
	if !f.inDoubt(i) {
		return Doubt{}, false
	}
	return f.meantTime(i)
}

func (f *Following) meantTime(i int) (Doubt, bool) {
	x := f.Judged[i].Observation.Reading
	if model.After(x) != nil || model.Clean(x) { // the steps of the record go by its time
		return Doubt{}, false
	}
	at, ok, err := f.Trial.OtherTime(i, f.Mean)
	return Doubt{Kind: OtherTime, Observation: i, Other: -1, Value: at}, err == nil && ok
}
