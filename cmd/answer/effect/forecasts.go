package effect

import (
	"context"
	"math"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/visits"
	"maltwright/sim/work"
)

// effects compares the forecasts of the processes that stand on both sides: under one
// name, or the only one of each.
func effects(ctx context.Context, old, new Season) (list []Effect) {
	for _, p := range new.House.Processes {
		q := partner(old.House, p, len(new.House.Processes))
		if q == nil {
			continue
		}
		a, b := forecastOf(ctx, q, old.Pool), forecastOf(ctx, p, new.Pool)
		e := compared(a, b)
		e.Process = p.Name
		list = append(list, e)
	}
	return list
}

func partner(h *model.House, p *model.Process, others int) *model.Process {
	for _, q := range h.Processes {
		if q.Name == p.Name {
			return q
		}
	}
	if len(h.Processes) == 1 && others == 1 {
		return h.Processes[0]
	}
	return nil
}

// forecastOf forecasts a process, or gives nil where it is not sound or not whole.
func forecastOf(ctx context.Context, p *model.Process, pool *work.Pool) *forecast.Forecast {
	if p.Broken {
		return nil
	}
	f, err := forecast.Run(p, forecast.Options{Meter: work.NewMeter(ctx, pool)})
	if err != nil || f.BrokenOff() {
		return nil
	}
	return f
}

// compared sets two forecasts side by side, one of which may be nil.
func compared(a, b *forecast.Forecast) Effect {
	x, y := figuresOf(a), figuresOf(b)
	e := Effect{
		Complete:         a != nil && b != nil,
		SteepOut:         pair[answer.Seconds](x.SteepOut, y.SteepOut),
		SteepOutMoisture: pair[answer.Share](x.SteepOutMoisture, y.SteepOutMoisture),
		Total:            pair[answer.Seconds](x.Total, y.Total),
		FinalMoisture:    pair[answer.Share](x.FinalMoisture, y.FinalMoisture),
		Malt:             pair[answer.Kilograms](x.Malt, y.Malt),
		Yield:            pair[answer.Share](x.Yield, y.Yield),
		DryMatterLost:    pair[answer.Share](x.DryMatterLost, y.DryMatterLost),
		DiastaticKept:    pair[answer.Share](x.Quality.Diastatic, y.Quality.Diastatic),
		AlphaKept:        pair[answer.Share](x.Quality.Alpha, y.Quality.Alpha),
		Colour:           pair[answer.Colour](x.Quality.Colour, y.Quality.Colour),
		SteepWater:       pair[answer.Litres](x.SteepWater, y.SteepWater),
		Sprinkled:        pair[answer.Kilograms](x.Sprinkled, y.Sprinkled),
		Fan:              pair[answer.Seconds](x.FanTime, y.FanTime),
		FanEnergy:        pair[answer.Joules](x.FanEnergy, y.FanEnergy),
		AirHeat:          pair[answer.Joules](x.AirHeat, y.AirHeat),
		AirCold:          pair[answer.Joules](x.AirCold, y.AirCold),
		Sprayed:          pair[answer.Kilograms](x.Sprayed, y.Sprayed),
		Apart:            pair[answer.Kelvin](apart(a), apart(b)),
		KilnHeat:         pair[answer.Joules](x.KilnEnergy, y.KilnEnergy),
		FuelPerTonne:     pair[answer.Joules](eachTonne(&x, x.Energy.Fuel), eachTonne(&y, y.Energy.Fuel)),
		PowerPerTonne:    pair[answer.Joules](eachTonne(&x, x.Energy.Power), eachTonne(&y, y.Energy.Power)),
		BedPeak:          pair[answer.Watts](bedPeak(a), bedPeak(b)),
		NightVisits:      Counts{nightVisits(a), nightVisits(b)},
		OldKilned:        kilned(a), NewKilned: kilned(b),
	}
	switch {
	case a == nil:
		e.NotForecast = OldSide
	case b == nil:
		e.NotForecast = NewSide
	default:
		e.Gates = gates(outlook.AskedOf(a).Gates, outlook.AskedOf(b).Gates)
	}
	return e
}

func kilned(f *forecast.Forecast) bool { return f != nil && !f.BrokenOff() && f.FirstKiln() != nil }

func pair[T answer.Single](old, new float64) Pair[T] { return Pair[T]{T(old), T(new)} }

// apart is the most by which bottom and top of a bed differ that air is blown through, K.
func apart(f *forecast.Forecast) float64 {
	most := math.NaN()
	if f == nil {
		return most
	}
	for _, p := range f.Pieces {
		if p.Blown == nil || p.Blown.Fan == 0 {
			continue
		}
		if by := p.Blown.Uneven.Difference(); !(by <= most) {
			most = by
		}
	}
	return most
}

// eachTonne is a figure for each tonne of malt.
func eachTonne(t *forecast.Totals, figure float64) float64 { return 1000 * figure / t.Malt }

// bedPeak is the most heat that a bed makes, W.
func bedPeak(f *forecast.Forecast) float64 {
	if f == nil || len(f.Pieces) == 0 {
		return math.NaN()
	}
	most := 0.0
	for _, p := range f.Pieces {
		most = max(most, p.Heat.Peak)
	}
	return most
}

// figuresOf are the totals of a forecast. What a kiln does to the malt is not known where
// there is none: malt that has been on none has no colour of its own.
func figuresOf(f *forecast.Forecast) forecast.Totals {
	none := math.NaN()
	if f == nil {
		t := forecast.Totals{SteepOut: none, SteepOutMoisture: none, Total: none, FinalMoisture: none, Malt: none, Yield: none,
			DryMatterLost: none, SteepWater: none, KilnEnergy: none, Sprinkled: none}
		t.Quality.Diastatic, t.Quality.Alpha, t.Quality.Colour = none, none, none
		unblown(&t)
		return t
	}
	t := f.Totals
	if t.FanTime == 0 {
		unblown(&t)
	}
	if t.Quality.Colour == 0 {
		t.Quality.Diastatic, t.Quality.Alpha, t.Quality.Colour = none, none, none
	}
	return t
}

// unblown leaves what fans did unknown.
func unblown(t *forecast.Totals) {
	none := math.NaN()
	t.FanTime, t.FanEnergy, t.AirHeat, t.AirCold, t.Sprayed = none, none, none, none, none
}

// nightVisits is how many visits of the timetable fall in the night, at the hour to begin
// at which the fewest do; nil where the site does not say when somebody is awake.
func nightVisits(f *forecast.Forecast) *int {
	if f == nil || f.Process.Site == nil || !f.Process.Site.Said() {
		return nil
	}
	list := visits.Gather(visits.List(f))
	if len(list) == 0 {
		return nil
	}
	best, _ := visits.Best(list, f.Process.Site.Hours, visits.Daily)
	n := len(best.Missed)
	return &n
}
