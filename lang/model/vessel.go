package model

import (
	"slices"

	"maltwright/lang/quantity"
)

// Vessels lists the vessels that a steep is shared out among, none where it names none.
func (st *Steep) Vessels() []*Vessel {
	if st.Vessel == nil {
		return nil
	}
	return append([]*Vessel{st.Vessel}, st.More...)
}

// Room is what the vessels of a steep hold together, in the unit of the first; nil where one
// does not say it.
func (st *Steep) Room() *Quantity {
	list := st.Vessels()
	if len(list) == 0 || slices.ContainsFunc(list, func(v *Vessel) bool { return v.Holds == nil }) {
		return nil
	}
	if len(list) == 1 {
		return list[0].Holds
	}
	sum := 0.0
	for _, v := range list {
		sum += v.Holds.SI
	}
	made, err := quantity.In(sum, list[0].Holds.Unit())
	if err != nil {
		return nil
	}
	return &Quantity{Quantity: made, Place: list[0].Holds.Place}
}

// Area is what the grain of a steep lies on in all of its vessels together, m²; 0 where one
// does not say it.
func (st *Steep) Area() (sum float64) {
	for _, v := range st.Vessels() {
		if v.Grows.Area == nil {
			return 0
		}
		sum += v.Grows.Area.SI
	}
	return sum
}

// Share is the part of a steep that is in one of its vessels, 0 to 1.
type Share struct {
	In *Vessel
	Of float64
}

// Shares are the parts of a steep in its vessels, by what each holds; none where it has one
// alone, or one does not say what it holds.
func (st *Steep) Shares() (list []Share) {
	room := st.Room()
	if room == nil || len(st.More) == 0 {
		return nil
	}
	for _, v := range st.Vessels() {
		list = append(list, Share{v, v.Holds.SI / room.SI})
	}
	return list
}

// Bed gives a vessel as where a piece lies that grows in it.
func (v *Vessel) Bed() *Floor {
	bed := v.Grows
	bed.Name, bed.Place, bed.Weighs = v.Name, v.Place, v.Weighs
	return &bed
}
