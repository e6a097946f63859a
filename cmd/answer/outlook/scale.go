package outlook

import (
	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/sim/ensemble"
)

// OnScale is what a scale shows beside the drained grain, of a figure of kg or a spread of
// them.
type OnScale[T answer.Figure] struct {
	Gross *Gross[T] `json:",omitempty" doc:"the drained grain with what it lies in; left out where that does not say what it weighs"`
	Bag   *T        `json:",omitempty" doc:"what the marked bag should weigh; left out where there is none"`
}

// Gross is a weight of grain with what it lies in.
type Gross[T answer.Figure] struct {
	In     string `doc:"the vessel, floor or kiln, as named"`
	Weight T
}

// Bag is the marked bag of a batch: its part of the charge, 0 where there is none, and
// what it weighs itself, kg.
type Bag struct{ Share, Tare float64 }

// BagOf is the bag of a process.
func BagOf(p *model.Process) Bag { return Bag{Share: p.BagShare()} }

// BagOfBatch is the bag of a batch, with its tare.
func BagOfBatch(b *model.Batch) (bag Bag) {
	p := *b.Process
	p.Bag = b.RawBag()
	if bag = BagOf(&p); b.BagTare() != nil {
		bag.Tare = b.BagTare().SI
	}
	return bag
}

// On is what a scale shows of drained grain of so many kg in a holder, which may be nil.
func (b Bag) On(in *model.Holder, kg float64) (out OnScale[answer.Kilograms]) {
	if gross, known := in.With(kg); known {
		out.Gross = &Gross[answer.Kilograms]{in.Name, answer.Kilograms(gross)}
	}
	if b.Share > 0 {
		bag := answer.Kilograms(kg*b.Share + b.Tare)
		out.Bag = &bag
	}
	return out
}

// OnSpread is the same of a spread of them.
func (b Bag) OnSpread(in *model.Holder, kg ensemble.Spread) (out OnScale[answer.Spread[answer.Kilograms]]) {
	moved := func(by, plus float64) answer.Spread[answer.Kilograms] {
		return Points[answer.Kilograms](ensemble.Spread{P10: kg.P10*by + plus, P50: kg.P50*by + plus, P90: kg.P90*by + plus, Share: kg.Share})
	}
	if empty, known := in.With(0); known {
		out.Gross = &Gross[answer.Spread[answer.Kilograms]]{in.Name, moved(1, empty)}
	}
	if b.Share > 0 {
		bag := moved(b.Share, b.Tare)
		out.Bag = &bag
	}
	return out
}
