package quantity

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestALengthOfTimeIsAPlainNumberOfAFittingUnit(t *testing.T) {
	for s, want := range map[float64]string{
		0: "0 s", 36: "36 s", 240: "4 min", 100 * 60: "100 min", 2.5 * hour: "2.5 h", 30 * hour: "30.0 h", 70 * hour: "2.9 days",
	} {
		assert.Equal(t, want, Lasting(s), "%g s", s)
	}
	assert.Equal(t, "unknown", Lasting(math.NaN()))
}

func TestALengthOfTimeIsInTheUnitWrittenWhereThatFits(t *testing.T) {
	for _, c := range []struct {
		like string
		s    float64
		want string
	}{
		{"12 weeks", day, "24 h"},
		{"12 weeks", 21 * day, "3 weeks"},
		{"70 h", 60 * hour, "60 h"},
		{"70 h", 8 * hour, "8 h"},
		{"5 h", 300 * hour, "12.5 days"},
		{"200 h", 240 * hour, "240 h"},
		{"1 h", 14 * 60, "14 min"},
		{"8 h", 3333, "56 min"},
		{"5 min", day, "24 h"},
		{"5 min", 14 * day, "14 days"},
		{"2000 min", 1440 * 60, "1440 min"},
		{"5 min", 20, "20 s"},
		{"5 days", 12 * hour, "12 h"},
		{"5 days", 6.25 * day, "6.25 days"},
		{"1 h 30 min", 125, "2 min"},
	} {
		assert.Equal(t, c.want, mustParse(t, c.like).Lasting(c.s), "%s like %g s", c.like, c.s)
	}
}
