package command

import (
	"fmt"
	"math"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// house units: a forecast is shown in the units that its process is written in.
// JSON and CSV are always in kg and °C.

const kilogramsPerPound = 0.45359237

// shownIn tells whether a process is written in pounds, and in °F.
func shownIn(p *model.Process) (pounds, fahrenheit bool) {
	u := p.Units()
	return u.British, u.Fahrenheit
}

// mass writes a weight in the unit of the process.
func (p *sheet) mass(kg float64) string {
	if !p.pounds {
		return kilograms(kg)
	}
	lb := kg / kilogramsPerPound
	switch {
	case lb < 1:
		return fmt.Sprintf("%.1f oz", 16*lb)
	case lb < 10:
		return fmt.Sprintf("%.2f lb", lb)
	case lb < 100:
		return fmt.Sprintf("%.1f lb", lb)
	}
	return fmt.Sprintf("%.0f lb", lb)
}

// warmth writes a temperature of the table in the unit of the process.
func (p *sheet) warmth(t forecast.Temperature) string {
	if p.fahrenheit {
		// whole degrees: a tenth of a °F is finer than any kiln is held
		t.From, t.To = math.Round(fahrenheitOf(t.From)), math.Round(fahrenheitOf(t.To))
	}
	return t.Text()
}

func fahrenheitOf(c float64) float64 { return c*9/5 + 32 }

func (p *sheet) degree() string {
	if p.fahrenheit {
		return "°F"
	}
	return "°C"
}
