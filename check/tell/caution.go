package tell

import "maltwright/sim/forecast"

// Caution says what can hurt somebody, and what to do about it.
func Caution(c forecast.Caution) string { return cautions[c] }

var cautions = map[forecast.Caution]string{
	forecast.Suffocation:    "Growing grain gives off carbon dioxide and uses up oxygen: air the room before you go in, above all a cellar or a closed box.",
	forecast.Fire:           "A kiln is a fire risk and its surfaces burn: stay within call while it heats, keep rootlets and dust off the heater, and have a smoke alarm.",
	forecast.CarbonMonoxide: "Burning fuel can give off carbon monoxide: flue and fresh air must be sound, with a carbon monoxide alarm where people are.",
	forecast.Dust:           "The dust of deculming hurts the lungs and can burn: work in moving air, with a mask, away from flames.",
	forecast.DressedSeed:    "Seed that was dressed is poison and must never be malted: be certain that this grain was not.",
	forecast.WetGrain:       "Wet grain is heavy; do not lift it alone. Throw mouldy grain away, and do not breathe its dust.",
	forecast.LocalCodes:     "Local codes and licensed practice come before anything said here.",
}
