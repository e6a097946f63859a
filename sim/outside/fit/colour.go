package main

import (
	"math"
	"sync"

	"maltwright/sim/outside/figure"
	"maltwright/sim/quality"
)

// colouringOf are the constants of the colour: EBC/h, kJ/mol, EBC, 1/EBC.
func colouringOf(p []float64) quality.Colouring {
	return quality.Colouring{Rate: p[0] / hour, Energy: p[1] * 1e3, StewMost: p[2], StewSpent: p[3]}
}

// colouring is the fit of how heat colours malt. Figures are compared by the logarithm, so that
// dark malts count no more than pale ones.
func colouring() *problem {
	u := quality.Usual()
	const ours = "no figure is published"
	p := &problem{
		name: "How heat colours malt",
		says: "The rate at 85 °C and 6 %, its energy, and how much darker stewing makes malt and how fast that is used up, fitted to malts in trade by the logarithm of their colour; a band is taken as a rectangular distribution, its half-width over √3 " +
			"[gum-2008], and besides a tenth for hours and airflow, which no source gives. The tray of the published schedules stands for all of them, and the malt is chalky. Half of the schedules are from memory, and the rise with the moisture, the pace of the stew and the mash were set by hand before, with the pilsner that is held in view: six figures cannot tell more. Before stands what was set by hand.",
		parameters: []parameter{
			{"colourRate", "EBC/h", 2, 0.31, u.Rate * hour, 0.3, math.Log(3), true, ours},
			{"colourEnergy", "kJ/mol", 0, 115, u.Energy / 1e3, 115, 15, false, "100 to 130 (from memory)"},
			{"stewMost", "EBC", 1, 19, u.StewMost, 15, math.Log(3), true, ours},
			{"stewSpent", "1/EBC", 2, 1.2, u.StewSpent, 1, math.Log(3), true, ours},
		},
	}
	fitted, out := figure.Colours()
	for _, c := range fitted {
		p.fitted = append(p.fitted, byLogarithm(c))
	}
	for _, c := range out {
		p.held = append(p.held, held{c.Figure, colourOf(c)})
	}
	return p
}

// hoursUnknown is the error of a colour for what its source does not give: hours, airflow.
const hoursUnknown = 0.1

func byLogarithm(c figure.Coloured) observation {
	half := math.Log(c.Accepted.High/c.Accepted.Low) / 2
	return observation{Figure: c.Figure, by: math.Hypot(half/math.Sqrt(3), hoursUnknown), log: true, model: colourOf(c)}
}

// colourOf gives the colour of a malt by parameters; its way is taken once.
func colourOf(c figure.Coloured) func([]float64) (float64, error) {
	way := sync.OnceValues(c.Way)
	return func(p []float64) (float64, error) {
		w, err := way()
		if err != nil {
			return 0, err
		}
		return w.Colour(colouringOf(p)), nil
	}
}
