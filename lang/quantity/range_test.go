package quantity

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func mustBetween(t *testing.T, low, high string) Range {
	t.Helper()
	r, err := Between(partsOf(low), partsOf(high))
	require.NoError(t, err)
	return r
}

func TestARangeIsReadAndPrinted(t *testing.T) {
	for _, c := range []struct{ low, high, printed string }{
		{"14", "17 °C", "14 to 17 °C"},
		{"14 C", "17 °C", "14 to 17 °C"},
		{"43", "45 % dry basis", "43 to 45 % dry basis"},
		{"58 °F", "17 °C", "58 °F to 17 °C"},
		{"5 lb 4 oz", "6 lb", "5 lb 4 oz to 6 lb"},
		{"-2", "2 °C", "-2 to 2 °C"},
		{"1", "2 days", "1 to 2 days"},
		{"1/4", "3/4", "1/4 to 3/4"},
		{"3", "3 °C", "3 °C"},
		{"82 °C", "", "82 °C"},
		{"3", "", "3"},
	} {
		r := mustBetween(t, c.low, c.high)
		assert.Equal(t, c.printed, r.String())
		assert.LessOrEqual(t, r.Low.SI, r.High.SI)
		assert.Equal(t, c.high == "" || c.low == "3", r.Single(), c.printed)
	}
}

func TestBetweenLeavesThePartsItWasGivenAlone(t *testing.T) {
	low := []Part{{"14", ""}}
	_, err := Between(low, []Part{{"17", "°C"}})
	require.NoError(t, err)
	assert.Equal(t, []Part{{"14", ""}}, low)
}

func TestAnUpsideDownRangeStillComesBackAsWritten(t *testing.T) {
	r, err := Between(partsOf("17"), partsOf("14 °C"))
	var e *Error
	require.True(t, errors.As(err, &e))
	assert.Equal(t, UpsideDown, e.Kind)
	assert.Equal(t, "14 to 17 °C", e.Fix)
	assert.Equal(t, "17 to 14 °C", r.String())
}

func TestContainsTakesTheEndsIn(t *testing.T) {
	r := mustBetween(t, "43", "45 %")
	for si, in := range map[float64]bool{0.43: true, 0.44: true, 0.45: true, 0.4299: false, 0.4501: false} {
		assert.Equal(t, in, r.Contains(si), si)
	}
	assert.False(t, r.Contains(math.NaN()))
}

func TestABoundHoldsOnItsSide(t *testing.T) {
	ten, band := mustBetween(t, "10 %", ""), mustBetween(t, "43", "45 %")
	for _, c := range []struct {
		bound              Bound
		printed            string
		below, same, above bool // at 9.9, 10 and 10.1 %
	}{
		{Bound{AtLeast, ten}, "at least 10 %", false, true, true},
		{Bound{AtMost, ten}, "at most 10 %", true, true, false},
		{Bound{Is, ten}, "is 10 %", false, true, false},
		{Bound{Above, ten}, "above 10 %", false, false, true},
		{Bound{Below, ten}, "below 10 %", true, false, false},
		{Bound{Op(9), ten}, "unknown 10 %", false, false, false},
		{Bound{Is, band}, "43 to 45 %", false, false, false},
		{Bound{AtLeast, band}, "at least 43 to 45 %", false, false, false},
		{Bound{Below, band}, "below 43 to 45 %", true, true, true},
	} {
		assert.Equal(t, c.printed, c.bound.String())
		assert.Equal(t, []bool{c.below, c.same, c.above},
			[]bool{c.bound.Holds(0.099), c.bound.Holds(0.1), c.bound.Holds(0.101)}, c.printed)
		assert.False(t, c.bound.Holds(math.NaN()), c.printed)
		assert.False(t, c.bound.Holds(math.Inf(1)), c.printed)
	}
}

func TestABoundMindsNoRounding(t *testing.T) {
	hot := Bound{AtLeast, mustBetween(t, "62 °F", "")}
	reckoned := (62-32)/1.8 + 273.15 // the same temperature by another way
	assert.True(t, hot.Holds(reckoned))
	assert.False(t, Bound{Above, hot.Range}.Holds(reckoned))
}

func TestAMissedBoundIsSeenInTheDigits(t *testing.T) {
	promised := Bound{Is, mustBetween(t, "3 %", "5 %")}
	hot := Bound{AtMost, mustBetween(t, "62 °F", "")}
	for _, c := range []struct {
		bound Bound
		si    float64
		want  string
	}{
		{promised, 0.0296, "2.96 %"}, {promised, 0.0299999, "3 %"}, {promised, 0.021, "2.1 %"}, {promised, 0.04, "4 %"},
		{promised, 0.05004, "5.004 %"}, {hot, 290.2, "63 °F"}, {hot, 289.83, "62.02 °F"},
	} {
		assert.Equal(t, c.want, c.bound.Missed(c.si))
	}
}
