package forecast

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCoolingThatEndsByItsGuardIsTold(t *testing.T) {
	cured := "kiln in \"kiln\" { dry at air-on 50 °C until moisture at most 10 % allow 6 to 30 h; cure at air-on 82 °C for 5 h; cool to malt 30 °C"
	f := run1(t, steepText+growText+cured+" allow 1 min }\n")
	told := Troubles[StillWarm](f)
	require.Len(t, told, 1)
	assert.Equal(t, ByGuard, last(f).EndedBy)
	assert.InDelta(t, 60, told[0].Time, 1)
	assert.Greater(t, told[0].Got, 50.0)
	assert.Empty(t, Troubles[StillWarm](run1(t, steepText+growText+cured+" }\n")))
	assert.Empty(t, Troubles[StillWarm](run1(t, steepText+growText+cured+" allow 0 to 1 h }\n")), "it is cool long before")
}

func TestARiseIsHeldAtItsEndUnderAGuard(t *testing.T) {
	const rise = "dry at air-on 50 °C until moisture at most 30 % allow 0 to 24 h; dry from air-on 50 to 55 °C over 1 h until moisture at most 10 %"
	for guard, held := range map[string]bool{"": false, " allow 0 to 16 h": true, " allow 30 to 55 min": false} {
		f := kilnOf(t, rise+guard+"; cure at air-on 80 °C for 4 h")
		s := kilnSteps(f)[1]
		took := s.End - s.Start
		if !held {
			assert.LessOrEqual(t, took, 3600.0, guard)
			continue
		}
		assert.Greater(t, took, 1.5*3600, guard)
		assert.Equal(t, ByGate, s.EndedBy)
		assert.InDelta(t, 0.1, s.MoistureEnd, 1e-3)
		assert.InDelta(t, 55, s.Warmest.Air, 0.5, "held at the end of the rise")
	}
}

func TestARiseThatIsHeldEndsByItsGuard(t *testing.T) {
	f := kilnOf(t, "dry from air-on 30 to 35 °C over 1 h until moisture at most 5 % allow 1 to 3 h; cure at air-on 80 °C for 4 h")
	s := kilnSteps(f)[0]
	assert.Equal(t, ByGuard, s.EndedBy)
	assert.InDelta(t, 3*3600, s.End-s.Start, 1)
	g := f.Gates[len(f.Gates)-1]
	assert.False(t, g.Met)
	assert.True(t, strings.Contains(g.Text, "5 %"))
}

func TestWhatAKilnGivesInPlaceOfWhatIsAskedIsWritten(t *testing.T) {
	const body = "kiln in \"kiln\" { dry at air-on 50 °C until moisture at most 20 % allow 2 to 20 h; gate moisture at most 9 % allow 0 to 2 h; cure at air-on 82 °C for 5 h; cool to malt 30 °C }\n"
	weak := kilnSteps(inKiln(t, "area 0.5 m2; airflow 120 m3/h; reaches 20 to 110 °C; heater 1 kW; fired electric", body))
	for _, s := range weak[:3] {
		require.NotNil(t, s.Given, s.Label)
		// 1 kW warms 120 m3/h of air of some 35 °C, 0.038 kg/s, by 26 K (first principles)
		assert.InDelta(t, 14+26, *s.Given, 3, s.Label)
	}
	assert.Nil(t, weak[3].Given, "nothing is asked of a kiln that cools")
	for _, s := range kilnSteps(inKiln(t, kilnFacts, body)) {
		assert.Nil(t, s.Given, s.Label)
	}
}
