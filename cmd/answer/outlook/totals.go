package outlook

import (
	"maltwright/cmd/answer"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
)

// Totals are the figures of the whole batch. Of a forecast that broke off only those of
// the steep are known.
type Totals struct {
	SteepOut         answer.Seconds
	SteepOutMoisture answer.Share     `json:"steep_out_moisture_wb"`
	SteepWater       answer.Litres    `doc:"drawn for the soaks"`
	Total            answer.Seconds   `doc:"to the end of deculming; the rest in store comes after"`
	FinalMoisture    answer.Share     `json:"final_moisture_wb"`
	Malt             answer.Kilograms `doc:"finished, without its rootlets"`
	Rootlets         answer.Kilograms `doc:"as they are taken off"`
	Yield            answer.Share     `json:"yield_as_is" doc:"malt for grain, both as they are"`
	YieldDry         answer.Share     `doc:"malt for grain, both dry"`
	DryMatterLost    answer.Share     `doc:"of the dry matter of the grain"`
	BedHeat          answer.Joules    `doc:"given to the growing bed by the heater of its floor"`
	BedCold          answer.Joules    `doc:"taken out of it by the cooler of its floor"`
	KilnWater        answer.Kilograms `doc:"driven off on the kiln, without the steam of water that was poured on hot malt"`
	KilnHeat         answer.Joules    `doc:"given to its air"`
	HeatPerKilogram  answer.Joules    `doc:"the same for each kg of malt"`
	Sprinkled        answer.Kilograms `doc:"water given to the growing grain"`
	CO2              answer.Kilograms `doc:"given off until the grain goes to the kiln"`
	Blown            *Blown           `json:"blown_air,omitempty"`
	Energy           *EnergyTotals    `json:",omitempty" doc:"of the whole process; missing of a forecast that broke off"`
}

// Blown is the air that fans blew through growing and withering beds, and what it took.
type Blown struct {
	Fan     answer.Seconds   `json:"fan_h" doc:"for which they ran"`
	Energy  answer.Joules    `doc:"that they drew"`
	Heat    answer.Joules    `doc:"given to the air"`
	Cold    answer.Joules    `doc:"taken out of it"`
	Sprayed answer.Kilograms `doc:"water sprayed into it"`
}

// blownIn is the air that was blown in a forecast, or nil.
func blownIn(t *forecast.Totals) *Blown {
	if t.FanTime == 0 {
		return nil
	}
	return &Blown{Fan: answer.Seconds(t.FanTime), Energy: answer.Joules(t.FanEnergy), Heat: answer.Joules(t.AirHeat), Cold: answer.Joules(t.AirCold), Sprayed: answer.Kilograms(t.Sprayed)}
}

func totalsOf(f *forecast.Forecast) Totals {
	t := &f.Totals
	out := Totals{
		SteepOut: answer.Seconds(t.SteepOut), SteepOutMoisture: answer.Share(t.SteepOutMoisture), SteepWater: answer.Litres(t.SteepWater),
		Total: answer.Seconds(t.Total), FinalMoisture: answer.Share(t.FinalMoisture), Malt: answer.Kilograms(t.Malt), Rootlets: answer.Kilograms(t.Rootlets),
		Yield: answer.Share(t.Yield), YieldDry: answer.Share(t.YieldDry), DryMatterLost: answer.Share(t.DryMatterLost),
		BedHeat: answer.Joules(t.BedHeat), BedCold: answer.Joules(t.BedCold),
		KilnWater: answer.Kilograms(t.KilnWater), KilnHeat: answer.Joules(t.KilnEnergy), HeatPerKilogram: answer.Joules(t.KilnEnergy / t.Malt), CO2: answer.Kilograms(t.CO2),
		Sprinkled: answer.Kilograms(t.Sprinkled), Blown: blownIn(t), Energy: energyTotalsOf(t),
	}
	if !f.BrokenOff() {
		return out
	}
	return Totals{
		SteepOut: out.SteepOut, SteepOutMoisture: out.SteepOutMoisture, SteepWater: out.SteepWater,
		Total: unknown[answer.Seconds](), FinalMoisture: unknown[answer.Share](), Malt: unknown[answer.Kilograms](), Rootlets: unknown[answer.Kilograms](),
		Yield: unknown[answer.Share](), YieldDry: unknown[answer.Share](), DryMatterLost: unknown[answer.Share](),
		BedHeat: unknown[answer.Joules](), BedCold: unknown[answer.Joules](),
		KilnWater: unknown[answer.Kilograms](), KilnHeat: unknown[answer.Joules](), HeatPerKilogram: unknown[answer.Joules](), CO2: unknown[answer.Kilograms](),
		Sprinkled: unknown[answer.Kilograms](),
	}
}

func ofSteepOutMoisture(t *forecast.Totals) float64 { return t.SteepOutMoisture }
func ofTotal(t *forecast.Totals) float64            { return t.Total }
func ofFinalMoisture(t *forecast.Totals) float64    { return t.FinalMoisture }
func ofMalt(t *forecast.Totals) float64             { return t.Malt }
func ofYield(t *forecast.Totals) float64            { return t.Yield }
func ofDiastatic(t *forecast.Totals) float64        { return t.Quality.Diastatic }

// TotalsSpread is how the totals spread, each under its name in Totals.
type TotalsSpread struct {
	SteepOutMoisture answer.Spread[answer.Share] `json:"steep_out_moisture_wb"`
	Total            answer.Spread[answer.Seconds]
	FinalMoisture    answer.Spread[answer.Share] `json:"final_moisture_wb"`
	Malt             answer.Spread[answer.Kilograms]
	Yield            answer.Spread[answer.Share]  `json:"yield_as_is"`
	Diastatic        answer.Spread[answer.Share]  `json:"diastatic_kept"`
	FuelPerTonne     answer.Spread[answer.Joules] `doc:"of malt"`
	PowerPerTonne    answer.Spread[answer.Joules] `doc:"of malt"`
}

// TotalsOver gives the spread of the totals over an ensemble.
func TotalsOver(e *ensemble.Ensemble) TotalsSpread {
	return TotalsSpread{
		SteepOutMoisture: Points[answer.Share](e.Total(ofSteepOutMoisture)),
		Total:            Points[answer.Seconds](e.Total(ofTotal)),
		FinalMoisture:    Points[answer.Share](e.Total(ofFinalMoisture)),
		Malt:             Points[answer.Kilograms](e.Total(ofMalt)),
		Yield:            Points[answer.Share](e.Total(ofYield)),
		Diastatic:        Points[answer.Share](e.Total(ofDiastatic)),
		FuelPerTonne:     Points[answer.Joules](e.Total(ofFuel)),
		PowerPerTonne:    Points[answer.Joules](e.Total(ofPower)),
	}
}
