package follow

import (
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
	"maltwright/sim/visits"
)

// A forecast has the malt cool in its time, and a roast goes where it forecasts none: so malt
// that was read hot when it should have been cool is told, and is given as long again.

const (
	hotBy      = 15.0 // K above what the cooling asks, from which malt counts as hot yet
	binsAt     = 40.0 // °C, where no cooling says it: malt is put away cool (common practice)
	coolsByNow = 0.75 // of the cooling, by which malt of a forecast is all but cool
)

// hot is malt that was read when the forecast had it all but cool, and was not.
type hot struct {
	read *model.Read
	of   model.Stage
	at   source.Place // of the cooling
	when float64      // s from the first soak, of the reading
	off  float64      // s, when the forecast has it taken off
	cool float64      // s, when it may be cool, had it begun to cool as it was read
}

// hot finds malt that is hot yet; nil where nothing says so.
func (f *Following) hot() *hot {
	x := f.lastMalt()
	st, cool, ran := f.cooling()
	if x == nil || ran == nil {
		return nil
	}
	asked := binsAt
	if at := cool.Warmth().At; at != nil {
		asked = at.High.SI - zeroC
	}
	h := &hot{read: x, of: st, at: cool.Place(), when: x.When().Sub(f.Trial.Batch.Began.Time).Seconds(), off: ran.End}
	h.cool = max(h.when+ran.End-ran.Start, f.Now)
	if x.Temperature.Low.SI-zeroC <= asked+hotBy || h.when < ran.Start+coolsByNow*(ran.End-ran.Start) {
		return nil
	}
	return h
}

const zeroC = quantity.ZeroCelsius

// lastMalt is the last reading of the malt's temperature, nil where the record says that it is
// off the kiln, or cooled, since.
func (f *Following) lastMalt() (last *model.Read) {
	for _, o := range f.Trial.Observations {
		x := o.Reading
		if after := model.After(x); model.Clean(x) || after != nil && (after.Kind.Text == string(model.CoolStep) || after.Kind.Text == string(model.DeculmStage)) {
			last = nil
			continue
		}
		if r, ok := x.(*model.Read); ok && r.Temperature.Where == vocabulary.PlaceMalt && !r.When().IsZero() {
			last = r
		}
	}
	return last
}

// cooling is the last cooling of the last kiln, and how the forecast runs it; nil for none.
func (f *Following) cooling() (st model.Stage, cool model.Step, ran *forecast.Step) {
	for i := range f.Centre.Stages {
		for j := range f.Centre.Stages[i].Steps {
			if s := &f.Centre.Stages[i].Steps[j]; s.Kind == model.CoolStep {
				st, ran = f.Centre.Stages[i].Of, s
			}
		}
	}
	if ran == nil {
		return nil, nil, nil
	}
	for _, s := range model.StepsOf(st) {
		if s.Place() == ran.Place {
			return st, s, ran
		}
	}
	return nil, nil, nil
}

// later moves what is done with the malt once it is cool to when it may be.
func (h *hot) later(list []visits.Task) []visits.Task {
	if h == nil || h.cool <= h.off {
		return list
	}
	for i := range list {
		if list[i].At >= h.off-1 {
			list[i].At += h.cool - h.off
		}
	}
	return list
}
