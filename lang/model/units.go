package model

import (
	"slices"

	"maltwright/lang/quantity"
)

// What is reckoned of a process is told in the units that it is written in: who reads °F
// and lb is not told °C and cm. The first of its values that could be either decides; what
// the process does not say itself, its site and equipment do.

// Degrees writes a temperature of t °C as the process would, to so many digits at the
// most: 13.5 °C, 56.3 °F.
func (p *Process) Degrees(t float64, places int) string {
	if p.Fahrenheit() {
		return quantity.Rounded(quantity.Fahrenheit(t), places) + " °F"
	}
	return quantity.Rounded(t, places) + " °C"
}

// DegreesBetween writes a band of temperatures of °C: 12 to 18 °C.
func (p *Process) DegreesBetween(low, high float64) string {
	if p.Fahrenheit() {
		low = quantity.Fahrenheit(low)
	}
	return quantity.Rounded(low, 1) + " to " + p.Degrees(high, 1)
}

// Depth writes how deep a bed of so many m lies: 12 cm, 5 in.
func (p *Process) Depth(m float64) string {
	switch in := m / quantity.Inch; {
	case !p.British():
		return quantity.Depth(m)
	case in < 4:
		return quantity.Rounded(in, 1) + " in"
	default:
		return quantity.Rounded(in, 0) + " in"
	}
}

// Surface writes a floor of so many m², Volume a room of so many m³, and Airflow what
// moves of it in m³/s, each roughly.
func (p *Process) Surface(m2 float64) string { return p.about(m2, "m2", "ft2") }

// Volume writes so many m³.
func (p *Process) Volume(m3 float64) string { return p.about(m3, "m3", "ft3") }

// Airflow writes so many m³/s.
func (p *Process) Airflow(si float64) string { return p.about(si, "m3/h", "cfm") }

func (p *Process) about(si float64, metric, british string) string {
	if p.British() {
		metric = british
	}
	return quantity.About(si, metric)
}

// Fahrenheit tells whether the process is written in °F.
func (p *Process) Fahrenheit() bool {
	for _, q := range p.written() {
		if q.Dimension == quantity.Temperature {
			return q.Unit() == "°F"
		}
	}
	return false
}

// British tells whether it is written in lb, ft2 and the like.
func (p *Process) British() bool {
	for _, q := range p.written() {
		if quantity.British(q.Unit()) != "" {
			return true
		}
		if slices.Contains([]quantity.Dimension{quantity.Mass, quantity.Area, quantity.Volume}, q.Dimension) {
			return false
		}
	}
	return false
}

// written lists the values of a process whose units differ between houses, the charge and
// the steps first.
func (p *Process) written() (list []quantity.Quantity) {
	one := func(qs ...*Quantity) {
		for _, q := range qs {
			if q != nil {
				list = append(list, q.Quantity)
			}
		}
	}
	one(p.Charge)
	for _, st := range p.Stages {
		list = append(list, temperaturesOf(StepsOf(st))...)
		if w, ok := st.(*Withering); ok && w.Air != nil {
			list = append(list, w.Air.High)
		}
	}
	if p.Site != nil && p.Site.Air != nil {
		list = append(list, p.Site.Air.High)
	}
	for _, st := range p.Stages {
		one(sizeOf(st))
	}
	return list
}

// sizeOf is the size of what a stage lies in or on, nil where it is not said.
func sizeOf(st Stage) *Quantity {
	switch st := st.(type) {
	case *Steep:
		if st.Vessel != nil {
			return st.Vessel.Holds
		}
	case *Kilning:
		if st.Kiln != nil {
			return st.Kiln.Area
		}
	}
	if piece := PieceOf(st); piece != nil && piece.Floor != nil {
		return piece.Floor.Area
	}
	return nil
}

// temperaturesOf lists what steps are set to, through repeats.
func temperaturesOf(steps []Step) (list []quantity.Quantity) {
	for _, s := range EveryStep(steps) {
		for _, t := range []*Temperature{s.Warmth().At, s.Warmth().From} {
			if t != nil {
				list = append(list, t.High)
			}
		}
	}
	return list
}
