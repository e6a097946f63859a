package outlook

import (
	"maltwright/cmd/answer"
	"maltwright/sim/forecast"
)

// Energy is what a stage took and gave, fuel and electricity apart.
type Energy struct {
	Heat       answer.Joules    `doc:"that heaters gave to air and beds"`
	Fuel       answer.Joules    `doc:"burnt for it, or taken for it by heaters that do not say how they are fired; none of the sun"`
	Power      answer.Joules    `doc:"electricity, for electric heaters and for fans"`
	Fans       answer.Joules    `doc:"the part of it that fans drew"`
	Cold       answer.Joules    `doc:"heat that coolers took out; what they draw for it is not known"`
	Recovered  answer.Joules    `doc:"heat that exhaust gave to fresh air in a heat exchanger"`
	PassedOn   answer.Joules    `json:"passed_on,omitempty" doc:"heat above outside air, that of vapour left out, of the exhaust of one floor of a kiln that the next floor took; missing where there is none"`
	Evaporated answer.Kilograms `doc:"water that grain and malt lost"`

	Unsaid bool `json:"-"` // some of the fuel is of heaters that do not say how they are fired
}

// EnergyTotals is that of the whole process.
type EnergyTotals struct {
	Energy
	FuelPerTonne  answer.Joules `doc:"of malt"`
	PowerPerTonne answer.Joules `doc:"of malt"`
	HeatPerWater  answer.Joules `json:"heat_per_kilogram_of_water" doc:"heat for each kg of water driven off on the kiln; null where none is"`
}

// rounding is the share of the fuel below which a part of it is what rounding leaves: of a floor without a heater that is nothing on
// one processor, and some 1e-12 J on another.
const rounding = 1e-9

func energyOf(e *forecast.Energy) Energy {
	return Energy{
		Heat: answer.Joules(e.Heat), Fuel: answer.Joules(e.Fuel), Power: answer.Joules(e.Power), Fans: answer.Joules(e.Fans), Cold: answer.Joules(e.Cold),
		Recovered: answer.Joules(e.Recovered), PassedOn: answer.Joules(e.PassedOn), Evaporated: answer.Kilograms(e.Water), Unsaid: e.Unsaid > rounding*e.Fuel,
	}
}

func energyTotalsOf(t *forecast.Totals) *EnergyTotals {
	return &EnergyTotals{Energy: energyOf(&t.Energy), FuelPerTonne: answer.Joules(ofFuel(t)), PowerPerTonne: answer.Joules(ofPower(t)),
		HeatPerWater: answer.Joules(t.KilnEnergy / t.KilnWater)}
}

// tonne is one of malt, kg.
const tonne = 1000

func ofFuel(t *forecast.Totals) float64  { return tonne * t.Energy.Fuel / t.Malt }
func ofPower(t *forecast.Totals) float64 { return tonne * t.Energy.Power / t.Malt }

// BedHeat is the heat that a bed made by its breath while it grew or withered, and how it left.
type BedHeat struct {
	Made         answer.Joules  `doc:"by the breath of the grain; it has to be carried off"`
	Peak         answer.Watts   `doc:"the most of it"`
	PeakPerTonne answer.Watts   `doc:"the same for each tonne of raw grain"`
	PeakAt       answer.Seconds `doc:"when"`
	Given        answer.Joules  `doc:"by the heater of the floor, and by water that was sprinkled"`
	Latent       answer.Joules  `doc:"that left as vapour"`
	Sensible     answer.Joules  `doc:"that went into air and room else; below 0 where these warmed the bed"`
	Cooled       answer.Joules  `doc:"that the cooler of a floor took from the bed"`
	Kept         answer.Joules  `doc:"that the bed holds more at its end; made and given are these four"`
	Air          *AirHeat       `json:",omitempty" doc:"of a bed that air is blown through: what it takes to make that air"`
}

// AirHeat is what cooler and heater do to the air of a bed.
type AirHeat struct {
	Cold     answer.Joules `doc:"that the cooler took out of it"`
	PeakCold answer.Watts  `doc:"the most of it"`
	Heat     answer.Joules `doc:"that the heater gave to it"`
	PeakHeat answer.Watts  `doc:"the most of it"`

	Outside *answer.Celsius `json:"peak_cold_in,omitempty" doc:"temperature of the air about the bed when the cooler took the most"`
	Warmest *WarmestAir     `json:"warmest,omitempty" doc:"the same bed in the warmest air of the site; missing where the room is held, or the site is no warmer"`
}

// WarmestAir is what a cooler takes in the warmest air of the site.
type WarmestAir struct {
	Air      answer.Celsius `doc:"the upper end of the site's band"`
	Humidity answer.Share   `doc:"of that air: the one that the forecast takes"`
	PeakCold answer.Watts   `doc:"the most that the cooler would take then, for the same air-on"`
}

func bedHeatOf(p *forecast.Piece, charge float64) *BedHeat {
	h := &p.Heat
	out := &BedHeat{
		Made: answer.Joules(h.Made), Peak: answer.Watts(h.Peak), PeakPerTonne: answer.Watts(tonne * h.Peak / charge), PeakAt: answer.Seconds(h.PeakAt),
		Given: answer.Joules(h.Given), Latent: answer.Joules(h.Latent), Sensible: answer.Joules(h.Sensible), Cooled: answer.Joules(h.Cooled), Kept: answer.Joules(h.Kept),
	}
	if b := p.Blown; b != nil {
		out.Air = airHeatOf(b)
	}
	return out
}

func airHeatOf(b *forecast.Blown) *AirHeat {
	h := &AirHeat{Cold: answer.Joules(b.Cold), PeakCold: answer.Watts(b.PeakCold), Heat: answer.Joules(b.Heat), PeakHeat: answer.Watts(b.PeakHeat)}
	if b.PeakCold > 0 {
		h.Outside = new(answer.Celsius(b.Outside))
	}
	if s := b.Summer; s.T != 0 {
		h.Warmest = &WarmestAir{answer.Celsius(s.T), answer.Share(s.RH), answer.Watts(s.Cold)}
	}
	return h
}

// account adds to the stages of an outlook what each took, and what its bed made.
func (r *Result) account(f *forecast.Forecast) {
	for i := range r.Stages {
		of := f.Stages[i].Of
		for j := range f.Spent {
			if s := &f.Spent[j]; s.Of == of {
				e := energyOf(&s.Energy)
				r.Stages[i].Energy = &e
			}
		}
		r.Stages[i].Below = belowOf(f, of)
		for j := range f.Pieces {
			if p := &f.Pieces[j]; p.Of == of {
				r.Stages[i].Bed = bedHeatOf(p, f.Process.Charge.SI)
			}
		}
	}
}
