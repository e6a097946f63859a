package outside

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/sim/draught"
	"maltwright/sim/drying"
	"maltwright/sim/kiln"
)

// drivenAir are the air that a fan and a chimney drive through green malt, by sums that need no model, and
// the room that malt takes.
func drivenAir() []row {
	var list []row
	for _, c := range [][2]float64{{300, 60}, {500, 115}, {700, 180}} {
		list = append(list, row{what: fmt.Sprintf("a tonne a metre deep on 2.15 m²: pressure for %g m³/h", c[0]), unit: "Pa", digits: 0, source: c[1], accepted: about(c[1], 0.04*c[1]),
			key: "asabe-d272", standing: "derived from the formula; a fifth less for loose malt from memory", model: func(t testing.TB) float64 {
				return driven(t, 830, 2.15, 1, kiln.Equipment{Airflow: c[0] / 3600}, damp, unheated).Bed
			}}.sum())
	}
	hand := func(what, unit string, digits int, v, by float64, model func(testing.TB) float64) row {
		return row{what: what, unit: unit, digits: digits, source: v, accepted: about(v, by), standing: "by hand, from the same curves", model: model}.sum()
	}
	fan := func(t testing.TB) kiln.Moved {
		curve, err := draught.NewCurve(draught.Point{Flow: 6000.0 / 3600, Pressure: 400}, draught.Point{Flow: 9000.0 / 3600})
		require.NoError(t, err)
		return driven(t, 1000, 4, 0.75, kiln.Equipment{Way: &draught.Way{Fan: curve, Opening: 0.2}}, damp, unheated)
	}
	return append(list,
		hand("fan of 9000 m³/h at 0 and 6000 at 400 Pa, 0.75 m on 4 m²: its air", "m³/h", 0, 2780, 30, func(t testing.TB) float64 { return 3600 * fan(t).Flow }),
		hand("chimney of 6 m over wet malt, air of 10 °C warmed to 50: its draught, with 1 m below the bed", "Pa", 1, 5.1, 0.1, func(t testing.TB) float64 {
			return driven(t, 120, 2, 0.2, kiln.Equipment{Way: &draught.Way{Above: 6, Below: 1, Opening: 0.1}}, cold, kiln.Hold(kiln.AirOn, 50)).Natural
		}),
		row{what: "kilned malt of a tonne of barley, its rootlets on: bulk density", unit: "kg/m³", digits: 0, says: "500–550", accepted: band{500, 550}, standing: "common practice; calibrated to the measures of old, not to this",
			model: func(t testing.TB) float64 {
				b := cast(t, "barley", 880, 0.45)
				x := 0.045 / 0.955
				return 800 * (1 + x) / b.Lot.BedVolume(x, b.Lot.Profile.GrownTo(0.85))
			}}.calibrated("looseSwelling"),
		row{what: "green malt of the same, 44 %", unit: "kg/m³", digits: 0, says: "400–550", accepted: band{400, 550}, standing: "common practice",
			model: func(t testing.TB) float64 {
				b := cast(t, "barley", 880, 0.45)
				x := 0.44 / 0.56
				return 830 * (1 + x) / b.Lot.BedVolume(x, b.Lot.Profile.GrownTo(0.85))
			}}.calibrated("greenSwelling"))
}

var (
	damp     = kiln.Ambient{T: 20, RH: 1} // that dries nothing of malt as warm
	unheated = kiln.Setting{Target: kiln.Fresh}
)

// driven is what drives the air through so much dry matter, kg, on an area, m², of a depth, m,
// after two hours of a setting.
func driven(t testing.TB, dry, area, depth float64, kit kiln.Equipment, ambient kiln.Ambient, set kiln.Setting) kiln.Moved {
	kit.Area = area
	b, err := kiln.New(kiln.Charge{DryMass: dry, Moisture: 0.45 / 0.55, Temperature: 20, Depth: &depth}, kit, ambient, drying.Malt{})
	require.NoError(t, err)
	advance(t, b, 2*hour, set)
	return b.Moved()
}
