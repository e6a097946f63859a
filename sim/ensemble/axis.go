package ensemble

import "maltwright/sim/forecast"

// Set sets the options to a point of the unknown's spread: at 0.5 its middle, at 0.1
// that below which a tenth of all cases lie. It takes 0 to 1.
func (u Unknown) Set(o *forecast.Options, p float64) { u.set(o, u.quantile(p)) }

// At is the value of the unknown at a point of its spread, as in Set.
func (u Unknown) At(p float64) float64 { return u.quantile(p) }
