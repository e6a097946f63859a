package figure

import (
	"fmt"
	"math"

	"maltwright/sim/air"
	"maltwright/sim/drying"
)

// barnVapour is the vapour pressure, Pa, of air of 15 °C and 60 %, in which all thin
// layers are taken.
func barnVapour() float64 { return 0.6 * air.Saturation(15) }

// depression is how far the wet bulb lies below air warmed to at °C, K.
func depression(at float64) float64 {
	s := air.State{T: at, W: air.HumidityRatio(barnVapour(), air.StandardPressure), P: air.StandardPressure}
	return at - s.WetBulbNear(20)
}

// Halves are the half-times of barley grains, not malt, in a thin layer at 40 to 70 °C:
// ln 2/k, k = 0.0727·exp[0.0788(T − Tw) − 0.00417·82] 1/h, down to an equilibrium of
// 12.39 − 0.224(T − Tw) % dry basis. Constants of two laboratories for one cereal differ
// by a third, hence ±35 %. All of it is free water.
func Halves() []Figure {
	var list []Figure
	for _, at := range []float64{40, 50, 60, 70} {
		half := math.Ln2 / (0.0727 * math.Exp(0.0788*depression(at)-0.00417*82))
		rest := (12.39 - 0.224*depression(at)) / 100
		list = append(list, Figure{What: fmt.Sprintf("barley grains (no malt) in a thin layer, 82 %% dry basis, half-time at %g °C", at), Unit: "h", Digits: 2,
			Source: half, Accepted: Within(half, 0.35*half), Key: "sasaki-kanzaki-1972", Standing: "seen",
			Model: func(m drying.Material) (float64, error) { return hoursFromTo(m, 0.82, (0.82+rest)/2, at) }})
	}
	return list
}

// hoursFromTo is the time in which a thin layer at °C dries between two moistures,
// dry basis.
func hoursFromTo(m drying.Material, x, to, at float64) (float64, error) {
	const part = 36.0
	before, seconds := x, 0.0
	for x > to {
		before = x
		var err error
		if x, err = drying.ThinLayer(m, x, barnVapour(), drying.Hold{T: at, Seconds: part}); err != nil {
			return 0, err
		}
		if seconds += part; seconds > 1000*hour {
			return math.Inf(1), nil
		}
	}
	if before > x { // so that it is no staircase
		seconds -= part * (to - x) / (before - x)
	}
	return seconds / hour, nil
}

// ended is the moisture, wet basis, %, of a thin layer from 45 % after some holds.
func ended(holds []drying.Hold) func(drying.Material) (float64, error) {
	return func(m drying.Material) (float64, error) {
		x, err := drying.ThinLayer(m, Dry(0.45), barnVapour(), holds...)
		return 100 * Wet(x), err
	}
}

// Schedules of kilns that are well aired, so that the kernel alone limits.
var (
	mebak = []drying.Hold{{T: 50, Seconds: 16 * hour}, {T: 60, Seconds: hour}, {T: 70, Seconds: hour}, {T: 80, Seconds: 5 * hour}}
	usda  = []drying.Hold{{T: 49, Seconds: 10 * hour}, {T: 54, Seconds: 4 * hour}, {T: 60, Seconds: 3 * hour}, {T: 68, Seconds: 2 * hour}, {T: 85, Seconds: 3 * hour}}
	small = []drying.Hold{{T: 37, Seconds: 14 * hour}, {T: 48, Seconds: 9 * hour}, {T: 85, Seconds: 4 * hour}}
)

// ThinKilns are the thin layers to which the drying of bound water is fitted.
func ThinKilns() []Figure {
	return []Figure{
		{What: "thin layer from 45 %, 50 °C 16 h", Unit: "%", Digits: 1, Says: "at most about 10", Accepted: AtMost(10),
			Key: "mebak", Standing: "from memory", Model: ended(mebak[:1])},
		{What: "then 60 °C 1 h, 70 °C 1 h, 80 °C 5 h", Unit: "%", Digits: 1, Says: "3.0–4.8", Accepted: Band{3, 4.8},
			Key: "mebak", Standing: "from memory", Model: ended(mebak)},
		{What: "thin layer from 45 %, 49 °C 10 h, 54 °C 4 h", Unit: "%", Digits: 1, Says: "at most about 10", Accepted: AtMost(10),
			Key: "usda-malting", Standing: "from memory", Model: ended(usda[:2])},
		{What: "then 60 °C 3 h, 68 °C 2 h, 85 °C 3 h", Unit: "%", Digits: 1, Says: "3.0–4.8", Accepted: Band{3, 4.8},
			Key: "usda-malting", Standing: "from memory", Model: ended(usda)},
		{What: "thin layer held at 60 °C, 12 → 10 %", Unit: "h", Digits: 1, Says: "more than 1.5", Accepted: AtLeast(1.5),
			Key: "maltings-note", Standing: "seen", Model: func(m drying.Material) (float64, error) { return hoursFromTo(m, Dry(0.12), Dry(0.10), 60) }},
	}
}

// SmallScale are thin layers that the fit does not see.
func SmallScale() []Figure {
	return []Figure{
		{What: "thin layer from 45 %, 37 °C 14 h", Unit: "%", Digits: 1, Says: "at most 20–25", Accepted: AtMost(25),
			Key: "small-scale-2023", Standing: "seen", Model: ended(small[:1])},
		{What: "then 48 °C 9 h", Unit: "%", Digits: 1, Says: "under 10", Accepted: AtMost(10),
			Key: "small-scale-2023", Standing: "seen", Model: ended(small[:2])},
		{What: "then 85 °C 4 h", Unit: "%", Digits: 1, Says: "2.5–5", Accepted: Band{2.5, 5},
			Key: "small-scale-2023", Standing: "seen", Model: ended(small)},
	}
}
