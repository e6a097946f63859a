package quantity

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestLikePrintsInTheUnitAndDigitsOfTheQuantity(t *testing.T) {
	for _, c := range []struct {
		like string
		si   float64
		want string
	}{
		{"62 °F", 287.04, "57 °F"},
		{"62.5 °F", 287.04, "57.0 °F"},
		{"14 °C", 287.04, "13.9 °C"},
		{"14 °C", 287.15, "14 °C"},
		{"12.40 kg", 3, "3.00 kg"},
		{"100 g", 0.1586206897, "158.6 g"},
		{"1000 kg", 872.0930, "872.1 kg"},
		{"1 t", 872.0930, "0.872 t"},
		{"5 lb 4 oz", 2.3, "5 lb 1.1 oz"},
		{"5 lb 4 oz", 6*Pound - 1e-6, "6 lb"},
		{"5 lb 4 oz", 0.1, "3.5 oz"},
		{"5 lb 4.25 oz", 2.3, "5 lb 1.13 oz"},
		{"5 lb 4 oz", -2.3, "-5 lb 1.1 oz"},
		{"5 lb 4 oz", 0, "0 oz"},
		{"5 lb 4 oz", -1e-9, "0 oz"},
		{"1 h 30 min", 3*3600 - 10, "3 h"},
		{"1 h 30 min", 125, "2 min"},
		{"1 day 2 h", 2 * 86400, "2 days"},
		{"1 day 2 h 3 min", 2 * 86400, "2 days"},
		{"1 day 2 h 3 min", 86400 + 300, "1 day 0 h 5 min"},
		{"1 day 2 h 3 min", 2*86400 - 1, "2 days"},
		{"1 day 2 h 3 min", 1e300, "unknown"},
		{"8 h", 42840, "11.9 h"},
		{"8 h", 1e6, "278 h"},
		{"2 days", 86400, "1 day"},
		{"12.4 %", 0.0446, "4.5 %"},
		{"12 %", 0.999999, "100 %"},
		{"3/4", 0.8123, "0.81"},
		{"3 times", 2.4, "2 times"},
		{"20 kg", -1e-12, "0 kg"},
		{"20 kg", math.NaN(), "unknown"},
		{"20 kg", math.Inf(-1), "unknown"},
	} {
		assert.Equal(t, c.want, mustParse(t, c.like).Like(c.si), "%s like %g", c.like, c.si)
	}
	rise, err := mustParse(t, "20 °F").As(TemperatureDifference)
	require.NoError(t, err)
	assert.Equal(t, "18 °F", rise.Like(10))
	moisture, err := mustParse(t, "45 % dry basis").As(Share)
	require.NoError(t, err)
	assert.Equal(t, "100 % dry basis", moisture.Like(0.5))
	assert.Equal(t, "unknown", moisture.Like(1))
	assert.Equal(t, "unknown", moisture.Like(1.2))
}

func TestInKeepsTheValueAndPrintsSensibleDigits(t *testing.T) {
	for _, c := range []struct {
		si   float64
		unit string
		want string
	}{
		{0.1586206897, "g", "158.6 g"}, {0.04478, "%", "4.5 %"}, {287.04, "fahrenheit", "57 °F"}, {2.5, "", "2.5"},
		{86400, "d", "1 day"}, {1e-9, "kg", "0 kg"}, {-3, "kg", "-3 kg"},
	} {
		q, err := In(c.si, c.unit)
		require.NoError(t, err)
		assert.Equal(t, c.want, q.String())
		assert.Equal(t, c.si, q.SI)
	}
	rise, err := mustIn(t, 287.04, "°F").As(TemperatureDifference)
	require.NoError(t, err)
	assert.InDelta(t, 287.04-zeroF, rise.SI, 1e-12, "the value, not the rounded number, is read again")
}

func mustIn(t *testing.T, si float64, unit string) Quantity {
	q, err := In(si, unit)
	require.NoError(t, err)
	return q
}

func TestFormatPrintsTheDigitsAsked(t *testing.T) {
	for _, c := range []struct {
		si       float64
		unit     string
		decimals int
		want     string
	}{
		{0.1586206897, "g", 2, "158.62 g"}, {0.5, "%", 1, "50.0 %"}, {287.15, "°C", 0, "14 °C"},
		{1.0 / 3, "", 4, "0.3333"}, {1, "kg", -3, "1 kg"}, {1, "kg", 99, "1.000000000000 kg"}, {-1e-9, "kg", 1, "0.0 kg"},
	} {
		text, err := Format(c.si, c.unit, c.decimals)
		require.NoError(t, err)
		assert.Equal(t, c.want, text)
	}
}
