package tell

import "maltwright/sim/forecast"

// Caution says what can hurt somebody, and what to do about it.
func Caution(c forecast.Caution) string { return cautions[c] }

var cautions = map[forecast.Caution]string{
	forecast.Suffocation:    "Growing grain gives off carbon dioxide and uses up oxygen: air the room before you go in, above all a cellar or a closed box.",
	forecast.Fire:           "A kiln is a fire risk and its surfaces burn: stay within call while it heats, keep rootlets and dust off the heater, and have a smoke alarm.",
	forecast.CarbonMonoxide: "Burning fuel can give off carbon monoxide: flue and fresh air must be sound, with a carbon monoxide alarm where people are.",
	forecast.FlueGas:        "Flue gas that goes through malt makes nitrosamines in it: a flue of its own is better, otherwise a burner of low nitrogen oxides; the limits of food law hold.",
	forecast.Smoke:          "Smoke malt over clean, dry, untreated hardwood or peat only, never over painted, glued or treated timber, and out of doors or with a flue: smoke brings carbon monoxide.",
	forecast.Roasting:       "Roasting malt gives off acrid smoke and carbon monoxide, and hotter malt catches fire sooner: roast out of doors or under a hood, never leave it, and keep an extinguisher in reach.",
	forecast.Steam:          "Water on hot malt goes off as steam, which scalds: pour a little at a time, with face and arms to the side.",
	forecast.Dust:           "The dust of deculming hurts the lungs and can burn: work in moving air, with a mask, away from flames.",
	forecast.DressedSeed:    "Dressed seed is poison and must never be malted: make certain that this grain was not dressed.",
	forecast.WetGrain:       "Wet grain is heavy; do not lift it alone. Throw mouldy grain away, and do not breathe its dust.",
	forecast.OldMalt:        "Throw mouldy malt away, and do not breathe its dust.",
	forecast.LocalCodes:     "Local codes and licensed practice come before anything said here.",
}

// Hazard names a caution in a word or two.
func Hazard(c forecast.Caution) string { return hazards[c] }

var hazards = map[forecast.Caution]string{
	forecast.Suffocation:    "carbon dioxide",
	forecast.Fire:           "fire and burns",
	forecast.CarbonMonoxide: "carbon monoxide",
	forecast.FlueGas:        "flue gas in the malt",
	forecast.Smoke:          "smoke",
	forecast.Roasting:       "fumes of roasting",
	forecast.Steam:          "scalding steam",
	forecast.Dust:           "dust",
	forecast.DressedSeed:    "dressed seed",
	forecast.WetGrain:       "heavy wet grain, mould",
	forecast.OldMalt:        "mould",
	forecast.LocalCodes:     "local codes and licensed practice come first",
}
