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
	Dust                          // of deculming
	DressedSeed                   // which is poison
	WetGrain                      // heavy, and perhaps mouldy
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
	}
	if model.First[*model.Deculming](p) != nil {
		list = append(list, Dust)
	}
	if p.Grain != nil && !p.Grain.Kilned() && p.Grain.Treated.Text != vocabulary.SaidNo {
		list = append(list, DressedSeed)
	}
	return append(list, WetGrain, LocalCodes)
}
