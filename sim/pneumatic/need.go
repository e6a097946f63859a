package pneumatic

// Cooling gives the power, W, that a cooler would take to make the air-on that was asked of the
// last step in another room, with the exhaust as it was: above nil, with what the spray does
// where the air is dry. It is 0 where the fan stands, and where that air needs heat.
func (b *Bed) Cooling(supply Supply, t, rh float64) (float64, error) {
	f := &b.now
	if f.g == 0 {
		return 0, nil
	}
	supply.Room.T, supply.Room.RH = t, rh
	supply.Cooler, supply.Heater = nil, nil
	s, err := supply.check(b.vessel.Area)
	if err != nil {
		return 0, err
	}
	p := s.plant(f.volume, s.mix(f.offH, f.offW))
	return max(0, -p.draw(p.on(f.asked))), nil
}
