package curve

import (
	"maltwright/cmd/answer"
	"maltwright/cmd/answer/progress"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
)

// Reading is what was read of a batch, in the one of its fields that is not nil; of a weight there are two.
type Reading struct {
	At          answer.Seconds
	Text        string                      // as written
	Place       string                      // of a thermometer, as a record names it
	Doubted     bool                        // it cannot be right, or nothing explains it
	Weight      *Measured[answer.Kilograms] // of the whole batch, drained: of a bag it is reckoned by its share
	ByWeight    *Measured[answer.Share]     // the moisture that such a weight leaves beside the dry matter of the forecast
	Moisture    *Measured[answer.Share]     // as tested
	Temperature *Measured[answer.Celsius]
	Chit        *Measured[answer.Share]
	Acrospire   *Measured[answer.Number]
}

// Measured is what was read, and the standard deviation of such a reading.
type Measured[T answer.Single] struct{ Value, Error T }

// read adds a reading beside the forecast that stands for the batch. One whose time nothing tells, or
// that has no curve, is left out.
func (c *Curve) read(o *evidence.Observation, f *forecast.Forecast, r progress.Reading) {
	s := o.Sight(f)
	out := Reading{Text: r.Text, Doubted: r.Doubt != "" || r.Struck}
	switch {
	case !r.At.IsZero():
		out.At = answer.Seconds(r.At.Sub(c.Start).Seconds())
	case s != nil:
		out.At = answer.Seconds(s.At)
	default:
		return
	}
	out.Temperature, out.Moisture, out.Chit, out.Acrospire = taken(r.Temperature), taken(r.Moisture), taken(r.Chit), taken(r.Acrospire)
	if t := model.Thermometer(o.Reading); t != nil {
		out.Place = t.Where
	}
	if r.Weight != nil {
		scale := answer.Kilograms(o.Scale())
		out.Weight = &Measured[answer.Kilograms]{r.Weight.Observed / scale, r.Weight.Error / scale}
		out.ByWeight = byWeight(out.Weight, s)
	}
	if out.Weight != nil || out.Temperature != nil || out.Moisture != nil || out.Chit != nil || out.Acrospire != nil {
		c.Readings = append(c.Readings, out)
	}
}

func taken[T answer.Single](x *progress.Compared[T]) *Measured[T] {
	if x == nil {
		return nil
	}
	return &Measured[T]{x.Observed, x.Error}
}

// byWeight is the moisture of a weight beside the dry matter that the forecast has left, w = 1 − dry/weight,
// with the error dry/weight²·σ of the weight; nil where none is known, or the weight is less than that.
func byWeight(x *Measured[answer.Kilograms], s *forecast.Sight) *Measured[answer.Share] {
	w, ok := progress.MoistureByWeight(float64(x.Value), s)
	if !ok {
		return nil
	}
	return &Measured[answer.Share]{answer.Share(w), answer.Share((1 - w) * float64(x.Error/x.Value))}
}
