package quality

import (
	"math"

	"maltwright/sim/powers"
)

// What malt is coloured by are its sugars and amino acids, which heat joins: there are the more
// of them the further it is modified and the longer it was stewed, and they meet the more
// easily the more water is left. What stewing makes is quick to colour, and is used up by it.
const (
	// colourRate, EBC/s at colourT, °C, in chalky malt of dryFrom, and colourEnergy, J/mol
	// (calibrated to malts in trade: pilsner 2.5–3, pale ale 5–7 EBC, Munich, fitted in sim/outside/fit;
	// the energy is drawn to 100 to 130, from memory).
	colourRate, colourT, colourEnergy = 0.30 / hour, 85.0, 117e3

	// colourFull, wet basis: with more water colour forms no faster (calibrated: green malt
	// colours from 80 °C on, malt that was dried first from 110) [inns-2007].
	colourFull = 0.40

	// colourModified is the modification, 0 to 1, of the malt for which colourRate stands
	// (calibrated: chalky malt).
	colourModified = 0.85

	// colourMost, EBC, is that of the blackest malt, to which colour tends (calibrated: 1200 to
	// 1600 in trade, from memory).
	colourMost = 1500.0

	// stewMost, EBC, is how much darker all that stewing makes gets malt in the end, and
	// stewSpent, 1/EBC, which share of it goes for each EBC that the rest of the malt colours
	// (calibrated to Munich malts, cured at 83 to 103 °C, in the same fit).
	stewMost, stewSpent = 19.5, 1.45

	// stewRate, 1/h for each K above stewFrom, °C: how fast enzymes make sugars and amino acids
	// of what malt has, in malt that is stewed (calibrated to Munich malts).
	stewRate, stewFrom = 0.03, 30.0

	// stewDry and stewWet, wet basis: below the one nothing is made, above the other as much
	// as can be (calibrated).
	stewDry, stewWet = 0.20, 0.40

	// mashFrom and mashFull, °C: from the one on the starch of stewed malt swells, from the other
	// all of it is made sugar of; stewMash times as much is made of it then (calibrated to caramel
	// malt; starch swells from about 60 °C on, common practice).
	mashFrom, mashFull = 55.0, 65.0
	stewMash           = 3.0
)

// Colouring is the constants of colour that are fitted together. Those of the code are [Usual].
type Colouring struct {
	Rate      float64 // EBC/s at 85 °C, in chalky malt of 6 % that was not stewed
	Energy    float64 // J/mol
	StewMost  float64 // EBC, of all that stewing makes
	StewSpent float64 // 1/EBC, which share of that goes with each EBC of the rest
}

// Usual is how malt colours in every forecast (calibrated).
func Usual() Colouring { return Colouring{colourRate, colourEnergy, stewMost, stewSpent} }

// usual is never written to.
var usual = Usual()

// rate is that at which colour is formed, EBC/s, in chalky malt of t °C and of moisture w,
// wet basis, that was not stewed: 0.30/h·(w/6 %)^(5/4)·exp(−(117 kJ/mol)/R·(1/T − 1/358.15)), w no more
// than 40 %, T in K (calibrated). See [State.Step].
func (c *Colouring) rate(t, w float64) float64 {
	wet := min(w, colourFull) / dryFrom
	return wet * math.Sqrt(math.Sqrt(wet)) * arrhenius(c.Rate, c.Energy, colourT, t)
}

// stewing is the rate at which malt of t °C and moisture w, wet basis, gains what it has yet to
// gain by stewing, 1/s: 0.03/h for each K above 30 °C over 40 %, none below 20 %, in proportion
// between (calibrated).
func stewing(t, w float64) float64 {
	return stewRate / hour * max(0, t-stewFrom) * min(1, max(0, (w-stewDry)/(stewWet-stewDry)))
}

// stewable is how much stewing makes at t °C in the end: 1 up to 55 °C, 3 from 65 °C on, where
// starch is mashed, in proportion between (calibrated).
func stewable(t float64) float64 {
	return 1 + (stewMash-1)*min(1, max(0, (t-mashFrom)/(mashFull-mashFrom)))
}

// stew lets the malt gain what stewing makes at t °C, gained the integral of its rate.
func (s *State) stew(t, gained float64) {
	if most := stewable(t); most > s.Stewed {
		s.Stewed -= (most - s.Stewed) * math.Expm1(-gained)
	}
}

// colour lets the malt colour by so much as chalky malt would that was not stewed, EBC.
func (c *Colouring) colour(s *State, plain float64) {
	formed := s.Modified / colourModified * plain
	if left := s.Stewed - s.Used; left > 0 {
		used := -left * math.Expm1(-c.StewSpent*formed)
		s.Used += used
		formed += c.StewMost * used
	}
	if s.Faster != 0 {
		formed *= powers.Exp(s.Faster)
	}
	s.Colour -= (colourMost - s.Colour) * math.Expm1(-formed/colourMost)
}

// Step takes the colour of the malt alone on, as [State.Step] does with its own constants; a fit
// asks for others.
func (c *Colouring) Step(s *State, dt, t0, t1, w0, w1 float64, stewed bool) {
	tm, wm := (t0+t1)/2, (w0+w1)/2
	if stewed {
		s.stew(tm, simpson(stewing, dt, t0, t1, w0, w1))
	}
	c.colour(s, dt*(c.rate(t0, w0)+4*c.rate(tm, wm)+c.rate(t1, w1))/6)
}
