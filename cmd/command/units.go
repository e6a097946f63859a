package command

import (
	"fmt"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

// house units: a forecast is shown in the units that its process is written in.
// JSON and CSV are always in kg and °C.

const kilogramsPerPound = 0.45359237

// shownIn tells whether a process is written in pounds, and whether most of its
// temperatures are in °F.
func shownIn(p *model.Process) (pounds, fahrenheit bool) {
	if p.Charge != nil {
		pounds = p.Charge.Unit() == "lb" || p.Charge.Unit() == "oz"
	}
	count := 0
	look := func(q quantity.Quantity) {
		if q.Unit() == "°F" {
			count++
		} else if q.Dimension == quantity.Temperature {
			count--
		}
	}
	for _, st := range p.Stages {
		if w, ok := st.(*model.Withering); ok && w.Air != nil {
			look(w.Air.High)
		}
		for _, s := range model.EveryStep(model.StepsOf(st)) {
			for _, t := range []*model.Temperature{s.Warmth().At, s.Warmth().From} {
				if t != nil {
					look(t.High)
				}
			}
		}
	}
	return pounds, count > 0
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
