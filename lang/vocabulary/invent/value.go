package invent

import (
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// between draws evenly, or one of the ends now and then.
func (w *writer) between(low, high float64) float64 {
	switch w.IntN(8) {
	case 0:
		return low
	case 1:
		return high
	}
	return low + (high-low)*w.Float64()
}

// value draws a value for a slot of the statement, in the unit of its dimension.
func (w *writer) value(d quantity.Dimension, clause string) float64 {
	switch d {
	case quantity.Number, quantity.Count:
		return float64(1 + w.IntN(12))
	case quantity.Share:
		return w.share(clause)
	case quantity.Temperature:
		return w.warmth()
	case quantity.Time:
		return w.hours(clause)
	case quantity.Mass:
		return w.mass(clause)
	case quantity.Volume:
		return w.litres()
	case quantity.Length:
		switch w.word {
		case vocabulary.FactChimney:
			return w.scale(0.5, 30)
		case vocabulary.FactDoor:
			return w.scale(0.005, 0.6)
		}
		return w.between(0, 3000)
	case quantity.Area: // a bed of 3 mm to 1.5 m
		return max(0.0011, w.kg/500/w.scale(0.003, 1.5)) // no less than 10 cm2
	case quantity.Flow:
		if w.word == vocabulary.VerbSoak || w.word == vocabulary.VerbRest {
			return w.kg * w.scale(1e-4, 0.05)
		}
		return max(0.07, w.kg*w.scale(0.05, 15)) // a litre a minute
	}
	return max(0.006, w.kg*w.scale(0.01, 2)) // kW
}

// litres are of a germination test, of a vessel, or sprinkled.
func (w *writer) litres() float64 {
	switch w.word {
	case "germination":
		return w.scale(0.001, 0.08)
	case "holds":
		return w.kg * w.scale(1.5, 100)
	case vocabulary.VerbSoak:
		return w.kg * w.scale(0.6, 15)
	case vocabulary.VerbCool:
		return max(0.001, w.kg*w.scale(0.01, 0.2))
	}
	return w.kg * w.scale(0.001, 1.5)
}

func (w *writer) share(clause string) float64 {
	if w.returns {
		return w.between(0, 98)
	}
	switch w.word {
	case "moisture":
		switch {
		case w.green:
			return w.between(35, 50)
		case w.malted:
			return w.between(1, 12)
		}
		return w.between(5, 20)
	case "protein":
		return w.between(6, 22)
	case "germination":
		return w.between(50, 100)
	case vocabulary.FactReturns:
		return w.between(0, 98)
	case vocabulary.FactRecovers:
		return w.between(5, 95)
	case "heater":
		return w.between(20, 100)
	case "humidity":
		return w.between(20, 100)
	}
	return w.between(1, 60)
}

func (w *writer) warmth() float64 {
	switch w.block {
	case vocabulary.Kiln:
		if w.odds(3) {
			return w.between(20, 180)
		}
		return w.between(30, 95)
	case vocabulary.KilnFacts:
		return w.between(-20, 180)
	}
	return w.between(2, 30)
}

// hours are of an interval, of a guard or of a step; one in eight is absurd.
func (w *writer) hours(clause string) float64 {
	switch {
	case clause == "every":
		return w.scale(1.0/59, 48)
	case w.word == vocabulary.VerbAerate || w.word == vocabulary.VerbAir && clause == "for": // mostly shorter than its interval
		return w.scale(1.0/3600, 1.0/40)
	case w.odds(8):
		return w.scale(100, 1_680_000)
	case w.block == vocabulary.Steep || w.block == vocabulary.Repeat:
		return w.scale(0.01, 12)
	}
	return w.scale(0.02, 200)
}

func (w *writer) mass(clause string) float64 {
	switch {
	case w.word == "kernel-weight":
		return w.between(20, 60)
	case w.word == "from":
		return w.kg
	case w.word == "bag":
		return w.kg * w.scale(0.001, 0.9)
	case w.word == "division": // some thousand of them on the scale
		return w.kg * w.scale(0.0001, 0.001)
	}
	return w.kg * w.scale(0.3, 3)
}
