package pneumatic

import "maltwright/sim/air"

// Resistance gives the pressure, Pa, that a flow of air, m³/s at air-on, loses in the
// bed as it lies now: [drying.Packing.Loss] over its depth, in saturated air at sea level as
// warm as the bed. Ducts and sprays come on top.
func (b *Bed) Resistance(flow float64) (float64, error) {
	if b.count == 0 {
		return 0, errNotMade
	}
	t := b.T()
	in := air.State{T: t, W: air.HumidityRatio(air.Saturation(t), air.StandardPressure), P: air.StandardPressure}
	return b.packing.Loss(flow/b.vessel.Area, in) * b.Depth(), nil
}
