package grain

import (
	"errors"
	"math"

	"maltwright/sim/air"
)

// check refuses a profile that a house has changed into something the growth
// equations cannot run on.
func (p *Profile) check() error {
	if p.Name == "" {
		return errors.New("the grain has no profile")
	}
	return errors.Join(
		air.Within("bulk density", p.BulkDensity, "kg/m³", 200, 1000),
		air.Within("usual weight of a thousand kernels", p.KernelWeight, "kg", 0.001, 1),
		air.Within("water held by the husk", p.HuskWater, "kg/kg", 0, 1),
		air.Within("water held by the surface", p.FilmWater, "kg/kg", 0, 1),
		air.Within("water drunk by the core", p.CoreWater, "kg/kg", 0.2, 3),
		air.Within("uptake of the species", p.Uptake, "", 0.05, 20),
		air.Within("activation energy of uptake", p.UptakeEnergy, "J/mol", 0, 2e5),
		air.Within("leachable dry matter", p.LeachPool, "kg/kg", 0, 0.1),
		air.Within("time in which kernels drown", p.Drowns, "s", 3600, 1e7),
		air.Within("moisture of full growth", p.MoistFull, "kg/kg", math.Nextafter(p.DryStop, 1), maxWet),
		air.Within("moisture that stops growth", p.DryStop, "kg/kg", 0, maxWet),
		air.Within("earliness of waking", p.WakeEarly, "kg/kg", 0, 0.3),
		p.checkGrowth(),
	)
}

func (p *Profile) checkGrowth() error {
	errs := []error{
		air.Within("base temperature of growth", p.BaseT, "°C", -5, 30),
		air.Within("best temperature of growth", p.BestT, "°C", p.BaseT+1, 50),
		air.Within("ceiling of growth", p.CeilingT, "°C", p.BestT+1, 60),
		air.Within("chit clock", p.Chit, "°C·h", 1, 1e4),
		air.Within("spread of chit", p.ChitSpread, "", 0.01, 2),
		air.Within("spread of growth", p.MarkSpread, "", 0.01, 2),
		air.Within("temperature of the respiration table", p.RespirationT, "°C", 0, 40),
		air.Within("rootlets", p.RootletShare, "kg/kg", 0, 0.3),
		p.Malt.Check(),
	}
	before := 0.0
	for _, m := range p.Marks {
		errs = append(errs, air.Within("acrospire mark", m, "°C·h", before+1, 1e5))
		before = m
	}
	t := -300.0
	for _, g := range p.Germinates {
		errs = append(errs, air.Within("temperature of final germination", g.T, "°C", t+0.01, 100),
			air.Within("final germination", g.Share, "of kernels", 0, 1))
		t = g.T
	}
	for _, r := range p.Respiration {
		errs = append(errs, air.Within("respiration", r, "per day", 0, 0.1))
	}
	return errors.Join(errs...)
}
