package forecast

import (
	"math"

	"maltwright/lang/vocabulary"
	"maltwright/sim/kiln"
)

// coldest is where a step begins to look how warm it gets.
var coldest = Warmest{Air: math.Inf(-1), Off: math.Inf(-1), Malt: math.Inf(-1)}

// see looks at the bed.
func (w *Warmest) see(v kiln.View) {
	*w = Warmest{max(w.Air, v.On.T), max(w.Off, v.Off.T), max(w.Malt, v.MaltT), true}
}

// At is how warm it gets where a temperature is taken, °C; of a kiln that says no place, the air.
func (w Warmest) At(place string) float64 {
	switch place {
	case vocabulary.PlaceMalt:
		return w.Malt
	case vocabulary.PlaceAirOff:
		return w.Off
	}
	return w.Air
}
