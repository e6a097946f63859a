package records

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/sim/grain"
	"maltwright/sim/infer/evidence"
)

// words are those of what was read, and where they stand.
func words(x model.Reading) (string, source.Place) {
	switch x := x.(type) {
	case *model.Weighed:
		return weightWords(x), x.Weight.Place
	case *model.Read:
		return fmt.Sprintf("%s %s", x.Temperature.Where, x.Temperature.Range.Range), x.Temperature.Place
	case *model.Tested:
		return fmt.Sprintf("a tested moisture of %s", x.Found), x.Found.Place
	case *model.Felt:
		return "kernels that rub " + x.Rub.Text, x.Rub.Place
	case *model.Counted:
		if x.What.Text == model.Chit {
			return fmt.Sprintf("%.0f of %.0f kernels chitted", x.Kernels[0].SI, x.Of.SI), x.Kernels[0].Place
		}
	}
	return "these acrospires", x.Place()
}

// weightWords writes a weight with what it was weighed in: 8.33 kg in "bucket".
func weightWords(x model.Reading) string {
	w, ok := x.(*model.Weighed)
	switch {
	case !ok:
		return ""
	case w.In == nil:
		return w.Weight.String()
	}
	return fmt.Sprintf("%s in %q", w.Weight, w.In.Name)
}

// likely is what a reading should have been, in the unit written.
func (r *record) likely(h *held, i int, expected float64) string {
	o := &h.trial.Observations[i]
	low, high := expected-near*o.Error, expected+near*o.Error
	switch x := o.Reading.(type) {
	case *model.Weighed:
		low, high = expected-near*o.Error*expected/o.Value, expected+near*o.Error*expected/o.Value // as exact as it is heavy
		tare := r.tareOf(o)
		return between(x.Weight.Quantity, low+tare, high+tare)
	case *model.Read:
		return between(x.Temperature.Low, low+zeroC, high+zeroC)
	case *model.Tested:
		return between(x.Found.Quantity, max(low, 0), high)
	case *model.Felt:
		return grain.RubAt(min(max(expected, 0), 1)).String()
	case *model.Counted:
		if x.What.Text == model.Chit {
			return fmt.Sprintf("%.0f to %.0f of %.0f", x.Of.SI*max(low, 0), x.Of.SI*min(high, 1), x.Of.SI)
		}
	}
	return fmt.Sprintf("a mean length of about %.2f instead of %.2f", max(expected, 0), o.Value)
}

// between writes what lies between two values in the unit of a quantity.
func between(q quantity.Quantity, low, high float64) string {
	from, to := about(q, low), about(q, high)
	if from == to { // it is written too coarsely to show that they differ
		from, to = q.Like(low), q.Like(high)
	}
	if from == to {
		return "about " + to
	}
	number, unit, one := strings.Cut(from, " ")
	if one && !strings.Contains(unit, " ") {
		from = number
	}
	return from + " to " + to
}

// about writes a value in the unit of a quantity, no finer than that: of a temperature
// to the degree.
func about(q quantity.Quantity, si float64) string {
	text := q.Like(si)
	number, unit, one := strings.Cut(text, " ")
	v, err := strconv.ParseFloat(number, 64)
	if err != nil || !one || strings.Contains(unit, " ") {
		return text
	}
	digits := 0
	if _, fraction, has := strings.Cut(strings.Fields(q.String())[0], "."); has && q.Dimension != quantity.Temperature {
		digits = len(fraction)
	}
	return strconv.FormatFloat(v, 'f', digits, 64) + " " + unit
}

// slipOf is what would explain a reading, or "".
func (r *record) slipOf(h *held, i int) string {
	o := &h.trial.Observations[i]
	expected := o.Expect(h.centre, h.offset)
	if math.IsNaN(expected) {
		return r.otherTime(h, i)
	}
	for _, find := range slips {
		if hint := find(r, o, func(v float64) bool { return fits(o, v, expected) }); hint != "" {
			return hint
		}
	}
	return r.otherTime(h, i)
}

// fits tells whether a reading would agree if it had another value.
func fits(o *evidence.Observation, value, expected float64) bool {
	own := o.Error
	if model.Weight(o.Reading) != nil {
		own *= value / o.Value
	}
	return math.Abs(value-expected) <= near*own
}

// slips are what goes wrong between the scale and the book, the commonest first.
var slips = []func(*record, *evidence.Observation, func(float64) bool) string{
	func(r *record, m *evidence.Observation, fits func(float64) bool) string {
		if x, ok := m.Reading.(*model.Weighed); ok && x.In != nil {
			if fits(m.Value + x.In.Weighs.SI) {
				return fmt.Sprintf("it would fit without the weight of %q, %s: then leave out in %[1]q", x.In.Name, x.In.Weighs)
			}
			return ""
		}
		if t := r.batch.Tare; t != nil && model.Weight(m.Reading) != nil && fits(m.Value+t.SI) {
			return fmt.Sprintf("it would fit if the weight did not include the tare of %s; the record takes the tare off every such weight", t)
		}
		return ""
	},
	inHolder,
	anotherUnit,
	func(r *record, m *evidence.Observation, fits func(float64) bool) string {
		switch x := m.Reading.(type) {
		case *model.Weighed:
			return otherNumber(x.Weight.Quantity, fits, -r.tareOf(m))
		case *model.Read:
			return otherNumber(x.Temperature.Low, fits, -zeroC)
		case *model.Tested:
			return otherNumber(x.Found.Quantity, fits, 0)
		case *model.Counted:
			return otherCount(x, m, fits)
		}
		return ""
	},
}

// otherCount seeks the number of chitted kernels that was meant.
func otherCount(x *model.Counted, m *evidence.Observation, fits func(float64) bool) string {
	if x.What.Text != model.Chit || !(x.Kernels[0].SI > 0) {
		return ""
	}
	one := m.Value / x.Kernels[0].SI // a share or a number is read as a share
	return otherNumber(x.Kernels[0].Quantity, func(n float64) bool { return n*one <= 1 && fits(n*one) }, 0)
}

// inHolder is a weight of drained grain that is that of the grain with what it lay in.
func inHolder(r *record, m *evidence.Observation, fits func(float64) bool) string {
	x, ok := m.Reading.(*model.Weighed)
	if !ok || x.In != nil || x.OfBag {
		return ""
	}
	for _, h := range r.batch.Process.Holders() {
		if fits(m.Value - h.Weighs.SI) {
			return fmt.Sprintf("it would fit with the weight of %q, %s, included: then write in %[1]q after the weight", h.Name, h.Weighs)
		}
	}
	return ""
}

func anotherUnit(r *record, m *evidence.Observation, fits func(float64) bool) string {
	weight, heat := model.Weight(m.Reading), model.Thermometer(m.Reading)
	switch {
	case weight != nil && weight.Unit() != "lb" && fits(weight.SI*quantity.Pound-r.tareOf(m)):
		return "it would fit in pounds: correct the unit"
	case weight != nil && weight.Unit() != "kg" && fits(weight.SI/quantity.Pound-r.tareOf(m)):
		return "it would fit in kilograms: correct the unit"
	case weight != nil && weight.Unit() == "kg" && fits(weight.SI/1000-r.tareOf(m)):
		return "it would fit in grams: correct the unit"
	case weight != nil && weight.Unit() == "g" && fits(weight.SI*1000-r.tareOf(m)):
		return "it would fit in kilograms: correct the unit"
	case heat != nil && heat.Low.Unit() == "°C" && fits(quantity.Celsius(m.Value)):
		return "it would fit in °F: correct the unit"
	case heat != nil && heat.Low.Unit() == "°F" && fits(quantity.Fahrenheit(m.Value)):
		return "it would fit in °C: correct the unit"
	}
	return ""
}

// otherNumber seeks the number that was meant: with the point elsewhere, or with two
// neighbouring digits the other way round.
func otherNumber(q quantity.Quantity, fits func(float64) bool, shift float64) string {
	for _, n := range quantity.Slips(q) {
		switch {
		case !fits(n.SI + shift):
		case n.Swapped:
			return fmt.Sprintf("it would fit with two digits swapped: %s", n.Text)
		default:
			return fmt.Sprintf("it would fit with the decimal point moved: %s", n.Text)
		}
	}
	return ""
}

// otherTime seeks the time at which a reading was meant: in the other half of the day, or a
// day before or behind.
func (r *record) otherTime(h *held, i int) string {
	x := h.trial.Observations[i].Reading
	if model.After(x) != nil || model.Clean(x) {
		return "" // the steps of the record go by its time
	}
	at, ok, err := h.trial.OtherTime(i, h.z)
	if err != nil || !ok {
		return ""
	}
	was, meant := x.When().Time, r.batch.Began.Add(time.Duration(at*float64(time.Second)))
	if off := meant.Sub(was).Abs(); off < 24*time.Hour {
		return fmt.Sprintf("it would fit at %s: look at the time, morning and evening are easily mixed up", meant.Format("2006-01-02 15:04"))
	}
	return fmt.Sprintf("it would fit at %s: look at the date", meant.Format("2006-01-02 15:04"))
}
