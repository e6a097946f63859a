package evidence

import (
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// How exact a weight is, model and all, as a share of it, on a scale of which nothing is
// said.
const (
	drippingError = 0.012 // drained: what hangs on the kernels (common practice)
	dryError      = 0.008 // behind the steep
	cleanError    = 0.015 // of malt without rootlets: some grain goes with them
	bagError      = 0.02  // of a bag of 100 g
)

// unknownScale is the part of each of these that such a scale has, as a share of what it
// shows: 10 to 50 g of 5 to 10 kg, not levelled (common practice).
const unknownScale = 0.004

// weighed makes the observation of a weight: that of the grain alone.
func (t *Trial) weighed(o Observation, x *model.Weighed) (Observation, bool) {
	o.expects = func(s *forecast.Sight) float64 { return s.Weight }
	net, raw, _ := t.Batch.Net(x)
	o.Value = net
	relative := dryError
	switch {
	case x.OfBag && (raw == nil || t.Process.Charge == nil || !(t.Process.Charge.SI > 0)):
		return o, false
	case x.OfBag:
		o.scale, relative = raw.SI/t.Process.Charge.SI, bagError
	case x.Clean:
		relative = cleanError
		if t.Process.Grain.Kilned() {
			break // it has no rootlets, and is clean as it comes off the kiln
		}
		o.at = &model.StepName{Kind: model.Word{Text: string(model.DeculmStage)}}
	case x.After != nil && x.After.Kind.Text == string(model.SoakStep):
		relative = drippingError
	}
	o.Error, o.lasts = t.weighingError(x, net, relative)
	o.Struck = t.Batch.Impossible(x, forecast.MostMoisture(t.Process)) != ""
	return o, net > 0
}

// weighingError is the standard error of a weight of grain, kg, that is known to so much
// of itself on a scale of which nothing is said: σ² = (relative² − 0.004²)·net² + σ_s², with
// σ_s = 0.004 of what stood on such a scale. On a scale of a known division d a weight lies
// anywhere within d of what is shown, and σ_s = d/√12. With it goes the share of
// its variance that lasts to the next weighing, which is the part of the grain.
func (t *Trial) weighingError(x *model.Weighed, net, relative float64) (sd, lasts float64) {
	scale := unknownScale * x.Weight.SI
	if s := t.division(x); s > 0 {
		scale = s / math.Sqrt(12)
	}
	own := net * math.Sqrt(relative*relative-unknownScale*unknownScale)
	sd = math.Hypot(own, scale)
	if !(sd > 0) {
		return sd, 0
	}
	return sd, own * own / (sd * sd)
}

// division is that of the scale of a weighing, kg; 0 where it is not known.
func (t *Trial) division(x *model.Weighed) float64 {
	if s := t.Batch.ScaleOf(x); s != nil && s.Division != nil {
		return s.Division.SI
	}
	return 0
}

// Assumed is what is taken for granted of the readings.
func (t *Trial) Assumed() []forecast.Assumption {
	return append(t.scaleError(), t.byHeat...)
}

func (t *Trial) scaleError() []forecast.Assumption {
	unknown := func(o Observation) bool {
		x, ok := o.Reading.(*model.Weighed)
		return ok && t.division(x) == 0
	}
	if !slices.ContainsFunc(t.Observations, unknown) {
		return nil
	}
	return []forecast.Assumption{forecast.ScaleError{Share: unknownScale}}
}
