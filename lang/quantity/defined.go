package quantity

// What other packages reckon in, exact by definition.
const (
	// ZeroCelsius is 0 °C in K.
	ZeroCelsius = 273.15
	// FahrenheitSteps is how many °F a kelvin is.
	FahrenheitSteps = 1.8
	// Pound is the pound in kg.
	Pound = 0.45359237
	// Inch and Foot are in m.
	Inch, Foot = 0.0254, 12 * 0.0254
	// KilowattHour is in J.
	KilowattHour = 3.6e6
)

// Fahrenheit gives the temperature of t °C in °F.
func Fahrenheit(t float64) float64 { return t*9/5 + 32 }

// Celsius gives the temperature of t °F in °C.
func Celsius(t float64) float64 { return (t - 32) * 5 / 9 }
