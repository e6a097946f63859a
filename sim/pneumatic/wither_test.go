package pneumatic_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/germinate"
	"maltwright/sim/pneumatic"
)

// withering is the moisture of green malt, so many kg of dry matter on a square
// metre, after hours in air of t °C: blown through at so many m³/h, and lying
// in it, the air moving at the speed m/s.
func withering(t *testing.T, dry, at, rh, flow, speed, hours float64) (through, over float64) {
	t.Helper()
	batch := cast(t, 0.45)
	batch.Clock, batch.Chitted = 2000, 0.96
	area := batch.Dry / dry
	b := bed(t, batch, pneumatic.Vessel{Area: area, Layers: 8}, at)
	air := pneumatic.Supply{Room: pneumatic.Room{T: at, RH: rh}, Flow: flow / 3600 * area, T: at, RH: rh, NoSpray: true}
	require.NoError(t, b.Advance(hours*hour, air))
	p, err := germinate.New(batch, batch.Lot.Profile.Malt, germinate.Floor{Area: area}, at)
	require.NoError(t, err)
	require.NoError(t, p.Advance(hours*hour, germinate.Room{T: at, RH: rh, AirSpeed: speed}))
	return b.Moisture(), p.Moisture()
}

// At equal air, air that goes through the bed reaches every corn, and air over it
// the upper ones.
func TestAirLedThroughWithersNoSlowerThanAirOverTheBed(t *testing.T) {
	for _, dry := range []float64{2, 6, 20} {
		for _, at := range []float64{12, 20, 30} {
			for _, rh := range []float64{0.3, 0.6, 0.8} {
				for _, hours := range []float64{3, 12, 24, 60} {
					through, over := withering(t, dry, at, rh, 300, 0.3, hours)
					assert.LessOrEqual(t, through, over+1e-4, "%g kg/m², %g °C, %g, %g h", dry, at, rh, hours)
				}
			}
		}
	}
}

// A bed that dries takes its heat from the air, so that more of it dries it more.
func TestMoreAirNeverWithersSlower(t *testing.T) {
	for _, dry := range []float64{2, 6, 20} {
		for _, at := range []float64{12, 20, 30} {
			for _, rh := range []float64{0.3, 0.6, 0.8} {
				const hours = 24
				wettest, wettestOver := 1.0, 1.0
				for _, more := range []float64{0.5, 1, 2, 4} {
					through, over := withering(t, dry, at, rh, 300*more, 0.3*more, hours)
					assert.LessOrEqual(t, through, wettest+1e-4, "%g kg/m², %g °C, %g, %g-fold through", dry, at, rh, more)
					assert.LessOrEqual(t, over, wettestOver+1e-4, "%g kg/m², %g °C, %g, %g-fold over", dry, at, rh, more)
					wettest, wettestOver = through, over
				}
			}
		}
	}
}
