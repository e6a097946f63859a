// Package quantity holds numbers with their units: what the language can write,
// how it converts, and how it is printed again in the unit it was written in.
package quantity

// How it works
//
// One table of units (table.go) gives every unit its spellings, dimension, factor
// and offset. Make reads the number and looks up the unit of each part as written;
// Parse first cuts a text into such parts. A Quantity then keeps two things: its
// value in the SI unit of its dimension, for reckoning, and its parts as written,
// for printing.
//
// Two dimensions share the signs °C, °F and K: a temperature has a zero, a
// difference of temperatures has none, and As reads the one as the other where the
// language asks for it. A moisture is a share of the whole weight (Share) unless it
// says "dry basis" (DryShare); As converts between them.
//
// Nothing here is NaN or infinite: a number has at most 24 characters and is
// refused above 1e12.

// Dimension is the kind of thing a quantity measures.
type Dimension int

// The dimensions, with the SI unit of each.
const (
	Number                Dimension = iota // no unit
	Count                                  // 1: times, kernels
	Share                                  // 1: a moisture is on the whole weight
	DryShare                               // kg of water per kg of dry matter
	Temperature                            // K
	TemperatureDifference                  // K
	TemperatureRate                        // K/s
	Time                                   // s
	Mass                                   // kg
	Volume                                 // m³
	Length                                 // m
	Area                                   // m²
	Flow                                   // m³/s
	Power                                  // W
	Energy                                 // J
	Pressure                               // Pa
	Speed                                  // m/s
	Dose                                   // m³ for each kg
	Colour                                 // EBC units
	DiastaticPower                         // °WK
	MassFraction                           // kg/kg
	Concentration                          // kg/m³, which is g/l
)

// dimensionRow says how quantities of a dimension are named and shown.
type dimensionRow struct {
	word     string
	figures  int // significant figures worth showing of a reckoned value
	compound int // digits behind the point of the last of several parts; -1: has one part only
}

// A weighing gets a figure more than the rest: a scale reads 158.6 g, a clock or
// an airflow is never known so well.
var dimensions = [...]dimensionRow{
	Number:                {"plain number", 3, -1},
	Count:                 {"count", 3, -1},
	Share:                 {"share", 3, -1},
	DryShare:              {"share of the dry matter", 3, -1},
	Temperature:           {"temperature", 4, -1},
	TemperatureDifference: {"difference of temperature", 4, -1},
	TemperatureRate:       {"rate of temperature", 3, -1},
	Time:                  {"time", 3, 0},
	Mass:                  {"weight", 4, 1},
	Volume:                {"volume", 3, 1},
	Length:                {"length", 3, 1},
	Area:                  {"area", 3, -1},
	Flow:                  {"flow", 3, -1},
	Power:                 {"power", 3, -1},
	Energy:                {"energy", 3, -1},
	Pressure:              {"pressure", 4, -1},
	Speed:                 {"speed", 3, -1},
	Dose:                  {"volume for a weight", 3, -1},
	Colour:                {"colour", 3, -1},
	DiastaticPower:        {"diastatic power", 3, -1},
	MassFraction:          {"content", 3, -1},
	Concentration:         {"concentration", 3, -1},
}

func (d Dimension) row() dimensionRow {
	if d < 0 || int(d) >= len(dimensions) {
		return dimensionRow{"kind unknown", 3, -1}
	}
	return dimensions[d]
}

// String is the word for the dimension, as a maltster would say it.
func (d Dimension) String() string { return d.row().word }

// withArticle is "a weight" or "an area", for a message.
func (d Dimension) withArticle() string {
	switch d {
	case Area, Energy:
		return "an " + d.String()
	}
	return "a " + d.String()
}
