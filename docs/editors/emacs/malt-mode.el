;; The words: made from the vocabulary by the tests of cmd/write/highlight; do not edit.

(defconst malt--includes
  '("use")
  "Words: bring in another file.")

(defconst malt--definitions
  '("batch" "floor" "grain" "house" "kiln" "process" "scale" "site" "vessel")
  "Words: give a name to what their block says.")

(defconst malt--acts
  '("accept" "aerate" "air" "allow" "at" "bag" "began" "changed" "cool"
    "counted" "cure" "deculm" "dry" "expect" "felt" "for" "from" "gate"
    "germinate" "hold" "humidity" "kiln" "limits" "make" "pinned" "read"
    "remark" "repeat" "rest" "roast" "sample" "soak" "sprinkle" "steep"
    "stew" "stir" "store" "tare" "tested" "turn" "turned" "until" "weighed"
    "wither")
  "Words: begin a step, a stage, a setting or a line of a record.")

(defconst malt--facts
  '("airflow" "airless-time" "already" "altitude" "area" "awake" "away"
    "bed-temperature" "chimney" "chit" "cooler" "corn-weight" "deculm-wait"
    "delivered" "division" "door" "draught" "drying" "end-moisture" "ergot"
    "fan" "fired" "germination" "growth" "heater" "holds" "husk-water"
    "kernel-weight" "moisture" "mould" "protein" "reaches" "recovers"
    "respiration" "returns" "rise-rate" "soak-time" "species" "steep-water"
    "store-rest" "thermometer" "treated" "tumbles" "turn-gap" "uptake"
    "walls" "water" "weighs" "withering" "withering-time")
  "Words: begin a fact.")

(defconst malt--numbered
  '("changed")
  "Words: begin a statement of a step and its number.")

(defconst malt--steps
  '("cool" "cure" "deculm" "dry" "germinate" "hold" "rest" "roast" "soak"
    "stew" "wither")
  "Words: the steps that can be numbered there.")

(defconst malt--clauses
  '("after" "allow" "as" "at" "batches" "because" "by" "error" "every" "for"
    "from" "in" "of" "on" "over" "scatter" "to" "until" "when" "with"
    "within")
  "Words: open a clause.")

(defconst malt--bounds
  '("at least" "at most" "above" "below" "is")
  "Words: stand in front of a value as its bound.")

(defconst malt--signs
  '("≤" "≥" "<=" "=<" "==" "=>" ">=" "<" "=" ">")
  "Words: signs of a bound.")

(defconst malt--and
  '("and")
  "Words: joins two tests.")

(defconst malt--to
  '("to")
  "Words: stands between two ends of a range.")

(defconst malt--places
  '("acrospire" "air" "air-off" "air-on" "bed" "break" "chit" "final" "malt"
    "moisture" "oven" "room" "rub" "steep-out" "time" "total" "water"
    "weight" "yield")
  "Words: where a temperature is taken, and what a condition names.")

(defconst malt--choices
  '("acid" "airflow" "ajar" "amber" "bag" "barley" "black" "brick" "brown"
    "buckwheat" "caramel" "chalky" "chocolate" "clean" "colour" "cool"
    "crystal" "cure" "deculm" "diastatic" "direct" "distilling" "don"
    "dried" "dry" "electric" "extract" "fan" "found" "friability" "gas"
    "germinate" "glucan" "green" "gritty" "gummy" "hold" "indirect"
    "insulation" "kilned" "lime" "machine" "maize" "metal" "millet" "munich"
    "natural" "ndma" "no" "none" "oats" "oil" "overflow" "pale" "peat"
    "pilsner" "protein" "rest" "returns" "roast" "roasted" "rye" "smoke"
    "smoked" "soak" "solar" "sorghum" "spelt" "spray" "start" "stew" "still"
    "stone" "the" "times" "triticale" "unknown" "vienna" "wheat" "wither"
    "wood" "yes")
  "Words: values that are words.")

(defconst malt--times
  '("midnight" "noon")
  "Words: times of day that are words.")

(defconst malt--months
  '("Jan" "Feb" "Mar" "Apr" "May" "Jun" "Jul" "Aug" "Sep" "Oct" "Nov" "Dec")
  "Words: the first letters of the months.")

(defconst malt--units
  '("inches of water" "inch of water" "square inches" "square meters"
    "square metres" "cubic meters" "cubic metres" "inches water"
    "square meter" "square metre" "% dry basis" "% wet basis" "centimeters"
    "centimetres" "cubic meter" "cubic metre" "hectoliters" "hectolitres"
    "in of water" "milliliters" "millilitres" "millimeters" "millimetres"
    "mm of water" "square feet" "square foot" "square inch" "Centigrade"
    "Fahrenheit" "centigrade" "centimeter" "centimetre" "cubic feet"
    "cubic foot" "degLintner" "fahrenheit" "hectoliter" "hectolitre"
    "inch water" "inches H2O" "kilojoules" "megajoules" "milligrams"
    "milliliter" "millilitre" "millimeter" "millimetre" "short tons"
    "°Lovibond" "cu ft/min" "degrees C" "degrees F" "degrees c" "degrees f"
    "inches wc" "inches wg" "kilograms" "kilojoule" "kilowatts" "long tons"
    "megajoule" "milligram" "short ton" "short-ton" "°Lintner" "ºLintner"
    "Lovibond" "degC/min" "degF/min" "degree C" "degree F" "degree c"
    "degree f" "ft³/min" "kilogram" "kilowatt" "long ton" "long-ton"
    "lovibond" "millibar" "mm water" "per cent" "°C/hour" "°F/hour"
    "Celsius" "Lintner" "celsius" "degrees" "ft3/min" "gal-imp" "grammes"
    "in w.c." "in w.g." "kernels" "lintner" "minutes" "mm w.c." "mm w.g."
    "pascals" "percent" "persons" "seconds" "sq feet" "ton-imp" "°C/min"
    "°F/min" "ºC/min" "ºF/min" "% d.b." "% w.b." "Kelvin" "degC/h"
    "degF/h" "degree" "ft/min" "gal-UK" "gal-US" "gal-uk" "gal-us" "grains"
    "gramme" "in H2O" "inches" "kelvin" "kernel" "liters" "litres" "meters"
    "metres" "minute" "mm H2O" "ounces" "pascal" "people" "person" "pounds"
    "pt-imp" "qt-imp" "second" "ton-us" "tonnes" "µg/kg" "μg/kg" "BTU/h"
    "Btu/h" "C/min" "F/min" "L/min" "btu/h" "cbm/h" "corns" "cu ft" "deg C"
    "deg F" "deg c" "deg f" "grain" "grams" "hands" "hours" "in WC" "in WG"
    "in wc" "in wg" "inH2O" "kilos" "l/min" "liter" "litre" "m^3/h" "m^3/s"
    "meter" "metre" "mg/kg" "mm WC" "mm WG" "mm WS" "mm wc" "mm wg" "mmH2O"
    "m³/h" "m³/s" "ounce" "pound" "pt-UK" "pt-US" "pt-uk" "pt-us" "qt-UK"
    "qt-US" "qt-uk" "qt-us" "sq cm" "sq ft" "sq in" "times" "tonne" "ug/kg"
    "watts" "weeks" "°C/h" "°EBC" "°F/h" "ºC/h" "ºEBC" "ºF/h" "% db"
    "% wb" "L/kg" "cm^2" "cm²" "corn" "cu m" "cuft" "days" "degC" "degF"
    "degL" "feet" "foot" "ft^2" "ft^3" "ft²" "ft³" "gram" "hand" "hour"
    "inWC" "inWG" "in^2" "inch" "in²" "kilo" "l/kg" "m3/h" "m3/s" "mbar"
    "mg/L" "mg/l" "mins" "mmAq" "mmWC" "mmWG" "mmWS" "secs" "sq m" "sqft"
    "sqin" "time" "watt" "week" "° C" "° F" "° c" "° f" "°WK" "º C"
    "º F" "º c" "º f" "ºWK" "C/h" "CFM" "EBC" "F/h" "K/h" "KWH" "KWh"
    "L/h" "L/s" "L/t" "LPM" "PSI" "cfm" "cm2" "day" "deg" "fpm" "ft2" "ft3"
    "hPa" "hrs" "in2" "kPa" "kWh" "kgs" "kwh" "l/h" "l/s" "l/t" "lbs" "lpm"
    "ltr" "m/s" "m^2" "m^3" "min" "m²" "m³" "pct" "psi" "sec" "sqm" "wks"
    "°C" "°F" "°L" "°c" "°f" "ºC" "ºF" "ºL" "KW" "Kg" "MJ" "Pa" "WK"
    "cc" "cm" "ft" "hL" "hl" "hr" "kJ" "kW" "kg" "kj" "kw" "lb" "m2" "m3"
    "mL" "mg" "ml" "mm" "oC" "oF" "oz" "sf" "wk" "°" "º" "%" "C" "F" "H"
    "K" "L" "W" "c" "d" "f" "g" "h" "l" "m" "s" "t" "x")
  "Words: every spelling of a unit, the longer first.")

(defconst malt--either
  '("in")
  "Words: a unit, or a clause where something follows that it leads to.")

(defconst malt--fractions
  '("¼" "½" "¾" "⅓" "⅔" "⅛" "⅜" "⅝" "⅞")
  "Words: signs that are numbers.")

;; The words end here.
