package rules

// usualSteep is a steep that none of its rules speaks of: the good example of several.
const usualSteep = `steep in "base tub" to moisture 42 to 46 % {
  soak 6 h in water at 13 °C
  rest 10 h in air at 14 °C
  soak 7 h in water at 13 °C
  rest 9 h in air at 14 °C
  soak 6 h in water at 13 °C
}`
