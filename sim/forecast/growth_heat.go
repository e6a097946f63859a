package forecast

import (
	"maltwright/sim/air"
	"maltwright/sim/grain"
)

// GrowthHeat is the heat that a growing or withering bed made by its breath, which has to be
// carried off, and how it left:
//
//	Made + Given = Latent + Sensible + Cooled + Kept
//
// Air that is blown through a bed takes what is latent and sensible, and the cooler takes that
// out of the air, as far as it does not leave with it: of that see [Blown].
type GrowthHeat struct {
	Made     float64 // by respiration, J
	Peak     float64 // W, the most, over half an hour at most
	PeakAt   float64 // s from the first soak
	Given    float64 // by the heater of its floor and by water that was sprinkled on it, J
	Latent   float64 // that made vapour of 0 °C of its water, J; below nil where it took up dew
	Sensible float64 // that went into the air and the room else, J; below nil where these warmed it
	Cooled   float64 // that the cooler of its floor took, J
	Kept     float64 // that the bed holds more at its end than at its beginning, J
	Dried    float64 // water that it lost, kg
}

// breathes notes the heat that the bed makes, up to a batch of this age.
func (w *watched) breathes(age float64, b *grain.Batch) {
	if since := age - w.age; since > 0 {
		if heat := grain.StarchHeat * (b.Respired - w.respired) / since; heat > w.peak {
			w.peak, w.peakAt = heat, (age+w.age)/2
		}
	}
	w.respired = b.Respired
}

// heat is the account of a bed on the floor. What heaping keeps in has not left by its faces.
func (m *growModel) heat() GrowthHeat {
	e, h := m.piece.Energy(), m.piece.Holding()
	g := GrowthHeat{Made: e.Respired, Given: h.Warmed + e.Sprinkled, Cooled: h.Cooled, Kept: e.Now - e.Start, Dried: m.piece.Evaporated()}
	heaped, taken := h.Added-h.Warmed, h.Removed-h.Cooled
	return g.left(e.Lost + e.Vapour - heaped + taken)
}

// heat is the account of a bed that air is blown through.
func (m *boxModel) heat() GrowthHeat {
	l := m.bed.Ledger()
	g := GrowthHeat{Made: l.Respired, Given: l.SprinkledHeat, Kept: l.HeatNow - l.HeatStart, Dried: l.Evaporated}
	return g.left(l.Carried + l.Faces + l.Vapour)
}

// left splits the heat that went into the air, J.
func (g GrowthHeat) left(heat float64) GrowthHeat {
	g.Latent = air.EvaporationHeat * g.Dried
	g.Sensible = heat - g.Latent
	return g
}
