package model

import "maltwright/lang/source"

// Scale is a scale of the house.
type Scale struct {
	Name     string
	Place    source.Place
	Division *Quantity // the smallest step in which it shows a weight
	Holds    *Quantity // the most that it weighs
}

// Takes tells whether a weight of so many kg may stand on the scale.
func (s *Scale) Takes(kg float64) bool { return s.Holds == nil || kg <= s.Holds.SI }

// Holder is what grain can be weighed in: a vessel, a floor or a kiln.
type Holder struct {
	Kind   string // vessel, floor or kiln
	Name   string
	Place  source.Place
	Weighs *Quantity // empty
}

// Holders lists what grain can be weighed in.
func (h *House) Holders() (list []Holder) {
	for _, v := range h.Vessels {
		list = append(list, *v.holder())
	}
	for _, v := range h.Floors {
		list = append(list, *v.holder())
	}
	for _, v := range h.Kilns {
		list = append(list, *v.holder())
	}
	return list
}

func (v *Vessel) holder() *Holder { return &Holder{"vessel", v.Name, v.Place, v.Weighs} }
func (v *Floor) holder() *Holder  { return &Holder{"floor", v.Name, v.Place, v.Weighs} }
func (v *Kiln) holder() *Holder   { return &Holder{"kiln", v.Name, v.Place, v.Weighs} }

// HolderOf is what the grain lies in during a stage; nil where the stage does not say, or
// it lies in nothing.
func HolderOf(st Stage) *Holder {
	switch st := st.(type) {
	case *Steep:
		if st.Vessel != nil && len(st.More) == 0 {
			return st.Vessel.holder()
		}
	case *Kilning:
		if st.Kiln != nil {
			return st.Kiln.holder()
		}
	}
	if piece := PieceOf(st); piece != nil && piece.Floor != nil {
		return piece.Floor.holder()
	}
	return nil
}

// Holders lists what the grain of a process lies in, stage by stage, of which it is said
// what it weighs; each once.
func (p *Process) Holders() (list []*Holder) {
	seen := map[source.Place]bool{}
	for _, st := range p.Stages {
		if h := HolderOf(st); h != nil && h.Weighs != nil && !seen[h.Place] {
			seen[h.Place] = true
			list = append(list, h)
		}
	}
	return list
}

// With is what grain of so many kg weighs in the holder, and whether it is known.
func (h *Holder) With(kg float64) (gross float64, known bool) {
	if h == nil || h.Weighs == nil {
		return 0, false
	}
	return kg + h.Weighs.SI, true
}

// Scale is the scale of the house that so many kg would be weighed on: the finest that
// takes them. Nil where the house has none of which it says the division, or none that
// takes so much.
func (h *House) Scale(kg float64) (finest *Scale) {
	if h == nil {
		return nil
	}
	for _, s := range h.Scales {
		if s.Division != nil && s.Takes(kg) && (finest == nil || s.Division.SI < finest.Division.SI) {
			finest = s
		}
	}
	return finest
}

// Goes is the scale of the house on which so many kg are weighed, if need be in several
// goes: that of Scale, or else the one that holds the most. Nil where it has none of which
// it says the division.
func (h *House) Goes(kg float64) *Scale {
	scale := h.Scale(kg)
	if scale != nil || h == nil {
		return scale
	}
	for _, s := range h.Scales {
		if s.Division != nil && s.Holds != nil && (scale == nil || s.Holds.SI > scale.Holds.SI) {
			scale = s
		}
	}
	return scale
}

// BagShare is the part of the charge that is in the marked bag, 0 where there is none.
func (p *Process) BagShare() float64 {
	if p.Bag == nil || p.Charge == nil || !(p.Charge.SI > 0) {
		return 0
	}
	return p.Bag.SI / p.Charge.SI
}
