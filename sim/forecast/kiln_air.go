package forecast

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/air"
	"maltwright/sim/kiln"
)

// weakBy is how many times the air that its heater warms to what the kiln reaches is more than
// the reading of either is off, so that some of it must be led back (common practice).
const weakBy = 1.1

// warmed is the air, m³/s at air-on, that the heater of a kiln warms from the room to the
// hottest that the kiln reaches, to °C: through a kiln that comes to that heat goes no more. It is
// Q·v(to)/(h(to) − h(room))/(1 − returns)/(1 − recovers), with Q what the heater gives the air, W.
// ok is false where the kiln does not say both.
func (r *run) warmed(k *model.Kiln) (flow, to float64, ok bool) {
	if k.Heater == nil || k.Reaches == nil {
		return 0, 0, false
	}
	_, to = bandOf(k.Reaches.Range)
	to = min(to, kiln.Hottest)
	flow, ok = r.warmedTo(k, to)
	return flow, to, ok
}

// warmedTo is the air that its heater warms to t °C, as warmed has it.
func (r *run) warmedTo(k *model.Kiln, to float64) (flow float64, ok bool) {
	room, err := air.FromRH(r.site.air, r.site.rh, r.site.pressure)
	if err != nil || to <= room.T {
		return 0, false
	}
	on := air.State{T: to, W: room.W, P: room.P}
	fresh := 1.0
	if k.Returns != nil {
		fresh = max(1-k.Returns.SI, 1-stewReturn)
	}
	if k.Recovers != nil { // dry malt lets the air through as warm as it comes on
		fresh *= 1 - k.Recovers.SI
	}
	return model.Given(k.Heater, k.Efficiency) * on.Volume() / (on.Enthalpy() - room.Enthalpy()) / fresh, true
}

// leastLeft is the least share of the heat that is reckoned to be left for the air, beside walls that take more.
const leastLeft = 0.1

// flaps gives the most air that is let through in a step, where fan or draught drive it, the heater is
// said, and the kiln reaches what is asked: its flaps are shut as far as the heat wants (common
// practice), and a tenth further, and by what the walls before the bed take. It is nil where an airflow is said, or nothing is known of it.
func (r *run) flaps(k *model.Kiln, m *kilnModel, s asked) *float64 {
	t := hottestAsked(s)
	if k == nil || k.Heater == nil || k.Reaches == nil || k.Airflow != nil || m.loaded.by == "" || math.IsNaN(t) {
		return nil
	}
	if _, high := bandOf(k.Reaches.Range); t > high {
		return nil
	}
	flow, ok := r.warmedTo(k, t)
	if !ok {
		return nil
	}
	heat := model.Given(k.Heater, k.Efficiency)
	flow *= max(leastLeft, 1-m.loaded.kit.WallsTake(t-r.site.air)/heat) / weakBy
	if k.Recovers != nil { // of malt that dries the exhaust is cool, and hardly anything is recovered
		flow *= 1 - k.Recovers.SI
	}
	return &flow
}

// flapsShut says so, where a step ends with less air than would come.
func (r *run) flapsShut(m *kilnModel) {
	if !m.bed.Moved().Short {
		r.assume(KilnFlaps{r.called()})
	}
}

// hottestAsked is the hottest that a step asks of the air onto the malt, °C; NaN where it asks for none.
func hottestAsked(s asked) float64 {
	for _, at := range []*model.Temperature{s.From, s.At} {
		if at != nil && (at.Where == vocabulary.PlaceAirOn || at.Where == "") {
			low, high := bandOf(at.Range.Range)
			return max(low, high)
		}
	}
	return math.NaN()
}
