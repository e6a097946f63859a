package evidence_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

const house = `scale "coarse" { division 200 g; holds 30 kg }
scale "fine" { division 5 g }
vessel "pan" { holds 20 l; weighs 1.5 kg }
`

// A uniform distribution 200 g wide has a standard deviation of 200 g/√12, 57.7 g. On a
// scale of which nothing is said the whole error is 1.2 % of what drips and 0.8 % later.
func TestAWeightIsAsExactAsItsScale(t *testing.T) {
	x := trial(t, load(t, house+`batch "x" of "Loft pale" {
  began 2026-03-06 07:00
  weighed 7.40 kg at 14:00 after soak 1
  weighed 7.40 kg on "coarse" at 14:00 after soak 1
  weighed 8.90 kg in "pan" on "coarse" at 14:00 after soak 1
  weighed 8.60 kg on "fine" at 2026-03-12 14:00 after germinate
}
`), time.Time{})
	require.Len(t, x.Observations, 4)
	rest := 7.40 * math.Sqrt(0.012*0.012-0.004*0.004)
	assert.InDelta(t, 0.012*7.40, x.Observations[0].Error, 1e-12)
	assert.InDelta(t, math.Hypot(rest, 0.2/math.Sqrt(12)), x.Observations[1].Error, 1e-12)
	assert.InDelta(t, 7.40, x.Observations[2].Value, 1e-12, "without the pan")
	assert.InDelta(t, x.Observations[1].Error, x.Observations[2].Error, 1e-12, "the pan drips nothing")
	assert.InDelta(t, math.Hypot(8.60*math.Sqrt(0.008*0.008-0.004*0.004), 0.005/math.Sqrt(12)), x.Observations[3].Error, 1e-12)
	assert.Equal(t, []forecast.Assumption{forecast.ScaleError{Share: 0.004}}, x.Assumed(), "of the first")
}

func TestNothingIsAssumedOfAKnownScale(t *testing.T) {
	x := trial(t, load(t, house+`batch "x" of "Loft pale" {
  began 2026-03-06 07:00
  weighed 7.40 kg on "fine" at 14:00 after soak 1
  read bed 17.2 °C at 2026-03-08 06:20
}
`), time.Time{})
	assert.Empty(t, x.Assumed())
}

// Where a house has one scale, every weight was read on it that it takes.
func TestTheOnlyScaleOfAHouseIsThatOfItsWeights(t *testing.T) {
	b := written(t, "  weighed 7.40 kg at 14:00 after soak 1\n")
	only := *b.Process.House.Scales[0]
	b.Process.House.Scales = []*model.Scale{&only}
	x := trial(t, b, time.Time{})
	assert.InDelta(t, math.Hypot(7.40*math.Sqrt(0.012*0.012-0.004*0.004), 0.005/math.Sqrt(12)), x.Observations[0].Error, 1e-12)
	assert.Empty(t, x.Assumed())

	only.Holds = &model.Quantity{}
	only.Holds.SI = 2
	x = trial(t, b, time.Time{})
	assert.InDelta(t, 0.012*7.40, x.Observations[0].Error, 1e-12)
	assert.NotEmpty(t, x.Assumed())
}

// What a bowl weighs counts with the error of an unknown scale, which is of all that
// stands on it.
func TestAHeavyBowlHidesALightBag(t *testing.T) {
	x := trial(t, load(t, house+`batch "x" of "Loft pale" {
  began 2026-03-06 07:00
  bag 100 g at the start
  tare 8 g
  weighed bag 131 g after soak 1
  weighed bag 1.631 kg in "pan" after soak 1
}
`), time.Time{})
	assert.InDelta(t, 0.123, x.Observations[1].Value, 1e-9)
	assert.InDelta(t, math.Hypot(0.123*math.Sqrt(0.02*0.02-0.004*0.004), 0.004*1.631), x.Observations[1].Error, 1e-12)
	assert.Greater(t, x.Observations[1].Error, 2*x.Observations[0].Error)
}
