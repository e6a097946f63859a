package forecast

import (
	"maltwright/lang/model"
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
	room, err := air.FromRH(r.site.air, r.site.rh, r.site.pressure)
	if err != nil || to <= room.T {
		return 0, 0, false
	}
	on := air.State{T: to, W: room.W, P: room.P}
	fresh := 1.0
	if k.Returns != nil {
		fresh = max(1-k.Returns.SI, 1-stewReturn)
	}
	if k.Recovers != nil { // dry malt lets the air through as warm as it comes on
		fresh *= 1 - k.Recovers.SI
	}
	return model.Given(k.Heater, k.Efficiency) * on.Volume() / (on.Enthalpy() - room.Enthalpy()) / fresh, to, true
}
