package air_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
)

// reference reads the table of testdata/psychrolib.csv, whose head says how it
// was made.
func reference(t *testing.T) [][]float64 {
	t.Helper()
	file, err := os.Open("testdata/psychrolib.csv")
	require.NoError(t, err)
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	records, err := r.ReadAll()
	require.NoError(t, err)
	rows := make([][]float64, 0, len(records))
	for _, record := range records[1:] {
		row := make([]float64, len(record))
		for i, field := range record {
			row[i], err = strconv.ParseFloat(field, 64)
			require.NoError(t, err)
		}
		rows = append(rows, row)
	}
	return rows
}

// An independent program for the same equations. Closed formulas must agree to
// 1e-6, which leaves room for its rounding of 1/0.621945 to 1.607858; it stops
// wet bulb and dew point at 0.001 K, and so may differ by that much. Just under
// freezing an iced and a wet bulb both fit: we take the wet one whenever it
// fits, it takes either, which shows in one row.
func TestGridAgreesWithPsychrolib(t *testing.T) {
	rows := reference(t)
	require.Len(t, rows, 798)
	var iced [][]float64
	for _, r := range rows {
		pressure, err := air.Pressure(r[0])
		require.NoError(t, err)
		assert.InEpsilon(t, r[1], pressure, 1e-12, "pressure of %v", r)
		s, err := air.FromRH(r[2], r[3], pressure)
		require.NoError(t, err)
		wet, err := s.WetBulb()
		require.NoError(t, err)
		dew, err := s.DewPoint()
		require.NoError(t, err)
		assert.InEpsilon(t, r[4], s.W, 1e-9, "humidity ratio of %v", r)
		if math.Abs(r[5]-wet) > 0.001 {
			iced = append(iced, r)
		}
		assert.InDelta(t, r[6], dew, 0.0011, "dew point of %v", r)
		assert.InDelta(t, r[7], s.Enthalpy(), 1e-3, "enthalpy of %v", r)
		assert.InEpsilon(t, r[8], s.Volume(), 1e-6, "volume of %v", r)
	}
	require.Len(t, iced, 1)
	r := iced[0]
	assert.Less(t, r[5], 0.0, "its bulb is iced")
	other, err := air.FromWetBulb(r[2], r[5], r[1])
	require.NoError(t, err)
	assert.InDelta(t, r[4], other.W, 1e-6, "and the iced bulb fits the same air")
}

func TestTableStaysWithinItsStatedError(t *testing.T) {
	worst := 0.0
	for x := -59.99; x < 180; x += 0.0437 {
		exact, err := air.SaturationPressure(x)
		require.NoError(t, err)
		worst = max(worst, relative(exact, air.Saturation(x)))
		p, slope := air.SaturationSlope(x)
		assert.Equal(t, air.Saturation(x), p)
		beyond, err := air.SaturationPressure(x + 1e-4)
		require.NoError(t, err)
		assert.InEpsilon(t, (beyond-exact)/1e-4, slope, 2e-3, "slope at %g °C", x)
	}
	assert.Less(t, worst, air.TableError)
	t.Logf("largest relative error of the table: %.2g", worst)
}

func TestSaturationBeyondTheTableIsTheFormula(t *testing.T) {
	for _, x := range []float64{-99, -60, 180.02, 199} {
		exact, err := air.SaturationPressure(x)
		require.NoError(t, err)
		assert.Equal(t, exact, air.Saturation(x))
		p, slope := air.SaturationSlope(x)
		assert.Equal(t, exact, p)
		assert.Positive(t, slope)
	}
}

func relative(want, got float64) float64 {
	if want > got {
		return (want - got) / want
	}
	return (got - want) / want
}

func BenchmarkSaturation(b *testing.B) {
	sum := 0.0
	for i := range b.N {
		sum += air.Saturation(float64(i % 100))
	}
	sink = sum
}

func BenchmarkSaturationPressure(b *testing.B) {
	sum := 0.0
	for i := range b.N {
		p, _ := air.SaturationPressure(float64(i % 100))
		sum += p
	}
	sink = sum
}

var sink float64
