package outside

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
	"maltwright/sim/drying"
)

var malt = drying.Malt{}

func thinLayers() []row {
	list := []row{row{what: "barley at rest with air of 21.1 °C, 60 %", unit: "%", digits: 1, source: 11.8, accepted: about(11.8, 0.05),
		key: "ndsu-storage", standing: "table, seen", model: atRest(0.60, 21.1)}.sum()}
	// The data scatter by about a point between lots, at 90 % by two.
	for _, c := range [][3]float64{{15, 6.0, 1}, {30, 8.5, 1}, {45, 10.0, 1}, {60, 12.1, 1}, {75, 14.4, 1}, {90, 19.5, 2.3}} {
		list = append(list, row{what: fmt.Sprintf("barley at rest with air of 25 °C, %g %%", c[0]), unit: "%", digits: 1, source: c[1], accepted: about(c[1], c[2]),
			key: "asabe-d245", standing: "data, from memory", model: atRest(c[0]/100, 25)}.fitted("coefficients of the Henderson equation, by its authors (sim/drying/barley.go)"))
	}
	// Constants of two laboratories for one cereal differ by a third, hence ±35 %.
	for _, at := range []float64{40, 50, 60, 70} {
		half := sasakiHalfTime(at)
		list = append(list, row{what: fmt.Sprintf("malt in a thin layer, 82 %% dry basis, half-time at %g °C", at), unit: "h", digits: 2,
			source: half, accepted: about(half, 0.35*half), key: "sasaki-kanzaki-1972", standing: "seen", model: halfTime(at)})
	}
	return append(list, thinKilns()...)
}

func atRest(rh, at float64) func(testing.TB) float64 {
	return func(t testing.TB) float64 {
		x, err := drying.Equilibrium(malt, rh, at)
		require.NoError(t, err)
		return 100 * wet(x)
	}
}

func wet(x float64) float64 { return x / (1 + x) }
func dry(w float64) float64 { return w / (1 - w) }

// barnVapour is the vapour pressure, Pa, of air of 15 °C and 60 %, in which all thin
// layers are taken.
func barnVapour() float64 { return 0.6 * air.Saturation(15) }

// depression is how far the wet bulb lies below air warmed to at °C, K.
func depression(at float64) float64 {
	s := air.State{T: at, W: air.HumidityRatio(barnVapour(), air.StandardPressure), P: air.StandardPressure}
	return at - s.WetBulbNear(20)
}

// sasakiHalfTime is ln 2/k, k = 0.0727·exp[0.0788(T − Tw) − 0.00417·82] 1/h.
func sasakiHalfTime(at float64) float64 {
	return math.Ln2 / (0.0727 * math.Exp(0.0788*depression(at)-0.00417*82))
}

// halfTime is the time half way to its equilibrium moisture, 12.39 − 0.224(T − Tw)
// % dry basis.
func halfTime(at float64) func(testing.TB) float64 {
	return func(t testing.TB) float64 {
		rest := (12.39 - 0.224*depression(at)) / 100
		return hoursFromTo(t, 0.82, (0.82+rest)/2, at)
	}
}

// hoursFromTo is the time in which a thin layer at °C dries between two moistures,
// dry basis.
func hoursFromTo(t testing.TB, x, to, at float64) float64 {
	const part = 36.0
	seconds := 0.0
	for x > to {
		var err error
		x, err = drying.ThinLayer(malt, x, barnVapour(), drying.Hold{T: at, Seconds: part})
		require.NoError(t, err)
		seconds += part
	}
	return seconds / hour
}

// thinKilns are kilns well aired: the corn alone limits.
func thinKilns() []row {
	ends := func(what string, hours int, says string, accepted band, key, standing string, schedule ...drying.Hold) row {
		return row{what: what, unit: "%", digits: 1, says: says, accepted: accepted, key: key, standing: standing,
			model: func(t testing.TB) float64 {
				x, err := drying.ThinLayer(malt, dry(0.45), barnVapour(), schedule[:hours]...)
				require.NoError(t, err)
				return 100 * wet(x)
			}}
	}
	mebak := []drying.Hold{{T: 50, Seconds: 16 * hour}, {T: 60, Seconds: hour}, {T: 70, Seconds: hour}, {T: 80, Seconds: 5 * hour}}
	usda := []drying.Hold{{T: 49, Seconds: 10 * hour}, {T: 54, Seconds: 4 * hour}, {T: 60, Seconds: 3 * hour}, {T: 68, Seconds: 2 * hour}, {T: 85, Seconds: 3 * hour}}
	small := []drying.Hold{{T: 37, Seconds: 14 * hour}, {T: 48, Seconds: 9 * hour}, {T: 85, Seconds: 4 * hour}}
	bound := func(r row) row { return r.calibrated("halfThickness", "boundBelow", "freeAbove") }
	return []row{
		bound(ends("thin layer from 45 %, 50 °C 16 h", 1, "at most about 10", atMost(10), "mebak", "from memory", mebak...)),
		bound(ends("then 60 °C 1 h, 70 °C 1 h, 80 °C 5 h", 4, "3.0–4.8", band{3, 4.8}, "mebak", "from memory", mebak...)),
		bound(ends("thin layer from 45 %, 49 °C 10 h, 54 °C 4 h", 2, "at most about 10", atMost(10), "usda-malting", "from memory", usda...)),
		bound(ends("then 60 °C 3 h, 68 °C 2 h, 85 °C 3 h", 5, "3.0–4.8", band{3, 4.8}, "usda-malting", "from memory", usda...)),
		ends("thin layer from 45 %, 37 °C 14 h", 1, "at most 20–25", atMost(25), "small-scale-2023", "seen", small...),
		ends("then 48 °C 9 h", 2, "under 10", atMost(10), "small-scale-2023", "seen", small...),
		bound(ends("then 85 °C 4 h", 3, "2.5–5", band{2.5, 5}, "small-scale-2023", "seen", small...)),
		{what: "thin layer held at 60 °C, 12 → 10 %", unit: "h", digits: 1, says: "more than 1.5", accepted: atLeast(1.5),
			key: "maltings-note", standing: "seen", model: func(t testing.TB) float64 { return hoursFromTo(t, dry(0.12), dry(0.10), 60) }},
	}
}
