package pneumatic

// Resistance gives the pressure, Pa, that a flow of air, m³/s at air-on, loses in the
// bed as it lies now: that of clean dry grain by [drying.Packing.Resistance], the share
// of it that loose green malt has, and the depth. Ducts and sprays come on top. It
// returns a *[air.RangeError] for a speed under 0.0056 or over 0.203 m/s.
func (b *Bed) Resistance(flow float64) (float64, error) {
	if b.count == 0 {
		return 0, errNotMade
	}
	perMetre, err := b.packing.Resistance(flow / b.vessel.Area)
	return perMetre * b.packing.Loose * b.Depth(), err
}
