package forecast

import (
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

// Cautions lists what in a process can hurt somebody, each in a sentence, and
// closes with whom to ask. They are the usual cautions of the trade (common
// practice) and no substitute for the rules of the place.
func Cautions(p *model.Process) []string {
	var list []string
	if model.First[*model.Germination](p) != nil {
		list = append(list, "Growing grain gives off carbon dioxide and uses up oxygen: air the room before you go in, above all a cellar or a closed box.")
	}
	if st := model.First[*model.Kilning](p); st != nil {
		list = append(list, "A kiln is a fire risk and its surfaces burn: stay within call while it heats, keep rootlets and dust off the heater, and have a smoke alarm.")
		if k := st.Kiln; k != nil && vocabulary.Burns(k.Fired.Text) {
			list = append(list, "Burning fuel can give off carbon monoxide: flue and fresh air must be sound, with a carbon monoxide alarm where people are.")
		}
	}
	if model.First[*model.Deculming](p) != nil {
		list = append(list, "The dust of deculming hurts the lungs and can burn: work in moving air, with a mask, away from flames.")
	}
	if p.Grain != nil && p.Grain.Treated.Text != vocabulary.SaidNo {
		list = append(list, "Seed that was dressed is poison and must never be malted: be certain that this grain was not.")
	}
	list = append(list, "Wet grain is heavy; do not lift it alone. Throw mouldy grain away, and do not breathe its dust.")
	return append(list, "Local codes and licensed practice come before anything said here.")
}
