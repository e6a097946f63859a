package kiln_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
	drives "maltwright/sim/draught"
	"maltwright/sim/drying"
	"maltwright/sim/kiln"
)

// wetAbove is a bed that lets air go saturated at t °C, so deep, on so many m².
func wetAbove(t, depth, area float64) kiln.Over {
	return kiln.Over{Area: area, Height: 2.5, Course: kiln.Intake{{T: t, W: air.HumidityRatio(air.Saturation(t), 101325), Depth: depth}}}
}

// By hand, the chimney of the test above with a bed of 0.2 m over the first, that lets air go saturated at
// 17 °C: outside air of 10 °C and 80 % has 1.243 kg/m³, saturated air of 22.7 °C 1.181 and of 17 °C 1.208. So 2.5 m of
// the one, 3.5 m of the other and 1 m before the bed draw 9.81·(2.5·0.062 + 3.5·0.035 + 0.154) = 4.2 Pa,
// in place of 5.1, and what they are lost in is twice as deep. With so little air the malt takes some hours to be that warm.
func TestAChimneyDrawsThroughTwoBeds(t *testing.T) {
	way := &drives.Way{Above: 6, Below: 1, Opening: 0.1}
	kit := kiln.Equipment{Area: 2, Way: way}
	one := airAfter(t, deep(120, 0.2), kit, winter, 2, kiln.Hold(kiln.AirOn, 50))
	kit.Over = []kiln.Over{wetAbove(17, 0.2, 2)}
	two := airAfter(t, deep(120, 0.2), kit, winter, 8, kiln.Hold(kiln.AirOn, 50))
	assert.Zero(t, one.Over)
	assert.InDelta(t, 4.2, two.Natural, 0.1)
	assert.InEpsilon(t, two.Bed+two.Over+two.Ducts, two.Natural, 1e-4)
	byHand := func(q float64) float64 { return 0.2 * 0.8 * 21400 * q * q / math.Log1p(13.2*q) }
	q := two.Flow / 2
	assert.InEpsilon(t, byHand(q), two.Bed, 0.06)
	assert.InEpsilon(t, byHand(q*(273+20)/(273+50)), two.Over, 0.03, "the same air, cooler by then")
	assert.Less(t, two.Flow, 0.5*one.Flow)
}

// On a sixth of the area a bed lies six times as deep, under six times the speed: through loose malt, whose resistance
// is nearly in proportion there, some 36 times the pressure.
func TestADeepBedAboveChokesTheChimney(t *testing.T) {
	kit := kiln.Equipment{Area: 12, Way: &drives.Way{Above: 6, Below: 1, Opening: 0.6}, Over: []kiln.Over{wetAbove(25, 0.15, 12)}}
	even := airAfter(t, deep(340, 0.09), kit, winter, 2, kiln.Hold(kiln.AirOn, 60))
	kit.Over = []kiln.Over{wetAbove(25, 0.9, 2)}
	choked := airAfter(t, deep(340, 0.09), kit, winter, 2, kiln.Hold(kiln.AirOn, 60))
	assert.Less(t, choked.Flow, even.Flow/6)
	assert.Greater(t, choked.Over, 0.9*choked.Natural)
}

// A fan has both beds against it: two of a half lie as one.
func TestAFanHasBothBedsAgainstIt(t *testing.T) {
	way := &drives.Way{Fan: fan(t, 6000, 400, 9000, 0), Opening: 0.2}
	full := kiln.Ambient{T: 20, RH: 1}
	whole := airAfter(t, deep(1000, 0.75), kiln.Equipment{Area: 4, Way: way}, full, 0.01, still)
	halves := airAfter(t, deep(500, 0.375), kiln.Equipment{Area: 4, Way: way, Over: []kiln.Over{wetAbove(20, 0.375, 4)}}, full, 0.01, still)
	assert.InEpsilon(t, whole.Flow, halves.Flow, 1e-3)
	assert.InEpsilon(t, whole.Bed, halves.Bed+halves.Over, 1e-3)

	set := kiln.Equipment{Area: 4, Airflow: 1, Over: []kiln.Over{wetAbove(20, 0.375, 4)}}
	m := airAfter(t, deep(500, 0.375), set, full, 0.01, still)
	assert.InEpsilon(t, m.Bed+m.Over+m.Ducts, m.Fan, 1e-9, "and a fan that is told by its air alone")
}

func TestABedAboveIsBounded(t *testing.T) {
	for _, o := range []kiln.Over{{}, {Area: 1, Height: 300}, {Area: 1, Course: kiln.Intake{{Depth: -1}}}, {Area: 1, Course: kiln.Intake{{T: 1000}}}} {
		_, err := kiln.New(deep(100, 0.3), kiln.Equipment{Area: 2, Airflow: 0.3, Over: []kiln.Over{o}}, winter, drying.Malt{})
		require.Error(t, err)
	}
}
