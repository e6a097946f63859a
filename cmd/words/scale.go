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

	write func(si float64) string // of figures that bring their unit along; nil where it stands at the head
}

// The scales that are the same for every house.
var (
	Times      = Scale{write: recorded} // lengths of time, as records have them
	Shares     = Scale{Unit: "%", of: func(x float64) float64 { return 100 * x }, places: always(1)}
	Kernels    = Scale{Unit: "", of: func(x float64) float64 { return x }, places: always(2)} // lengths in kernels
	Colours    = Scale{Unit: "EBC", of: func(x float64) float64 { return x }, places: colourPlaces}
	Diastatics = Scale{Unit: "°WK", of: func(x float64) float64 { return x }, places: always(0)}
	Dissolved  = Scale{Unit: "mg/l", of: func(x float64) float64 { return 1e3 * x }, places: always(0)}
	Contents   = Scale{Unit: "mg/kg", of: func(x float64) float64 { return 1e6 * x }, places: always(2)}
	Traces     = Scale{Unit: "µg/kg", of: func(x float64) float64 { return 1e9 * x }, places: always(1)}
	Counted    = Scale{Unit: "", of: func(x float64) float64 { return x }, places: always(0)}
)

// recorded writes a length of time that was read off a record: of less than a day to 5 minutes.
func recorded(s float64) string {
	const fine = 300
	if known(s) && s >= 3600 && s < 86400-fine/2 {
		return quantity.InFull(fine * math.Round(s/fine))
	}
	return Lasting(s)
}

func always(n int) func(float64) int { return func(float64) int { return n } }

// colourPlaces are those of a colour: nobody tells 301.2 EBC from 301.
func colourPlaces(shown float64) int {
	if shown >= 50 {
		return 0
	}
	return 1
}

// Warmth is the scale of temperatures.
func (h House) Warmth() Scale { return Scale{Unit: h.Degree(), of: h.Temperature, places: always(1)} }

// Weights is the scale of weights for a batch of so many kg: g or oz for one below a kg or
// a lb. They have three figures, as a scale has.
func (h House) Weights(batch float64) Scale {
	switch pounds := batch / quantity.Pound; {
	case h.British && pounds < 1:
		return Scale{Unit: "oz", of: func(kg float64) float64 { return 16 * kg / quantity.Pound }, places: threeFigures}
	case h.British:
		return Scale{Unit: "lb", of: func(kg float64) float64 { return kg / quantity.Pound }, places: threeFigures}
	case batch < 1:
		return Scale{Unit: "g", of: func(kg float64) float64 { return 1000 * kg }, places: threeFigures}
	}
	return Scale{Unit: "kg", of: func(kg float64) float64 { return kg }, places: threeFigures}
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

// Depths is the scale of the depth of a bed, of m.
func (h House) Depths() Scale {
	if h.British {
		return Scale{Unit: "in", of: func(m float64) float64 { return m / quantity.Inch }, places: always(1)}
	}
	return Scale{Unit: "cm", of: func(m float64) float64 { return 100 * m }, places: always(1)}
}

// Airflows is the scale of air through a bed, of m³/s.
func (h House) Airflows() Scale {
	if h.British {
		return Scale{Unit: "cfm", of: func(si float64) float64 { return 60 * si / (quantity.Foot * quantity.Foot * quantity.Foot) }, places: threeFigures}
	}
	return Scale{Unit: "m3/h", of: func(si float64) float64 { return 3600 * si }, places: threeFigures}
}

// Shown is a figure in the unit of the scale, as a chart has it; NaN of one that is not known, and of a
// scale that brings its units along.
func (s Scale) Shown(si float64) float64 {
	if s.of == nil || !known(si) {
		return math.NaN()
	}
	return s.of(si)
}

// Places is how many digits behind the point a figure like this has.
func (s Scale) Places(like float64) int {
	if s.places == nil || !known(like) {
		return 0
	}
	return s.places(s.of(like))
}

// Write writes a figure without its unit.
func (s Scale) Write(si float64) string {
	if s.write != nil {
		return s.write(si)
	}
	v := s.of(si)
	return quantity.Fixed(v, s.places(v))
}

// Near writes a figure with as many digits as another of the scale.
func (s Scale) Near(si, like float64) string {
	if s.write != nil {
		return s.write(si)
	}
	return quantity.Fixed(s.of(si), s.places(s.of(like)))
}

// Change writes a difference with its sign, with as many digits as a figure of the scale;
// of a °F too it has no offset.
func (s Scale) Change(si, like float64) string {
	if s.write != nil {
		if text := More(si); text != "" {
			return text
		}
		return s.write(0)
	}
	by, places := s.of(si)-s.of(0), s.places(s.of(like))
	if text := quantity.Signed(by, places); text != "" {
		return text
	}
	return quantity.Fixed(0, places)
}
