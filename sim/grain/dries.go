package grain

import "maltwright/sim/drying"

// dries gives the profile the figures by which its malt dries: its own where a source
// has them, and else barley's, moved by its shift; bound water goes through kernels of its
// own weight in either case.
func dries(p Profile) Profile {
	c := drying.Barley()
	if p.Malt.Cereal != nil {
		c = *p.Malt.Cereal
	}
	c = c.Weighing(p.KernelWeight)
	p.Malt.Cereal = &c
	return p
}

// maltOf is malt of a cereal of which a source has the sorption.
func maltOf(c drying.Cereal) drying.Malt { return drying.Malt{Cereal: &c} }
