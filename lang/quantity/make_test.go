package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAQuantityIsReadAndPrintedAsWritten(t *testing.T) {
	for _, c := range []struct {
		text, printed string
		dimension     Dimension
		si            float64
	}{
		{"5 lb 4 oz", "5 lb 4 oz", Mass, 5.25 * Pound},
		{"5lbs 4ounces", "5 lb 4 oz", Mass, 5.25 * Pound},
		{"8 1/3 lb", "8 1/3 lb", Mass, 25.0 / 3 * Pound},
		{"8  1/3   pounds", "8 1/3 lb", Mass, 25.0 / 3 * Pound},
		{"5 lb 4 1/2 oz", "5 lb 4 1/2 oz", Mass, 5*Pound + 4.5*Pound/16},
		{"-5 lb 4 oz", "-5 lb 4 oz", Mass, -5.25 * Pound},
		{"12.40 kg", "12.40 kg", Mass, 12.4},
		{"007 kg", "007 kg", Mass, 7},
		{"1 kg 500 g", "1 kg 500 g", Mass, 1.5},
		{"8h", "8 h", Time, 8 * 3600},
		{"1h30min", "1 h 30 min", Time, 5400},
		{"1 h 30 min", "1 h 30 min", Time, 5400},
		{"1 week 2 days 3 h 4 min", "1 week 2 days 3 h 4 min", Time, 7*86400 + 2*86400 + 3*3600 + 240},
		{"10 d", "10 days", Time, 10 * 86400},
		{"1 days", "1 day", Time, 86400},
		{"1.0 day", "1.0 days", Time, 86400},
		{"3/4 days", "3/4 day", Time, 0.75 * 86400},
		{"1 1/2 day", "1 1/2 days", Time, 1.5 * 86400},
		{"62 °F", "62 °F", Temperature, 289.816666666666667},
		{"62F", "62 °F", Temperature, 289.816666666666667},
		{"62 \xb0F", "62 °F", Temperature, 289.816666666666667},
		{"17 ºC", "17 °C", Temperature, 290.15},
		{"\u22125 °C", "-5 °C", Temperature, 268.15},
		{"0 K", "0 K", Temperature, 0},
		{"1.5 K/h", "1.5 K/h", TemperatureRate, 1.5 / 3600},
		{"3/4", "3/4", Number, 0.75},
		{"-0", "-0", Number, 0},
		{"200", "200", Number, 200},
		{"200 kernels", "200 kernels", Count, 200},
		{"1 times", "1 time", Count, 1},
		{"12.4%", "12.4 %", Share, 0.124},
		{"12.4 % wet basis", "12.4 %", Share, 0.124},
		{"45 % dry basis", "45 % dry basis", DryShare, 0.45},
		{"45 %  dry\tbasis", "45 % dry basis", DryShare, 0.45},
		{"60 m3/h", "60 m3/h", Flow, 60.0 / 3600},
		{"60\u00a0m³/h", "60 m3/h", Flow, 60.0 / 3600},
		{"12m^3/h", "12 m3/h", Flow, 12.0 / 3600},
		{"0.8m2", "0.8 m2", Area, 0.8},
		{"3 gal-us", "3 gal-us", Volume, 3 * usGallon},
		{"5 ft 6 in", "5 ft 6 in", Length, 5.5 * Foot},
		{"123456789.25 mg", "123456789.25 mg", Mass, 123.45678925},
		{"1000000000000 mg", "1000000000000 mg", Mass, 1e6},
	} {
		q, err := Parse(c.text)
		if !assert.NoError(t, err, c.text) {
			continue
		}
		assert.Equal(t, c.printed, q.String(), c.text)
		assert.Equal(t, c.dimension, q.Dimension, c.text)
		assert.InDelta(t, c.si, q.SI, 1e-12*max(1, c.si), c.text) // float64 after one product and one sum
	}
}

func TestATemperatureDifferenceHasNoOffset(t *testing.T) {
	rise, err := mustParse(t, "20 °F").As(TemperatureDifference)
	require.NoError(t, err)
	assert.InDelta(t, 11.11, rise.SI, 0.005, "a rise of 20 °F is 11.11 K, by definition; two places are given")
	assert.Equal(t, 20*fahrSize, rise.SI)
	assert.Equal(t, "20 °F", rise.String())

	again, err := rise.As(Temperature)
	require.NoError(t, err)
	assert.InDelta(t, mustParse(t, "20 °F").SI, again.SI, 1e-9)

	rise, err = mustParse(t, "10 °C").As(TemperatureDifference)
	require.NoError(t, err)
	assert.Equal(t, 10.0, rise.SI)
}

func TestADifferenceMayBeBelowNothingInEveryUnit(t *testing.T) {
	for _, c := range []struct {
		part    Part
		si      float64
		printed string
	}{
		{Part{"-0.5", "K"}, -0.5, "-0.5 K"}, {Part{"-0.5", "C"}, -0.5, "-0.5 °C"}, {Part{"-9", "°F"}, -5, "-9 °F"}, {Part{"-500", "°C"}, -500, "-500 °C"},
	} {
		q, err := Difference(c.part)
		require.NoError(t, err)
		assert.Equal(t, TemperatureDifference, q.Dimension)
		assert.Equal(t, c.si, q.SI, c.printed)
		assert.Equal(t, c.printed, q.String())
	}
	_, err := Make(Part{"-0.5", "K"})
	assert.Error(t, err, "a temperature may not")
	other, err := Difference(Part{"3", "kg"})
	require.NoError(t, err)
	assert.Equal(t, Mass, other.Dimension, "what is no temperature stays what it is")
	_, err = Difference(Part{"3", "buckets"})
	assert.Error(t, err)
}

func TestAMoistureConvertsBetweenItsBases(t *testing.T) {
	wet, err := mustParse(t, "100 % dry basis").As(Share)
	require.NoError(t, err)
	assert.Equal(t, 0.5, wet.SI)
	dry, err := mustParse(t, "12 %").As(DryShare)
	require.NoError(t, err)
	assert.InDelta(t, 12.0/88, dry.SI, 1e-15)
	assert.Equal(t, "12 %", dry.String(), "it stays written as it was")
	assert.Equal(t, "20 %", dry.Like(0.25), "and a value of its dimension is printed in its unit")
}

func TestACountMayStandWithoutItsWord(t *testing.T) {
	q, err := mustParse(t, "3").As(Count)
	require.NoError(t, err)
	assert.Equal(t, Count, q.Dimension)
	q, err = mustParse(t, "3 times").As(Number)
	require.NoError(t, err)
	assert.Equal(t, 3.0, q.SI)
}

func TestTheZeroQuantityIsThePlainNumberNought(t *testing.T) {
	var q Quantity
	assert.Equal(t, "0", q.String())
	assert.Equal(t, "2.5", q.Like(2.5))
	assert.Equal(t, "", q.Unit())
}

func TestDimensionsHaveWords(t *testing.T) {
	seen := map[string]bool{}
	for d := Number; d <= Concentration; d++ {
		assert.NotEmpty(t, d.String())
		assert.False(t, seen[d.String()], "two dimensions are called %s", d)
		seen[d.String()] = true
	}
	assert.Equal(t, "kind unknown", Dimension(-1).String())
	assert.Equal(t, "kind unknown", (Concentration + 1).String())
}
