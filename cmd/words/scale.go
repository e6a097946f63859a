package words

import (
	"math"

	"maltwright/lang/quantity"
)

// Scale is how figures stand in a table, their unit at the head of it.
type Scale struct {
	Unit   string // "" for a bare number
	of     func(si float64) float64
	places func(shown float64) int
}

// The scales that are the same for every house.
var (
	Hours      = Scale{"h", func(s float64) float64 { return s / 3600 }, always(1)}
	Days       = Scale{"d", func(s float64) float64 { return s / 86400 }, always(1)}
	Shares     = Scale{"%", func(x float64) float64 { return 100 * x }, always(1)}
	Kernels    = Scale{"", func(x float64) float64 { return x }, always(2)} // lengths in kernels
	Colours    = Scale{"EBC", func(x float64) float64 { return x }, colourPlaces}
	Diastatics = Scale{"°WK", func(x float64) float64 { return x }, always(0)}
	Dissolved  = Scale{"mg/l", func(x float64) float64 { return 1e3 * x }, always(0)}
	Contents   = Scale{"mg/kg", func(x float64) float64 { return 1e6 * x }, always(2)}
	Traces     = Scale{"µg/kg", func(x float64) float64 { return 1e9 * x }, always(1)}
	Counted    = Scale{"", func(x float64) float64 { return x }, always(0)}
)

func always(n int) func(float64) int { return func(float64) int { return n } }

// colourPlaces are those of a colour: nobody tells 301.2 EBC from 301.
func colourPlaces(shown float64) int {
	if shown >= 50 {
		return 0
	}
	return 1
}

// Warmth is the scale of temperatures.
func (h House) Warmth() Scale { return Scale{h.Degree(), h.Temperature, always(1)} }

// Weights is the scale of weights for a batch of so many kg: g or oz for one below a kg or
// a lb. They have three figures, as a scale has.
func (h House) Weights(batch float64) Scale {
	switch pounds := batch / quantity.Pound; {
	case h.British && pounds < 1:
		return Scale{"oz", func(kg float64) float64 { return 16 * kg / quantity.Pound }, threeFigures}
	case h.British:
		return Scale{"lb", func(kg float64) float64 { return kg / quantity.Pound }, threeFigures}
	case batch < 1:
		return Scale{"g", func(kg float64) float64 { return 1000 * kg }, threeFigures}
	}
	return Scale{"kg", func(kg float64) float64 { return kg }, threeFigures}
}

func threeFigures(shown float64) int {
	switch v := math.Abs(shown); {
	case v >= 100:
		return 0
	case v < 10:
		return 2
	}
	return 1
}

// Write writes a figure without its unit.
func (s Scale) Write(si float64) string {
	v := s.of(si)
	return quantity.Fixed(v, s.places(v))
}

// Near writes a figure with as many digits as another of the scale.
func (s Scale) Near(si, like float64) string { return quantity.Fixed(s.of(si), s.places(s.of(like))) }

// Change writes a difference with its sign, with as many digits as a figure of the scale;
// of a °F too it has no offset.
func (s Scale) Change(si, like float64) string {
	by, places := s.of(si)-s.of(0), s.places(s.of(like))
	if text := quantity.Signed(by, places); text != "" {
		return text
	}
	return quantity.Fixed(0, places)
}
