// Package quantity holds numbers with their units: what the language can write,
// how it converts, and how it is printed again in the unit it was written in.
//
// A Quantity keeps two things: its value in the SI unit of its dimension, for
// reckoning, and its parts as written, for printing. Two dimensions share the
// signs °C and °F: a temperature has a zero, a difference of temperatures has
// none, and As reads the one as the other where the language asks for it. A
// moisture is a share of the whole weight (Share) unless it says "dry basis"
// (DryShare); As converts between them.
package quantity

// Dimension is the kind of thing a quantity measures.
type Dimension int

// The dimensions, with the SI unit of each.
const (
	Number                Dimension = iota // no unit
	Count                                  // times, corns
	Share                                  // 1; a moisture is on the whole weight
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
	Pressure                               // Pa
	Speed                                  // m/s
)

var dimensionWords = [...]string{
	"plain number", "count", "share", "share of the dry matter", "temperature", "difference of temperature",
	"rate of temperature", "time", "weight", "volume", "length", "area", "airflow", "power", "pressure", "speed",
}

// String is the word for the dimension, as a maltster would say it.
func (d Dimension) String() string {
	if d < 0 || int(d) >= len(dimensionWords) {
		return "unknown"
	}
	return dimensionWords[d]
}
