package quantity

// Exact by definition: the Inch, the pound, the gallons and the British thermal
// unit of the International Table (NIST Special Publication 811, appendix B).
const (
	usGallon  = 3.785411784e-3
	impGallon = 4.54609e-3
	btu       = 1055.05585262
	psi       = 4.4482216152605 / (Inch * Inch) // a pound-force on a square inch
	minute    = 60.0
	hour      = 3600.0
	day       = 24 * hour
	fahrSize  = 5.0 / 9
	zeroF     = 459.67 * fahrSize
)

// The conventional millimetre of water, Pa (NIST Special Publication 811, appendix B).
const mmOfWater = 9.80665

// Usual conversions of laboratories between scales of colour and of diastatic power,
// each by its slope and its value at nothing: EBC = 2.65 °L − 1.2 and
// °WK = 3.5 °Lintner − 16 (common practice).
const (
	lovibond, zeroLovibond = 2.65, -1.2
	lintner, zeroLintner   = 3.5, -16
)

// unitTable is every unit of the language: a new one is a row here. The last column is
// the digits behind the point beyond which a reckoned value says nothing.
var unitTable = []Unit{
	{"times", "time", []string{"x"}, Count, 1, 0, "how often", 0},
	{"kernels", "kernel", []string{"corns", "corn", "grains", "grain"}, Count, 1, 0, "single kernels", 0},
	{"hands", "hand", []string{"people", "persons", "person"}, Count, 1, 0, "people at work", 0},

	{"%", "", []string{"percent", "per cent", "pct", "% wet basis", "% w.b.", "% wb"}, Share, 0.01, 0, "per cent; a moisture is of the whole weight", 1},
	{"% dry basis", "", []string{"% d.b.", "% db"}, DryShare, 0.01, 0, "per cent of the dry matter", 1},

	{"°C", "", []string{"C", "c", "°c", "ºC", "degC", "celsius", "Celsius", "centigrade", "Centigrade", "oC"}, Temperature, 1, ZeroCelsius, "degrees Celsius", 1},
	{"°F", "", []string{"F", "f", "°f", "ºF", "degF", "fahrenheit", "Fahrenheit", "oF"}, Temperature, fahrSize, zeroF, "degrees Fahrenheit", 0},
	{"K", "", []string{"kelvin", "Kelvin"}, Temperature, 1, 0, "kelvin", 1},

	{"°C/h", "", []string{"C/h", "ºC/h", "degC/h", "°C/hour"}, TemperatureRate, 1 / hour, 0, "degrees Celsius an hour", 1},
	{"°F/h", "", []string{"F/h", "ºF/h", "degF/h", "°F/hour"}, TemperatureRate, fahrSize / hour, 0, "degrees Fahrenheit an hour", 1},
	{"K/h", "", nil, TemperatureRate, 1 / hour, 0, "kelvin an hour", 1},
	{"°C/min", "", []string{"C/min", "ºC/min", "degC/min"}, TemperatureRate, 1 / minute, 0, "degrees Celsius a minute", 2},
	{"°F/min", "", []string{"F/min", "ºF/min", "degF/min"}, TemperatureRate, fahrSize / minute, 0, "degrees Fahrenheit a minute", 2},

	{"s", "", []string{"sec", "secs", "second", "seconds"}, Time, 1, 0, "seconds", 1},
	{"min", "", []string{"mins", "minute", "minutes"}, Time, minute, 0, "minutes", 1},
	{"h", "", []string{"hr", "hrs", "hour", "hours", "H"}, Time, hour, 0, "hours", 2},
	{"days", "day", []string{"d"}, Time, day, 0, "days of 24 h", 2},
	{"weeks", "week", []string{"wk", "wks"}, Time, 7 * day, 0, "weeks", 2},

	{"mg", "", []string{"milligram", "milligrams"}, Mass, 1e-6, 0, "milligrams", 1},
	{"g", "", []string{"gram", "grams", "gramme", "grammes"}, Mass, 1e-3, 0, "grams", 2},
	{"kg", "", []string{"kgs", "Kg", "kilo", "kilos", "kilogram", "kilograms"}, Mass, 1, 0, "kilograms", 3},
	{"t", "", []string{"tonne", "tonnes"}, Mass, 1000, 0, "tonnes of 1000 kg", 3},
	{"oz", "", []string{"ounce", "ounces"}, Mass, Pound / 16, 0, "ounces (avoirdupois)", 2},
	{"lb", "", []string{"lbs", "pound", "pounds"}, Mass, Pound, 0, "pounds (avoirdupois)", 3},
	{"ton-us", "", []string{"short-ton", "short ton", "short tons"}, Mass, 2000 * Pound, 0, "short tons of 2000 lb", 3},
	{"ton-imp", "", []string{"long-ton", "long ton", "long tons"}, Mass, 2240 * Pound, 0, "long tons of 2240 lb", 3},

	{"ml", "", []string{"mL", "cc", "millilitre", "millilitres", "milliliter", "milliliters"}, Volume, 1e-6, 0, "millilitres", 1},
	{"l", "", []string{"L", "litre", "litres", "liter", "liters", "ltr"}, Volume, 1e-3, 0, "litres", 2},
	{"hl", "", []string{"hL", "hectolitre", "hectolitres", "hectoliter", "hectoliters"}, Volume, 0.1, 0, "hectolitres", 3},
	{"m3", "", []string{"m³", "m^3", "cu m", "cubic metre", "cubic metres", "cubic meter", "cubic meters"}, Volume, 1, 0, "cubic metres", 3},
	{"gal-us", "", []string{"gal-US"}, Volume, usGallon, 0, "US gallons of 3.785 l", 2},
	{"gal-imp", "", []string{"gal-uk", "gal-UK"}, Volume, impGallon, 0, "imperial gallons of 4.546 l", 2},
	{"qt-us", "", []string{"qt-US"}, Volume, usGallon / 4, 0, "US quarts of 946 ml", 2},
	{"qt-imp", "", []string{"qt-uk", "qt-UK"}, Volume, impGallon / 4, 0, "imperial quarts of 1.137 l", 2},
	{"pt-us", "", []string{"pt-US"}, Volume, usGallon / 8, 0, "US pints of 473 ml", 2},
	{"pt-imp", "", []string{"pt-uk", "pt-UK"}, Volume, impGallon / 8, 0, "imperial pints of 568 ml", 2},
	{"ft3", "", []string{"ft³", "ft^3", "cuft", "cu ft", "cubic foot", "cubic feet"}, Volume, Foot * Foot * Foot, 0, "cubic feet", 3},

	{"mm", "", []string{"millimetre", "millimetres", "millimeter", "millimeters"}, Length, 1e-3, 0, "millimetres", 1},
	{"cm", "", []string{"centimetre", "centimetres", "centimeter", "centimeters"}, Length, 1e-2, 0, "centimetres", 1},
	{"m", "", []string{"metre", "metres", "meter", "meters"}, Length, 1, 0, "metres", 2},
	{"in", "", []string{"inch", "inches"}, Length, Inch, 0, "inches", 2},
	{"ft", "", []string{"foot", "feet"}, Length, Foot, 0, "feet", 2},

	{"cm2", "", []string{"cm²", "cm^2", "sq cm"}, Area, 1e-4, 0, "square centimetres", 0},
	{"m2", "", []string{"m²", "m^2", "sqm", "sq m", "square metre", "square metres", "square meter", "square meters"}, Area, 1, 0, "square metres", 2},
	{"in2", "", []string{"in²", "in^2", "sqin", "sq in", "square inch", "square inches"}, Area, Inch * Inch, 0, "square inches", 0},
	{"ft2", "", []string{"ft²", "ft^2", "sqft", "sq ft", "sq feet", "sf", "square foot", "square feet"}, Area, Foot * Foot, 0, "square feet", 2},

	{"m3/h", "", []string{"m³/h", "m^3/h", "cbm/h"}, Flow, 1 / hour, 0, "cubic metres an hour", 1},
	{"m3/s", "", []string{"m³/s", "m^3/s"}, Flow, 1, 0, "cubic metres a second", 4},
	{"l/s", "", []string{"L/s"}, Flow, 1e-3, 0, "litres a second", 2},
	{"l/h", "", []string{"L/h"}, Flow, 1e-3 / hour, 0, "litres an hour", 1},
	{"l/min", "", []string{"L/min", "lpm", "LPM"}, Flow, 1e-3 / minute, 0, "litres a minute", 1},
	{"cfm", "", []string{"CFM", "ft3/min", "ft³/min", "cu ft/min"}, Flow, Foot * Foot * Foot / minute, 0, "cubic feet a minute", 1},

	{"W", "", []string{"watt", "watts"}, Power, 1, 0, "watts", 0},
	{"kW", "", []string{"kw", "KW", "kilowatt", "kilowatts"}, Power, 1000, 0, "kilowatts", 2},
	{"Btu/h", "", []string{"BTU/h", "btu/h"}, Power, btu / hour, 0, "British thermal units an hour", 0},

	{"kJ", "", []string{"kj", "kilojoule", "kilojoules"}, Energy, 1e3, 0, "kilojoules", 1},
	{"MJ", "", []string{"megajoule", "megajoules"}, Energy, 1e6, 0, "megajoules", 2},
	{"kWh", "", []string{"kwh", "KWh", "KWH"}, Energy, 1000 * hour, 0, "kilowatt hours", 2},

	{"Pa", "", []string{"pascal", "pascals"}, Pressure, 1, 0, "pascals", 0},
	{"hPa", "", []string{"mbar", "millibar"}, Pressure, 100, 0, "hectopascals, as a weather report gives them", 1},
	{"kPa", "", nil, Pressure, 1000, 0, "kilopascals", 2},
	{"psi", "", []string{"PSI"}, Pressure, psi, 0, "pounds on a square inch", 2},
	{"mm of water", "", []string{"mm water", "mmH2O", "mm H2O", "mmWC", "mmWG", "mmWS", "mmAq", "mm wc", "mm wg", "mm w.c.", "mm w.g.", "mm WC", "mm WG", "mm WS"}, Pressure, mmOfWater, 0, "millimetres of water, as a tube on a fan shows them", 1},
	{"inches of water", "inch of water", []string{"in of water", "inches water", "inch water", "inH2O", "in H2O", "inches H2O", "inWC", "inWG", "in wc", "in wg", "in w.c.", "in w.g.", "in WC", "in WG", "inches wc", "inches wg"}, Pressure, Inch * 1000 * mmOfWater, 0, "inches of water", 2},

	{"m/s", "", nil, Speed, 1, 0, "metres a second", 3},
	{"ft/min", "", []string{"fpm"}, Speed, Foot / minute, 0, "feet a minute", 1},

	{"l/t", "", []string{"L/t"}, Dose, 1e-6, 0, "litres for each tonne", 1},
	{"l/kg", "", []string{"L/kg"}, Dose, 1e-3, 0, "litres for each kilogram", 3},
	{"EBC", "", []string{"°EBC", "ºEBC"}, Colour, 1, 0, "units of colour of the European Brewery Convention", 1},
	{"Lovibond", "", []string{"°L", "ºL", "degL", "lovibond", "°Lovibond"}, Colour, lovibond, zeroLovibond, "degrees Lovibond; °L is never taken for Lintner", 1},

	{"°WK", "", []string{"WK", "ºWK"}, DiastaticPower, 1, 0, "units of diastatic power by Windisch and Kolbach", 0},
	{"°Lintner", "", []string{"Lintner", "lintner", "ºLintner", "degLintner"}, DiastaticPower, lintner, zeroLintner, "degrees Lintner of diastatic power", 0},

	{"mg/kg", "", nil, MassFraction, 1e-6, 0, "milligrams in a kilogram", 2},
	{"µg/kg", "", []string{"μg/kg", "ug/kg"}, MassFraction, 1e-9, 0, "micrograms in a kilogram", 1},

	{"mg/l", "", []string{"mg/L"}, Concentration, 1e-3, 0, "milligrams in a litre", 0},
}
