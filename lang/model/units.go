package model

import (
	"slices"

	"maltwright/lang/quantity"
)

// What is reckoned of a process is told in the units that it is written in: who reads °F
// and lb is not told °C and cm.

// Units gives the units of a process: °F where most temperatures of its steps are in °F,
// or those of its site where the steps have none; lb and ft2 where its charge is in lb or
// oz, or the first of its equipment that says so where it has no charge.
func (p *Process) Units() quantity.System {
	var u quantity.System
	for _, of := range [][]quantity.Quantity{p.temperatures(), p.surroundings()} {
		if n := fahrenheits(of); n != 0 {
			u.Fahrenheit = n > 0
			break
		}
	}
	for _, q := range p.sizes() {
		if british := quantity.British(q.Unit()) != ""; british || slices.Contains([]quantity.Dimension{quantity.Mass, quantity.Area, quantity.Volume}, q.Dimension) {
			u.British = british
			break
		}
	}
	return u
}

// fahrenheits is by how many more of the temperatures are in °F than are not.
func fahrenheits(list []quantity.Quantity) (n int) {
	for _, q := range list {
		switch {
		case q.Dimension != quantity.Temperature:
		case q.Unit() == "°F":
			n++
		default:
			n--
		}
	}
	return n
}

// temperatures lists those of its stages and steps.
func (p *Process) temperatures() (list []quantity.Quantity) {
	for _, st := range p.Stages {
		list = append(list, temperaturesOf(st.Steps)...)
		if st.Air != nil {
			list = append(list, st.Air.High)
		}
	}
	return list
}

// surroundings lists the temperatures of its site, and those that its kilns reach.
func (p *Process) surroundings() (list []quantity.Quantity) {
	if s := p.Site; s != nil {
		for _, t := range []*Range{s.Air, s.Water} {
			if t != nil {
				list = append(list, t.High)
			}
		}
	}
	for _, st := range p.Stages {
		if st.Kiln != nil && st.Kiln.Reaches != nil {
			list = append(list, st.Kiln.Reaches.High)
		}
	}
	return list
}

// sizes lists the charge, and the sizes of its equipment.
func (p *Process) sizes() (list []quantity.Quantity) {
	one := func(q *Quantity) {
		if q != nil {
			list = append(list, q.Quantity)
		}
	}
	one(p.Charge)
	for _, st := range p.Stages {
		if st.Floor != nil {
			one(st.Floor.Area)
		}
		if st.Vessel != nil {
			one(st.Vessel.Holds)
		}
		if st.Kiln != nil {
			one(st.Kiln.Area)
		}
	}
	return list
}

// temperaturesOf lists what steps are set to, through repeats.
func temperaturesOf(steps []*Step) (list []quantity.Quantity) {
	for _, s := range steps {
		for _, t := range []*Temperature{s.At, s.From} {
			if t != nil {
				list = append(list, t.High)
			}
		}
		list = append(list, temperaturesOf(s.Steps)...)
	}
	return list
}
