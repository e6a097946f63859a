package records

import (
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
)

const (
	coldest = 20.0 // °C, of air off a kiln, whatever comes onto it
	indoors = 6.0  // K by which a room may differ from what the site says, besides the thermometer

	early     = hour // by which a step of the kiln may begin before the least that those before it take, s
	swings    = 3.0  // K by which a thermostat may heat above what it is set to (common practice)
	heatError = 1.2  // K, standard deviation of a thermometer in air that is heated so
)

// loosen takes back what is said of temperatures that an honest record may have
// otherwise: of a room, which nobody holds; and on the kiln, where the record may be
// ahead of the forecast or behind it, and the air above the malt rises by tens of kelvin
// within an hour when the drying front comes through.
func (h *held) loosen() {
	for i := range h.trial.Observations {
		o := &h.trial.Observations[i]
		t, s := model.Thermometer(o.Reading), o.Sight(h.centre)
		if t == nil || s == nil || math.IsNaN(h.off[i]) {
			continue
		}
		switch expected := o.Expect(h.centre, h.offset); {
		case math.IsNaN(expected):
		case t.Where == vocabulary.PlaceAir || t.Where == vocabulary.PlaceRoom:
			h.off[i] = beyond(o, expected-indoors, expected+indoors)
		case s.Stage != model.KilnStage: // a bed with air blown through it is as warm as forecast
		case t.Where == vocabulary.PlaceAirOff || t.Where == vocabulary.PlaceMalt:
			low := min(coldest, expected)
			_, high := h.heat(o.Reading)
			high = max(high+h.offset, low)
			if h.off[i] = beyond(o, low, high); h.off[i] > 0 && h.steady() {
				h.off[i] = max(h.off[i], (o.Value-high-swings)/heatError)
			}
		case t.Where == vocabulary.PlaceAirOn || t.Where == vocabulary.PlaceOven:
			low, high := h.heat(o.Reading)
			h.off[i] = beyond(o, min(low+h.offset, expected), max(high+h.offset, expected))
		}
	}
}

// beyond is how far a reading lies outside of two values, in its errors.
func beyond(o *evidence.Observation, low, high float64) float64 {
	return (o.Value - min(max(o.Value, low), high)) / o.Error
}

// steady tells whether a thermostat holds the heat of the kiln: a fire of wood has none.
func (h *held) steady() bool {
	kilns := model.Every[*model.Kilning](h.trial.Process)
	return len(kilns) > 0 && !slices.ContainsFunc(kilns, func(st *model.Kilning) bool {
		return st.Kiln == nil || st.Kiln.Fired.Text != vocabulary.FiredElectric && st.Kiln.Fired.Text != vocabulary.FiredGas
	})
}

// heat is the least that the kiln is set to, and the most by the time of a reading, °C:
// nothing in it is hotter than the fire has been. A line behind the reading which says
// that a step had ended bounds it; else the steps begin no sooner than they can.
func (h *held) heat(x model.Reading) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	ended, open := h.nextEnd(x), h.openFor(x)
	reached, began := false, math.NaN() // on the first of several kilns
	for _, st := range h.centre.Stages {
		if st.Kind != model.KilnStage {
			continue
		}
		here := !h.elsewhere(x, st)
		for _, s := range st.Steps {
			if math.IsNaN(began) {
				began = s.Start
			}
			kind := string(s.Kind)
			if here && s.Temperature.Known && s.Kind != model.CoolStep {
				low = min(low, s.Temperature.From)
				if math.IsInf(high, -1) || !reached && quicker*(s.Start-began) <= open+early {
					high = max(high, s.Temperature.To)
				}
			}
			reached = reached || ended != nil && ended.Kind.Text == kind && ended.Number <= s.Nth
		}
	}
	return low, high
}

// elsewhere tells whether a reading is of another kiln than that of a stage: an oven without a
// fan has one air, and the others have one before and one behind the malt. Where the process
// has only one sort of kiln it is of any.
func (h *held) elsewhere(x model.Reading, st forecast.Stage) bool {
	where := model.Thermometer(x).Where
	if where == vocabulary.PlaceMalt {
		return false
	}
	oven := where == vocabulary.PlaceOven
	return forecast.InStillOven(st.Of) != oven && slices.ContainsFunc(h.centre.Stages, func(other forecast.Stage) bool {
		return other.Kind == model.KilnStage && forecast.InStillOven(other.Of) == oven
	})
}

// nextEnd is the first step of the kiln of which a line behind a reading says that it had
// ended; nil where none does.
func (h *held) nextEnd(x model.Reading) *model.StepName {
	behind := false
	for i := range h.trial.Batch.Readings {
		y := h.trial.Batch.Readings[i]
		if behind && model.After(y) != nil && vocabulary.PhaseAfter(model.After(y).Kind.Text) == drying {
			return model.After(y)
		}
		behind = behind || y.Place() == x.Place()
	}
	return nil
}

// openFor is for how long the kiln can have been heated by the time of a reading, s: since
// the line before by which the piece still grew or withered. Where none says that, nobody
// knows.
func (h *held) openFor(x model.Reading) float64 {
	since := math.Inf(1)
	for i := range h.trial.Batch.Readings {
		y := h.trial.Batch.Readings[i]
		if y.Place() == x.Place() {
			break
		}
		if !y.When().IsZero() && !x.When().IsZero() && model.After(y) != nil && vocabulary.PhaseAfter(model.After(y).Kind.Text) == growing {
			since = x.When().Sub(y.When().Time).Seconds()
		}
	}
	return since
}
