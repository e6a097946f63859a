package model

import "maltwright/lang/source"

// Learnt is what finished batches taught about a house. A figure that nothing was
// learnt of is nil, or missing from its list.
type Learnt struct {
	Name        string
	Place       source.Place // the words that name it
	Growth      *Factor
	Respiration *Factor
	Withering   *Factor
	Uptake      []GrainFactor
	HuskWater   []GrainFactor
	Chit        []GrainFactor
	Drying      []KilnFactor
	Thermometer *Factor // K that it shows too much, below nothing where it shows too little
}

// Factor is a figure that was learnt: a factor on the model, where 1 is the model as
// it stands, or the difference of a thermometer, K.
type Factor struct {
	Value   Quantity
	Error   *Quantity    // standard error, of the same dimension; nil where it is not said
	Scatter *Quantity    // standard deviation of the batches about it, likewise
	Batches int          // that it rests on; 0 where it is not said
	Place   source.Place // the whole statement
}

// GrainFactor is a factor of one lot.
type GrainFactor struct {
	Factor
	Grain *Grain
}

// KilnFactor is a factor of one kiln.
type KilnFactor struct {
	Factor
	Kiln *Kiln
}

// A learnt factor lies between these. Lots of one variety differ about threefold and
// houses by a fifth, so what is outside is a slip, or another thing than the model is
// of; the models take all that lies inside.
const (
	LeastFactor = 0.2
	MostFactor  = 5.0
)

// UptakeOf is the factor of a lot's uptake of water, nil where none was learnt.
func (l *Learnt) UptakeOf(g *Grain) *Factor {
	if l == nil {
		return nil
	}
	return ofGrain(l.Uptake, g)
}

// HuskWaterOf is the factor of what husk and film of a lot hold, nil where none was learnt.
func (l *Learnt) HuskWaterOf(g *Grain) *Factor {
	if l == nil {
		return nil
	}
	return ofGrain(l.HuskWater, g)
}

// ChitOf is the factor of how fast a lot chits, nil where none was learnt.
func (l *Learnt) ChitOf(g *Grain) *Factor {
	if l == nil {
		return nil
	}
	return ofGrain(l.Chit, g)
}

func ofGrain(list []GrainFactor, g *Grain) *Factor {
	for i := range list {
		if g != nil && list[i].Grain == g {
			return &list[i].Factor
		}
	}
	return nil
}

// DryingOf is the factor of a kiln's drying, nil where none was learnt.
func (l *Learnt) DryingOf(k *Kiln) *Factor {
	if l == nil || k == nil {
		return nil
	}
	for i := range l.Drying {
		if l.Drying[i].Kiln == k {
			return &l.Drying[i].Factor
		}
	}
	return nil
}

// Learnt is what the house that the process stands in has learnt, nil for nothing.
func (p *Process) Learnt() *Learnt {
	if p.House == nil {
		return nil
	}
	return p.House.Learnt
}

// Row is one figure of a house, by the word it is written with, and of what it is.
type Row struct {
	Word string
	Of   string // the name of the lot or the kiln; "" for the whole house
	*Factor
	Grain *Grain // the lot, nil for none
	Kiln  *Kiln  // the kiln, nil for none
}

// Rows lists all figures of a house.
func (l *Learnt) Rows() []Row {
	var list []Row
	if l == nil {
		return nil
	}
	for _, x := range []Row{{Word: "growth", Factor: l.Growth}, {Word: "respiration", Factor: l.Respiration}, {Word: "withering", Factor: l.Withering}, {Word: "thermometer", Factor: l.Thermometer}} {
		if x.Factor != nil {
			list = append(list, x)
		}
	}
	for _, lots := range []struct {
		word    string
		factors []GrainFactor
	}{{"uptake", l.Uptake}, {"husk-water", l.HuskWater}, {"chit", l.Chit}} {
		for i := range lots.factors {
			f := &lots.factors[i]
			list = append(list, Row{Word: lots.word, Of: f.Grain.Name, Factor: &f.Factor, Grain: f.Grain})
		}
	}
	for i := range l.Drying {
		f := &l.Drying[i]
		list = append(list, Row{Word: "drying", Of: f.Kiln.Name, Factor: &f.Factor, Kiln: f.Kiln})
	}
	return list
}
