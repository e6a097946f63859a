package quantity

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestALengthOfTimeIsAPlainNumberOfAFittingUnit(t *testing.T) {
	for s, want := range map[float64]string{
		0: "0 s", 36: "36 s", 240: "4 min", 100 * 60: "1 h 40 min", 2.5 * hour: "2 h 30 min", 9.53 * hour: "9 h 30 min", 20.37 * hour: "20 h", 23.99 * hour: "1 d",
		30 * hour: "1 d 6 h", 70.4 * hour: "2 d 22 h", 166 * hour: "6 d 22 h", 21 * day: "21 d", -3 * hour: "-3 h",
	} {
		assert.Equal(t, want, Lasting(s), "%g s", s)
	}
	assert.Equal(t, "unknown", Lasting(math.NaN()))
}

func TestALengthOfTimeThatWasSetIsToldToTheMinute(t *testing.T) {
	for s, want := range map[float64]string{20: "20 s", 45 * 60: "45 min", 7.5 * hour: "7 h 30 min", day + 1800: "1 d 30 min", 39 * hour: "1 d 15 h", 21 * day: "21 d", 26*hour + 125: "1 d 2 h 2 min"} {
		assert.Equal(t, want, InFull(s), "%g s", s)
	}
}

func TestALengthOfTimeIsInTheUnitWrittenWhereThatFits(t *testing.T) {
	for _, c := range []struct {
		like string
		s    float64
		want string
	}{
		{"12 weeks", day, "1 d"},
		{"12 weeks", 21 * day, "3 weeks"},
		{"70 h", 60 * hour, "60 h"},
		{"70 h", 8 * hour, "8 h"},
		{"5 h", 300 * hour, "12 d 12 h"},
		{"200 h", 240 * hour, "240 h"},
		{"1 h", 14 * 60, "14 min"},
		{"8 h", 3333, "56 min"},
		{"5 min", day, "1 d"},
		{"5 min", 14 * day, "14 d"},
		{"2000 min", 1440 * 60, "1440 min"},
		{"5 min", 20, "20 s"},
		{"5 days", 12 * hour, "12 h"},
		{"5 days", 6.25 * day, "6.25 days"},
		{"1 h 30 min", 125, "2 min"},
	} {
		assert.Equal(t, c.want, mustParse(t, c.like).Lasting(c.s), "%s like %g s", c.like, c.s)
	}
}
