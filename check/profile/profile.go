// Package profile holds what is usual for each grain and each malt type: the
// figures that rules judge by. A rule has no figure of its own that depends on
// grain or malt; it asks the profile, so that a Munich malt is not judged as a
// pilsner nor sorghum as barley.
//
// Each grain and each malt type is one file. The figures are start values from
// handbooks and published practice; where no source is named they are common
// practice. A house moves one with its limits block.
package profile

import (
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

// Band is a range from Low to High.
type Band struct{ Low, High float64 }

// Holds tells whether the value lies in the band.
func (b Band) Holds(v float64) bool { return b.Low <= v && v <= b.High }

// Known tells whether the band says anything.
func (b Band) Known() bool { return b != Band{} }

// Grain is what is usual for a grain. Temperatures in °C, moistures on the whole
// weight as shares of 1, times in hours unless the name says days.
type Grain struct {
	Name       string
	Cast       Band    // moisture at steep-out
	Grows      Band    // bed temperature
	GrowsWarm  float64 // above it growth goes wrong
	GrowsHot   float64 // above it the piece is lost
	GrowsCold  float64 // below it growth hardly goes on
	DeepBed    float64 // m: a piece deeper than this is not kept cool by turning
	Acrospire  Band    // length at the end, as a share of the kernel; unknown where the grain is judged by days
	Days       Band    // of germination
	MostDays   float64 // the longest that anybody grows it
	CureMost   float64 // hottest cure
	EndMost    float64 // moisture of its finished malt, where it may hold more than the malt type says
	Precursor  bool    // its malt holds enough of the precursor of DMS to be tasted
	SoakLong   float64 // a soak longer than this in still water is long
	SoakLost   float64 // and from here on the grain is lost
	Water      Band    // steep water that is usual (common practice)
	WarmWater  float64 // steep water above it is warm
	HotWater   float64 // steep water above it harms within hours
	TepidWater float64 // in still water above it grain is lost in TepidLost
	TepidLost  float64
	Rest       Band    // air of the rests in the steep
	Sprouts    float64 // share of the kernels that must germinate
	RootsOff   bool    // shoots and roots must always be taken off
	ErgotRisk  bool    // ergot must be looked for
	MouldCheck bool    // DON and other mould poisons are common on it
	Converts   bool    // its malt has enzymes enough to turn its own starch into sugar, and more (common practice, from memory)
}

// Malt is what is usual for a malt type.
type Malt struct {
	Name         string
	Cast         Band    // moisture at steep-out, for barley
	EndMost      float64 // moisture of the finished malt
	EndLeast     float64
	Cure         Band     // temperature of the cure, °C
	Colour       Band     // EBC
	Days         Band     // of germination where it differs from the grain's
	Acrospire    Band     // the same, of the length of the acrospire
	WarmBy       float64  // K that it is grown warmer on purpose
	NeedsEnzymes bool     // what is made of it lives by its enzymes
	Stewed       bool     // it is stewed wet on purpose
	Pale         bool     // it must stay pale, and lose its DMS precursor in the cure
	Over         []string // the fires whose smoke it is dried in on purpose
	Least        Least    // what makes the claim true
	Split        float64  // half-lives of the DMS precursor that its cure lasts at the least; 0 where that does not matter
}

// Least is what a process must do to the malt at the least to make it what it is called.
// The figures leave room: below them it is plainly another malt. 0 is what is not asked.
type Least struct {
	Heat     float64 // °C, the hottest of the kiln
	Unstewed float64 // °C, the same where the malt is not stewed
	Stew     float64 // °C, at which it is stewed
	Enzymes  float64 // share of the diastatic power that is left
	Colour   float64 // EBC by the forecast, an indication: a quarter to a third of the palest
	ElsePale bool    // what is not so hot either is judged as pale malt
	Smoked   bool    // smoke goes through it
	Soured   bool    // it is soured, of which a process does not tell
}

// Profile is a grain made into a malt.
type Profile struct {
	Grain
	Malt Malt
}

// Of gives the profile of a process. Where grain or malt is not named it is barley,
// or pale malt.
func Of(p *model.Process) Profile {
	name := vocabulary.GrainBarley
	if p.Grain != nil && p.Grain.Species.Text != "" {
		name = p.Grain.Species.Text
	}
	malt := maltOf(p.Make.Text)
	if malt.Name == vocabulary.MaltGreen && p.Stage(model.KilnStage) != nil {
		malt = pale // what is dried is no green malt, and the language says so
	}
	return Profile{grainOf(name), malt}
}

// CastBand is the moisture wanted at steep-out: the malt's for barley, else the grain's.
func (p Profile) CastBand() Band {
	if p.Grain.Name == vocabulary.GrainBarley && p.Malt.Cast.Known() {
		return p.Malt.Cast
	}
	return p.Grain.Cast
}

// GrowDays is how long it usually grows.
func (p Profile) GrowDays() Band {
	if p.Malt.Days.Known() {
		return p.Malt.Days
	}
	return p.Grain.Days
}

// GrowWarm is the warmest that the piece usually gets, °C.
func (p Profile) GrowWarm() float64 { return min(p.GrowsWarm+p.Malt.WarmBy, p.GrowsHot) }

// WarmBed is the temperature, °C, above which a piece must be turned more often:
// 18 °C (common practice), or more for the grains that grow warmer.
func (p Profile) WarmBed() float64 { return max(18, p.Grows.High) }

// Goal is the length of the acrospire that is usual at the end, as a share of the
// kernel; unknown for the grains that are judged by days.
func (p Profile) Goal() Band {
	if p.Grain.Acrospire.Known() && p.Malt.Acrospire.Known() {
		return p.Malt.Acrospire
	}
	return p.Grain.Acrospire
}

// HottestCure is the hottest cure, °C: of malt that needs its enzymes also no hotter
// than the grain's malt is cured.
func (p Profile) HottestCure() float64 {
	if p.Malt.NeedsEnzymes {
		return min(p.Malt.Cure.High, p.Grain.CureMost)
	}
	return p.Malt.Cure.High
}

// LeastHeat is the hottest that the kiln must get at the least, °C: less than the malt
// type asks where the grain's malt is not heated so far. It is 0 where nothing is asked.
func (p Profile) LeastHeat() float64 { return p.bearable(p.Malt.Least.Heat) }

// LeastUnstewed is the same where the malt is not stewed.
func (p Profile) LeastUnstewed() float64 { return p.bearable(p.Malt.Least.Unstewed) }

// bearable is a heat, °C, or somewhat less than what the malt of the grain bears; 0 for
// grain whose malt is only dried.
func (p Profile) bearable(heat float64) float64 {
	switch {
	case !p.Malt.NeedsEnzymes:
		return heat
	case p.Grain.CureMost < driedOnly:
		return 0
	}
	return min(heat, p.Grain.CureMost-curedBelow)
}

const (
	driedOnly  = 70.0 // °C: malt of a grain that bears no more is dried, and not cured
	curedBelow = 3.0  // K below the hottest of its grain a cure is still one
)

// AsPale is the grain made into pale malt.
func (p Profile) AsPale() Profile { return Profile{p.Grain, pale} }

// FinishedMost is the moisture that the finished malt holds at the most.
func (p Profile) FinishedMost() float64 { return max(p.Malt.EndMost, p.Grain.EndMost) }

func grainOf(name string) Grain {
	for _, g := range grains {
		if g.Name == name {
			return g
		}
	}
	return barley
}

func maltOf(name string) Malt {
	for _, m := range malts {
		if m.Name == name {
			return m
		}
	}
	return pale
}

var grains = []Grain{barley, wheat, spelt, rye, triticale, oats, sorghum, millet, maize, buckwheat}

var malts = []Malt{pilsner, pale, vienna, munich, amber, brown, caramel, chit, distilling, smoked, acid, green, chocolate, black, roastedMalt}

// Malts lists the profiles of malt types.
func Malts() []Malt { return append([]Malt(nil), malts...) }
