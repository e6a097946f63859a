package forecast

import (
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

// Caution is something in a process that can hurt somebody.
type Caution int

// The cautions, in the order in which they are told.
const (
	Suffocation    Caution = iota // growing grain gives off carbon dioxide
	Fire                          // of a kiln, which burns too
	CarbonMonoxide                // of fuel
	FlueGas                       // through the malt, in which it makes nitrosamines
	Smoke                         // through the malt, of wood or peat
	Roasting                      // which smokes and catches fire
	Steam                         // of water on hot malt
	Dust                          // of deculming
	DressedSeed                   // which is poison
	WetGrain                      // heavy, and perhaps mouldy
	OldMalt                       // that was bought or made before, and may be mouldy
	LocalCodes                    // which come first
)

// Cautions lists what in a process can hurt somebody, and closes with whom to ask. They
// are the usual cautions of the trade (common practice) and no substitute for the rules
// of the place.
func Cautions(p *model.Process) []Caution {
	var list []Caution
	if model.First[*model.Germination](p) != nil || p.Grain.Grown() {
		list = append(list, Suffocation)
	}
	if kilns := model.Every[*model.Kilning](p); len(kilns) > 0 {
		list = append(list, Fire)
		if slices.ContainsFunc(kilns, func(st *model.Kilning) bool { return st.Kiln != nil && vocabulary.Burns(st.Kiln.Fired.Text) }) {
			list = append(list, CarbonMonoxide)
		}
		list = append(list, ofHeat(kilns)...)
	}
	if model.First[*model.Deculming](p) != nil {
		list = append(list, Dust)
	}
	if p.Grain != nil && !p.Grain.Kilned() && p.Grain.Treated.Text != vocabulary.SaidNo {
		list = append(list, DressedSeed)
	}
	if p.Grain.Kilned() { // it is never wet
		return append(list, OldMalt, LocalCodes)
	}
	return append(list, WetGrain, LocalCodes)
}

// roastsAbove is the heat, °C, above which malt is roasted, whatever the step is called (common
// practice: caramel malt is cured at up to 140 °C).
const roastsAbove = 140.0

// ofHeat lists what of flue gas, smoke, roast and quench can hurt somebody.
func ofHeat(kilns []*model.Kilning) (list []Caution) {
	found := map[Caution]bool{}
	for _, st := range kilns {
		if k := st.Kiln; k != nil && k.Direct && vocabulary.Burns(k.Fired.Text) {
			found[FlueGas] = true
			found[Smoke] = found[Smoke] || k.Fired.Text == vocabulary.FiredWood || k.Fired.Text == vocabulary.FiredPeat
		}
		for _, s := range st.Steps {
			found[Smoke] = found[Smoke] || model.Smoked(s)
			cool, cools := s.(*model.Cool)
			found[Steam] = found[Steam] || cools && cool.Water != nil
			found[Roasting] = found[Roasting] || !cools && (s.Kind() == model.RoastStep || setHot(s) > roastsAbove)
		}
	}
	for c := FlueGas; c <= Steam; c++ {
		if found[c] {
			list = append(list, c)
		}
	}
	return list
}

// setHot is the hottest that a step is set to, °C; far below anything where it sets nothing.
func setHot(s model.Step) float64 {
	hot := -zeroC
	for _, at := range []*model.Temperature{s.Warmth().At, s.Warmth().From} {
		if at != nil {
			hot = max(hot, at.Low.SI-zeroC, at.High.SI-zeroC)
		}
	}
	return hot
}
