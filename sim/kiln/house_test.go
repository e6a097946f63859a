package kiln_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/sim/drying"
	"maltwright/sim/kiln"
)

// tonne is green malt that makes a tonne at 4 %; tray is a home charge, 3 cm
// deep on half a square metre.
var (
	tonne = kiln.Charge{DryMass: 960, Moisture: dry(0.45), Temperature: 15, BulkDensity: 550}
	tray  = kiln.Charge{DryMass: 5, Moisture: dry(0.45), Temperature: 15, BulkDensity: 550}
)

// house is a kiln of 3 m² that sends 4500 m³/h, at air-on, through its bed;
// cabinet a home kiln of half a square metre and 60 m³/h.
var (
	house   = kiln.Equipment{Area: 3, Airflow: 4500.0 / 3600}
	cabinet = kiln.Equipment{Area: 0.5, Airflow: 60.0 / 3600}
)

var (
	winter = kiln.Ambient{T: 10, RH: 0.80}
	spring = kiln.Ambient{T: 15, RH: 0.60, Altitude: 140}
)

var still = kiln.Setting{Target: kiln.Fresh}

var malt = drying.Malt{}

func dry(wet float64) float64 { return wet / (1 - wet) }

func bed(t testing.TB, charge kiln.Charge, kit kiln.Equipment, ambient kiln.Ambient) *kiln.Bed {
	t.Helper()
	b, err := kiln.New(charge, kit, ambient, drying.Malt{})
	require.NoError(t, err)
	return b
}

// run advances by hours in pieces of ten minutes, as the forecast does.
func run(t require.TestingT, b *kiln.Bed, hours float64, set kiln.Setting) kiln.View {
	for left := hours * 3600; left > 1e-6; left -= 600 {
		_, err := b.Advance(min(600, left), set)
		require.NoError(t, err)
	}
	return b.View()
}

// until advances minute by minute until the condition holds, and gives the
// hours that took; more than 60 days is a failure.
func until(t testing.TB, b *kiln.Bed, set kiln.Setting, step float64, done func(kiln.View) bool) float64 {
	t.Helper()
	start := b.View().Hours
	for at := b.View(); !done(at); at = b.View() {
		require.Less(t, at.Hours-start, 60.0*24, "never came to it: %+v", at)
		_, err := b.Advance(step, set)
		require.NoError(t, err)
	}
	return b.View().Hours - start
}

func moistureAtMost(wet float64) func(kiln.View) bool {
	return func(v kiln.View) bool { return v.WetBasis <= wet }
}
