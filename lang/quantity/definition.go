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

// Fahrenheit gives a temperature of °C in °F.
func Fahrenheit(celsius float64) float64 { return celsius*9/5 + 32 }

// Celsius gives a temperature of °F in °C.
func Celsius(fahrenheit float64) float64 { return (fahrenheit - 32) * 5 / 9 }
