package outside

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/sim/drying"
	"maltwright/sim/outside/figure"
)

func thinLayers() []row {
	list := []row{row{what: "barley at rest with air of 21.1 °C, 60 %", unit: "%", digits: 1, source: 11.8, accepted: about(11.8, 0.05),
		key: "ndsu-storage", standing: "table, seen", model: atRest(0.60, 21.1)}.sum()}
	// The data scatter by about a point between lots, at 90 % by two.
	for _, c := range [][3]float64{{15, 6.0, 1}, {30, 8.5, 1}, {45, 10.0, 1}, {60, 12.1, 1}, {75, 14.4, 1}, {90, 19.5, 2.3}} {
		list = append(list, row{what: fmt.Sprintf("barley at rest with air of 25 °C, %g %%", c[0]), unit: "%", digits: 1, source: c[1], accepted: about(c[1], c[2]),
			key: "asabe-d245", standing: "data, from memory", model: atRest(c[0]/100, 25)}.fitted("coefficients of the Henderson equation, by its authors (sim/drying/barley.go)"))
	}
	list = append(list, shared(figure.Halves())...)
	list = append(list, each(shared(figure.ThinKilns()), func(r row) row { return r.fitted("boundDiffusion", "boundEnergy", "boundBelow", "freeAbove") })...)
	return append(list, shared(figure.SmallScale())...)
}

// shared are figures that the fits ask for too, here of malt of barley.
func shared(figures []figure.Figure) []row {
	var list []row
	for _, f := range figures {
		list = append(list, row{what: f.What, unit: f.Unit, digits: f.Digits, says: f.Says, source: f.Source, accepted: band{f.Accepted.Low, f.Accepted.High},
			key: f.Key, standing: f.Standing, model: func(t testing.TB) float64 {
				v, err := f.Model(maltOf(t))
				require.NoError(t, err)
				return v
			}})
	}
	return list
}

func atRest(rh, at float64) func(testing.TB) float64 {
	return func(t testing.TB) float64 {
		x, err := drying.Equilibrium(maltOf(t), rh, at)
		require.NoError(t, err)
		return 100 * wet(x)
	}
}

func wet(x float64) float64 { return figure.Wet(x) }
func dry(w float64) float64 { return figure.Dry(w) }
