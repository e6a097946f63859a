package forecast

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func airless(f *Forecast) (s float64) {
	for _, t := range Troubles[OxygenGone](f) {
		s += t.Airless
	}
	return s
}

func TestASoakThatFollowsAnotherIsInFreshWater(t *testing.T) {
	one := run1(t, `steep in "tub" { soak 16 h in water at 13 °C }`+"\n"+growText+kilnText)
	two := run1(t, `steep in "tub" { soak 8 h in water at 13 °C; soak 8 h in water at 13 °C }`+"\n"+growText+kilnText)
	assert.InDelta(t, 2*one.Totals.SteepWater, two.Totals.SteepWater, 1e-9)
	assert.Less(t, airless(two), airless(one))
	require.Positive(t, airless(one))
	assert.InDelta(t, one.Totals.SteepOutMoisture, two.Totals.SteepOutMoisture, 0.005, "the corns drink on as before")
}

func TestASoakAfterARestIsCountedOnce(t *testing.T) {
	f := run1(t, `steep in "tub" { soak 8 h in water at 13 °C; rest 8 h in air at 14 °C; soak 8 h in water at 13 °C }`+"\n"+growText+kilnText)
	assert.InDelta(t, 2*1.5*5, f.Totals.SteepWater, 1e-9)
}
