package model

import (
	"slices"

	"maltwright/lang/quantity"
)

// What is reckoned of a process is told in the units that it is written in: who reads °F
// and lb is not told °C and cm.

// Units gives the units of a process: °F where most temperatures of its steps are in °F,
// or those of its site where the steps have none; lb and ft2 where its charge is in lb or
// oz, or the first of its equipment that says so where it has no charge; imperial gallons
// where its vessel is in them.
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
	u.Imperial = u.British && slices.ContainsFunc(p.sizes(), func(q quantity.Quantity) bool { return q.Unit() == "gal-imp" })
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
		list = append(list, temperaturesOf(StepsOf(st))...)
		if w, ok := st.(*Withering); ok && w.Air != nil {
			list = append(list, w.Air.High)
		}
		if piece := PieceOf(st); piece != nil {
			for _, a := range piece.Blown {
				list = append(list, a.At.High)
			}
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
		if k, ok := st.(*Kilning); ok && k.Kiln != nil && k.Kiln.Reaches != nil {
			list = append(list, k.Kiln.Reaches.High)
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
		one(sizeOf(st))
	}
	return list
}

// sizeOf is the size of what a stage lies in or on, nil where it is not said.
func sizeOf(st Stage) *Quantity {
	switch st := st.(type) {
	case *Steep:
		return st.Room()
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
