package outside

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
)

func moistAir() []row {
	var list []row
	// The handbook's table is from newer equations than its equation 6, hence 0.03 %.
	for _, c := range [][2]float64{{5, 872.6}, {25, 3169.7}, {50, 12351.3}, {100, 101418}} {
		list = append(list, row{what: fmt.Sprintf("saturation pressure at %g °C", c[0]), unit: "Pa", digits: 1, source: c[1], accepted: about(c[1], 3e-4*c[1]),
			key: "ashrae-2017-ch1", standing: "table, seen", model: saturation(c[0], 1)})
	}
	// FAO uses the shorter formula of Tetens, hence one unit of the last figure.
	for _, c := range [][2]float64{{15, 1.705}, {24.5, 3.075}} {
		list = append(list, row{what: fmt.Sprintf("saturation pressure at %g °C", c[0]), unit: "kPa", digits: 3, source: c[1], accepted: about(c[1], 0.001),
			key: "fao-56", standing: "seen", model: saturation(c[0], 1e-3)})
	}
	// The table counts the enhancement factor, so the ideal mixture reads 0.4 to 1.2 %
	// low: both ends are held, with the last figure of the table.
	for _, c := range [][2]float64{{5, 0.005425}, {25, 0.020173}, {50, 0.086863}, {85, 0.838105}} {
		list = append(list, row{what: fmt.Sprintf("humidity ratio at saturation, %g °C (0.4–1.2 %% low, as an ideal gas must)", c[0]), unit: "kg/kg", digits: 6,
			source: c[1], accepted: band{c[1] * (1 - 0.0125), c[1] * (1 - 0.0035)},
			key: "ashrae-2017-ch1", standing: "table, seen", model: saturatedRatio(c[0])})
	}
	return append(append(list, workedExample()...), grid()...)
}

func saturation(at, scale float64) func(testing.TB) float64 {
	return func(t testing.TB) float64 {
		p, err := air.SaturationPressure(at)
		require.NoError(t, err)
		return p * scale
	}
}

func moist(t testing.TB, at, rh float64) air.State {
	t.Helper()
	s, err := air.FromRH(at, rh, air.StandardPressure)
	require.NoError(t, err)
	return s
}

func saturatedRatio(at float64) func(testing.TB) float64 {
	return func(t testing.TB) float64 { return moist(t, at, 1).W }
}

// workedExample is air of 40 °C with a wet bulb of 20 °C, read off a chart: to 0.1
// g/kg, half a degree, half a per cent, 0.1 kJ/kg and half a litre.
func workedExample() []row {
	from := func(what, unit string, digits int, v, by float64, figure func(testing.TB, air.State) float64) row {
		return row{what: "40 °C, wet bulb 20 °C: " + what, unit: unit, digits: digits, source: v, accepted: about(v, by),
			key: "ashrae-2017-ch1", standing: "worked example, seen", model: func(t testing.TB) float64 {
				s, err := air.FromWetBulb(40, 20, air.StandardPressure)
				require.NoError(t, err)
				return figure(t, s)
			}}
	}
	return []row{
		from("humidity ratio", "kg/kg", 4, 0.0065, 0.0001, func(_ testing.TB, s air.State) float64 { return s.W }),
		from("dew point", "°C", 1, 7, 0.5, func(t testing.TB, s air.State) float64 {
			dew, err := s.DewPoint()
			require.NoError(t, err)
			return dew
		}),
		from("relative humidity", "%", 1, 14, 0.5, func(_ testing.TB, s air.State) float64 { return 100 * s.RH() }),
		from("enthalpy", "kJ/kg", 1, 56.7, 0.1, func(_ testing.TB, s air.State) float64 { return s.Enthalpy() / 1000 }),
		from("volume", "m³/kg", 3, 0.896, 0.0005, func(_ testing.TB, s air.State) float64 { return s.Volume() }),
	}
}

// grid is 798 states from 0 to 90 °C, 5 to 95 % and 0 to 2000 m, reckoned with the
// npm package psychrolib 1.1.1; the table is kept beside package air.
func grid() []row {
	from := func(what, unit string, digits int, most float64, gap func(testing.TB, []float64) float64) row {
		return row{what: "grid of 798 states, largest difference of " + what, unit: unit, digits: digits, source: 0, accepted: about(0, most),
			key: "psychrolib", standing: "run once, version 1.1.1", model: func(t testing.TB) float64 {
				worst := 0.0
				for _, line := range gridLines(t) {
					worst = math.Max(worst, math.Abs(gap(t, line)))
				}
				return worst
			}}
	}
	state := func(t testing.TB, line []float64) air.State {
		s, err := air.FromRH(line[2], line[3], line[1])
		require.NoError(t, err)
		return s
	}
	return []row{
		from("the humidity ratio", "kg/kg", 6, 1e-6, func(t testing.TB, line []float64) float64 { return state(t, line).W - line[4] }),
		// it stops its dew point at 0.001 K
		from("the dew point", "K", 2, 0.0011, func(t testing.TB, line []float64) float64 {
			dew, err := state(t, line).DewPoint()
			require.NoError(t, err)
			return dew - line[6]
		}),
		// it rounds 1/0.621945 to 1.607858
		from("the volume", "millionths", 0, 1, func(t testing.TB, line []float64) float64 { return 1e6 * (state(t, line).Volume()/line[8] - 1) }),
	}
}

func gridLines(t testing.TB) [][]float64 {
	file, err := os.Open("../air/testdata/psychrolib.csv")
	require.NoError(t, err)
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	records, err := r.ReadAll()
	require.NoError(t, err)
	lines := make([][]float64, 0, len(records))
	for _, record := range records[1:] {
		line := make([]float64, len(record))
		for i := range record {
			line[i], err = strconv.ParseFloat(record[i], 64)
			require.NoError(t, err)
		}
		lines = append(lines, line)
	}
	return lines
}
