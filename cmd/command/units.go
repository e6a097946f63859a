package command

import (
	"fmt"

	"maltwright/lang/model"
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

func fahrenheitOf(c float64) float64 { return c*9/5 + 32 }
