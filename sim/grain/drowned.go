package grain

// drownBy, of the time from which kernels drown: by then all of them have. Calibrated to common
// practice: barley of a day in water without oxygen still makes malt, after some two days it
// is lost.
const drownBy = 2.5

// DrownedBy gives the share of kernels, 0 to 1, that have drowned after so many seconds on end in
// water without oxygen: none up to the profile's Drowns, all of them from 2.5 times that on,
// and the smooth step s²(3 − 2s) between.
func (p *Profile) DrownedBy(airless float64) float64 {
	s := min(1, max(0, (airless/p.Drowns-1)/(drownBy-1)))
	return s * s * (3 - 2*s)
}
