package records

import (
	"math"

	"maltwright/lang/process"
	"maltwright/sim/evidence"
)

const (
	coldest = 20.0 // °C, of air off a kiln, whatever comes onto it
	indoors = 6.0  // K by which a room may differ from what the site says, besides the thermometer
)

// loosen takes back what is said of temperatures that an honest record may have
// otherwise: of a room, which nobody holds; and on the kiln, where the record may be
// ahead of the forecast or behind it, and the air above the malt rises by tens of kelvin
// within an hour when the drying front comes through.
func (h *held) loosen() {
	for i := range h.trial.Items {
		item := &h.trial.Items[i]
		t, s := item.Reading.Temperature, item.Sight(h.centre)
		if t == nil || s == nil || math.IsNaN(h.off[i]) {
			continue
		}
		switch expected := item.Expect(h.centre, h.offset); {
		case math.IsNaN(expected):
		case t.Where == "air" || t.Where == "room":
			h.off[i] = beyond(item, expected-indoors, expected+indoors)
		case t.Where == "air-off" || t.Where == "malt":
			low := min(coldest, expected)
			_, high := h.heat()
			h.off[i] = beyond(item, low, max(high+h.offset, low))
		case t.Where == "air-on" || t.Where == "oven":
			low, high := h.heat()
			h.off[i] = beyond(item, min(low+h.offset, expected), max(high+h.offset, expected))
		}
	}
}

// beyond is how far a reading lies outside of two values, in its errors.
func beyond(item *evidence.Item, low, high float64) float64 {
	return (item.Observed - min(max(item.Observed, low), high)) / item.Error
}

// heat is the least and the most that the kiln is set to, °C.
func (h *held) heat() (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, st := range h.centre.Stages {
		for _, s := range st.Steps {
			if st.Kind == process.KilnStage && s.Temperature.Known && s.Kind != process.Cool {
				low, high = min(low, s.Temperature.From), max(high, s.Temperature.To)
			}
		}
	}
	return low, high
}
