package germinate_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/sim/drying"
	"maltwright/sim/germinate"
	"maltwright/sim/grain"
	"maltwright/sim/steep"
)

// chunk is the longest stretch in which the forecast asks for news, s.
const chunk = 600.0

// BenchmarkSteepToWither runs three soaks and two rests over 50 h, six days of
// germination and a day of withering, in chunks of ten minutes.
func BenchmarkSteepToWither(b *testing.B) {
	b.ReportAllocs()
	profile, err := grain.Of("barley")
	require.NoError(b, err)
	lot := grain.LotOf(profile, 5.3, 0.14)
	for b.Loop() {
		s, err := steep.New(lot)
		require.NoError(b, err)
		for i, hours := range []float64{8, 16, 8, 14, 4} {
			for range int(hours * hour / chunk) {
				if i%2 == 0 {
					err = s.Soak(chunk, steep.Water{T: 13})
				} else {
					err = s.Rest(chunk, steep.Air{T: 14, RH: 0.8})
				}
				if err != nil {
					b.Fatal(err)
				}
			}
		}
		p, err := germinate.New(s.Batch(), drying.Malt{}, germinate.Floor{Area: 0.8}, 14)
		require.NoError(b, err)
		keep(b, &p, 6*24*hour, germinate.Room{T: 13, RH: 0.85, Hold: &germinate.Band{Low: 14, High: 17}})
		keep(b, &p, 24*hour, germinate.Room{T: 20, RH: 0.6})
	}
}

// keep keeps the piece in the room, in chunks, and turns it every eight hours.
func keep(t testing.TB, p *germinate.Piece, dt float64, room germinate.Room) {
	t.Helper()
	for at := 0.0; at < dt-1; at += chunk {
		if p.SinceTurn() >= 8*hour-1 {
			p.Turn()
		}
		require.NoError(t, p.Advance(min(chunk, dt-at), room))
	}
}

const hour = 3600.0
