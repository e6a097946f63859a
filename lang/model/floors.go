package model

import "slices"

// Giver finds the stage that a kilning takes its air from, nil where it takes none or where
// the process has no such stage behind it: the malt goes down from floor to floor, and what lies on
// the floor below is the batch before, in that stage of the same process.
func (p *Process) Giver(st *Kilning) *Kilning {
	if st == nil || st.Kiln == nil || st.Kiln.AirFrom == nil || st.Kiln.AirFrom == st.Kiln {
		return nil
	}
	behind := false
	for _, k := range Every[*Kilning](p) {
		if behind && k.Kiln == st.Kiln.AirFrom {
			return k
		}
		behind = behind || k == st
	}
	return nil
}

// Floors lists a kilning and the stages that its air comes through, the nearest first: one
// where it takes fresh air.
func (p *Process) Floors(st *Kilning) (list []*Kilning) {
	for st != nil && !slices.Contains(list, st) {
		list = append(list, st)
		st = p.Giver(st)
	}
	return list
}

// Fed tells whether a kiln is given the exhaust of another one.
func (k *Kiln) Fed() bool { return k != nil && k.AirFrom != nil }

// IndexOf tells at which place among the stages one stands, −1 for one of another process.
func (p *Process) IndexOf(st Stage) int { return slices.Index(p.Stages, st) }
