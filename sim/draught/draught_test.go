package draught_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/air"
	"maltwright/sim/draught"
)

const hour = 3600.0

// spring is outside air of 10 °C and 80 %, at sea level.
func moist(t require.TestingT, c, rh float64) air.State {
	s, err := air.FromRH(c, rh, air.StandardPressure)
	require.NoError(t, err)
	return s
}

func TestTwoPointsAreAStraightLine(t *testing.T) {
	c, err := draught.NewCurve(draught.Point{Flow: 6000 / hour, Pressure: 400}, draught.Point{Flow: 9000 / hour})
	require.NoError(t, err)
	assert.InDelta(t, 200, c.Pressure(7500/hour), 1e-9)
	assert.InDelta(t, 400, c.Pressure(6000/hour), 1e-9)
	assert.InDelta(t, 400, c.Pressure(1000/hour), 1e-9, "no more than is said")
	assert.InDelta(t, 0, c.Pressure(12000/hour), 1e-9)
	assert.InDelta(t, 9000/hour, c.Most(), 1e-12)
}

// However its points lie, more air never comes with more pressure, and the points are kept.
func TestACurveFallsBetweenItsPointsToo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 5).Draw(t, "points")
		points := make([]draught.Point, n)
		flow, pressure := 0.0, 5000.0
		for i := range points {
			points[i] = draught.Point{Flow: flow, Pressure: pressure}
			flow += rapid.Float64Range(0.01, 5).Draw(t, "more air")
			pressure -= rapid.Float64Range(1, 1000).Draw(t, "less pressure")
		}
		c, err := draught.NewCurve(points...)
		require.NoError(t, err)
		for _, p := range points {
			assert.InDelta(t, p.Pressure, c.Pressure(p.Flow), 1e-6)
		}
		at := rapid.Float64Range(0, flow).Draw(t, "flow")
		assert.LessOrEqual(t, c.Pressure(at+0.01), c.Pressure(at)+1e-9)
	})
}

func TestWhatIsNoCurveIsRefused(t *testing.T) {
	p := func(flow, pressure float64) draught.Point { return draught.Point{Flow: flow, Pressure: pressure} }
	for what, points := range map[string][]draught.Point{
		"one point makes no curve":                         {p(1, 100)},
		"gives less at more pressure":                      {p(1, 100), p(2, 100)},
		"gives less at more pressure, and not 1 m³/s":      {p(1, 100), p(1, 50)},
		"airflow of the fan -3600 m3/h is outside":         {p(-1, 100), p(2, 50)},
		"pressure of the fan -5 Pa is outside 0 to 100000": {p(1, 100), p(2, -5)},
	} {
		_, err := draught.NewCurve(points...)
		require.Error(t, err)
		assert.Contains(t, err.Error(), what)
	}
}

// By hand: air of 10 °C and 80 % weighs 1.244 kg/m³, saturated air of 25 °C 1.171, air of 10 °C
// warmed to 50 °C 1.090: 6 m of the one and 1 m of the other draw 4.2 and 1.5 Pa.
func TestAChimneyDrawsByTheWeightOfItsAir(t *testing.T) {
	out, off := moist(t, 10, 0.8), moist(t, 25, 1)
	on := air.State{T: 50, W: out.W, P: out.P}
	assert.InDelta(t, 4.24, (&draught.Way{Above: 6}).Natural(out, on, off), 0.05)
	assert.InDelta(t, 1.51, (&draught.Way{Below: 1}).Natural(out, on, off), 0.02)
	assert.InDelta(t, 0, (&draught.Way{Above: 6, Below: 1}).Natural(out, out, out), 1e-12, "no warmth, no draught")
	assert.Negative(t, (&draught.Way{Above: 6}).Natural(off, off, out), "cold air falls")
}

// By hand: 4500 m³/h through 0.2 m² go 6.25 m/s; 2.5 velocity heads of air of 1.204 kg/m³ are 58.8 Pa.
func TestDuctsTakeVelocityHeads(t *testing.T) {
	in := air.State{T: 20, P: air.StandardPressure}
	w := draught.Way{Opening: 0.2}
	assert.InDelta(t, 58.8, w.Ducts(4500/hour, in), 0.1)
	assert.InEpsilon(t, 4.0, w.Ducts(2, in)/w.Ducts(1, in), 1e-12)
	assert.Zero(t, (&draught.Way{}).Ducts(1, in))
}

// A fan gives its pressure in proportion to the density of what it blows.
func TestAFanGivesLessInWarmAir(t *testing.T) {
	c, err := draught.NewCurve(draught.Point{Pressure: 400}, draught.Point{Flow: 1})
	require.NoError(t, err)
	w := draught.Way{Fan: c}
	warm := air.State{T: 60, P: air.StandardPressure}
	assert.InEpsilon(t, 200*1.060/1.2, w.Blown(0.5, warm), 1e-3)
	assert.InDelta(t, 400, draught.Power(1, 200), 1e-9, "half of it is lost")
}
