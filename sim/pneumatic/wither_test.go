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
	air := pneumatic.Supply{Room: pneumatic.Room{T: at, RH: rh, Open: true, AirSpeed: speed}, Flow: flow / 3600 * area, T: at, RH: rh, NoSpray: true}
	require.NoError(t, b.Advance(hours*hour, air))
	p, err := germinate.New(batch, batch.Lot.Profile.Malt, germinate.Floor{Area: area}, at)
	require.NoError(t, err)
	require.NoError(t, p.Advance(hours*hour, germinate.Room{T: at, RH: rh, AirSpeed: speed}))
	return b.Moisture(), p.Moisture()
}

// At equal air, a bed that stands withers as a piece on a floor does, by the same face and the
// same supply from below; the more the deeper it lies, as the layers of the bed have each
// their own moisture.
func TestABedThatStandsWithersAsAPieceDoes(t *testing.T) {
	for _, dry := range []float64{3, 6, 20} {
		for _, hours := range []float64{6, 12, 24} {
			still, over := withering(t, dry, 20, 0.5, 0, 0.3, hours)
			assert.InEpsilon(t, 0.45-over, 0.45-still, 0.3, "%g kg/m², %g h: %g", dry, hours, over)
		}
	}
	dried, _ := withering(t, 6, 20, 0.44, 0, 0.3, 22)
	assert.Less(t, dried, 0.37, "2 cm")
}

// More of the air that is blown through never withers slower, from 1 m³/h on the square metre
// on, as the open face goes on giving to the room what that air lets pass. Less than that takes no
// warmth from below and dries a thin bed less than still air does: by three tenths at most.
func TestALittleAirWithersHardlySlowerThanNone(t *testing.T) {
	for _, dry := range []float64{3, 6, 20} {
		for _, rh := range []float64{0.3, 0.6, 0.8} {
			for _, hours := range []float64{6, 12, 24, 48} {
				still, _ := withering(t, dry, 20, rh, 0, 0.3, hours)
				wettest := 1.0
				for _, flow := range []float64{1, 3, 10, 30, 100, 300, 1000} {
					if wettest < 0.35 { // withered
						break
					}
					through, _ := withering(t, dry, 20, rh, flow, 0.3, hours)
					assert.Greater(t, 0.45-through, 0.7*(0.45-still), "%g kg/m², %g, %g h, %g m³/h against none", dry, rh, hours, flow)
					assert.LessOrEqual(t, through, wettest+1e-3, "%g kg/m², %g, %g h, %g m³/h", dry, rh, hours, flow)
					wettest = through
				}
			}
		}
	}
}

// A box that is shut gives nothing by its face while the fan runs.
func TestAShutBoxLosesNothingByItsFace(t *testing.T) {
	b := bed(t, cast(t, 0.45), pneumatic.Vessel{Area: 10, Layers: 8}, 15)
	s := pneumatic.Supply{Room: pneumatic.Room{T: 20, RH: 0.4}, Flow: 10. / 3600, T: 20, RH: 0.4, NoSpray: true}
	require.NoError(t, b.Advance(6*hour, s))
	assert.Zero(t, b.Ledger().OffFace)
	s.Room.Open = true
	require.NoError(t, b.Advance(6*hour, s))
	assert.Positive(t, b.Ledger().OffFace)
}

// At equal air, air that goes through the bed reaches every kernel, and air over it
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

// A bed that dries takes its heat from the air, so that more of it dries it more. Far below the
// moisture of withered malt kernels hold back, to the face and to the air through them each by
// itself, so that less air may take a tenth of a point more.
func TestMoreAirNeverWithersSlower(t *testing.T) {
	for _, dry := range []float64{2, 6, 20} {
		for _, at := range []float64{12, 20, 30} {
			for _, rh := range []float64{0.3, 0.6, 0.8} {
				const hours = 24
				wettest, wettestOver := 1.0, 1.0
				for _, more := range []float64{0.5, 1, 2, 4} {
					through, over := withering(t, dry, at, rh, 300*more, 0.3*more, hours)
					near := 1e-4
					if wettest < 0.3 {
						near = 2e-3
					}
					assert.LessOrEqual(t, through, wettest+near, "%g kg/m², %g °C, %g, %g-fold through", dry, at, rh, more)
					assert.LessOrEqual(t, over, wettestOver+1e-4, "%g kg/m², %g °C, %g, %g-fold over", dry, at, rh, more)
					wettest, wettestOver = through, over
				}
			}
		}
	}
}
