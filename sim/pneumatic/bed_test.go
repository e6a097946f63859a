package pneumatic_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/sim/grain"
	"maltwright/sim/pneumatic"
)

const (
	hour = 3600.0
	day  = 24 * hour
)

// cast is a tonne of raw barley at 12 %, steeped to a moisture, wet basis, with 80 %
// of the kernels due to chit chitted.
func cast(t testing.TB, w float64) grain.Batch { return castOf(t, 880, w) }

// castOf is so of kg of dry matter.
func castOf(t testing.TB, dry, w float64) grain.Batch {
	t.Helper()
	profile, err := grain.Of("barley")
	require.NoError(t, err)
	b, err := grain.NewBatch(grain.LotOf(profile, dry, 0.12/0.88))
	require.NoError(t, err)
	b.Water = dry * w / (1 - w)
	b.Clock = profile.Chit * math.Exp(profile.ChitSpread*0.8416)
	b.Chitted = profile.Due(b.Clock) * b.Lot.Germination
	return b
}

// metre is the area on which a batch lies at a depth of so many metres at cast, m².
func metre(b grain.Batch, depth float64) float64 {
	return b.Lot.BedVolume(b.X(), b.Clock) / depth
}

func bed(t testing.TB, batch grain.Batch, vessel pneumatic.Vessel, at float64) pneumatic.Bed {
	t.Helper()
	b, err := pneumatic.New(batch, batch.Lot.Profile.Malt, vessel, at)
	require.NoError(t, err)
	return b
}

// tonne is a box with a tonne of barley, 1 m deep at cast, from 15 °C.
func tonne(t testing.TB) pneumatic.Bed {
	b := cast(t, 0.45)
	return bed(t, b, pneumatic.Vessel{Area: metre(b, 1)}, 15)
}

func hall() pneumatic.Room { return pneumatic.Room{T: 14, RH: 0.95} }

// blown is so much air, m³/h, of a temperature and humidity that the plant always
// makes.
func blown(flow, t, rh float64) pneumatic.Supply {
	return pneumatic.Supply{Room: hall(), Flow: flow / hour, T: t, RH: rh}
}

// keep advances the bed by seconds, in chunks of ten minutes, with a turn every so
// many; the last of them comes before the end. Nil is never.
func keep(t testing.TB, b *pneumatic.Bed, dt, turn float64, s pneumatic.Supply) {
	t.Helper()
	const chunk = 600.0
	for at := 0.0; at < dt-1; at += chunk {
		if turn > 0 && b.SinceTurn() >= turn-1 {
			b.Turn()
		}
		require.NoError(t, b.Advance(min(chunk, dt-at), s))
	}
}
