package outside

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/sim/germinate"
	"maltwright/sim/grain"
	"maltwright/sim/steep"
)

// breath is what a lack of oxygen does to growth and breathing, and afterwards.
func breath() []row {
	after := func(what, unit, says string, digits int, accepted band, standing string, model func(testing.TB) float64) row {
		return row{what: what, unit: unit, digits: digits, says: says, accepted: accepted, key: "davidson-jangaard-1978", standing: standing, model: model}
	}
	return []row{
		after("steeped out after 6 h without oxygen: breath at once, against grain out of aired water", "%", "−26", 0, about(-26, 2),
			"seen; calibrated to it; the hours without oxygen are not known", func(t testing.TB) float64 { return 100 * (breathOf(drowned(t)) - 1) }).calibrated("debtBuilds", "debtMost"),
		after("the same: until it breathes within 2 % of what it would", "h", "up to 28", 0, atMost(28), "seen; calibrated to it", recovery).calibrated("debtPaid"),
		after("steeped out after 6 h without oxygen, kept at 16 °C: the peak of its breath comes later by", "h", "24 and more", 0, atLeast(24), "seen", laterPeak).held("the debt was fitted to how deep it is and how long it lasts").
			butMissed(band{2, 6}, "growth is slowed as much as breath is, no more; that one soak of up to 24 h made friable malt [bryce-2010] speaks against a day of standing"),
		{what: "three waters of 24 h at 10 °C, then a couch of 35 cm, unturned, in a room of 10 °C: its middle rises in the first day", unit: "K", digits: 0,
			says: "5–8", accepted: band{4.5, 8.5}, standing: "common practice, from memory",
			model: func(t testing.TB) float64 { return couch(t, 10, 24, 1, 24, 1, 24) }},
		row{what: "a couch of 35 cm in a room of 10 °C, unturned, of grain out of 7 h of still water and 9 h of rest in turn to the third water at 13 °C, as in our days: its middle rises in the first day", unit: "K", digits: 0,
			says: "5–8", accepted: band{4.5, 8.5}, standing: "common practice, from memory",
			model: func(t testing.TB) float64 { return couch(t, 13, 7, 9, 7, 9, 7) }}.
			butMissed(band{13, 19}, "it has chitted in its rests, and breathes by the table from the first hour; couches are known of long still steeps"),
		{what: "water with air all through, 72 h at 15 °C: kernels chitted in the steep, of 100", digits: 0, says: "fast", accepted: atLeast(80),
			key: "kelly-briggs-1992", standing: "seen; the bound is ours", model: func(t testing.TB) float64 { return 100 * aired(t, 15, 72).Batch().Chitted }},
		{what: "the same: dry matter burnt, % more than in 72 h of still water", digits: 2, says: "high", accepted: atLeast(0.5),
			key: "kelly-briggs-1992", standing: "seen; the bound is ours", model: func(t testing.TB) float64 {
				return 100 * (aired(t, 15, 72).Batch().Respired - steeped(t, 0.12, 15, 72).Batch().Respired) / 880
			}},
	}
}

// drowned is grain out of aired soaks that then stood in still water until it had been
// without oxygen for 6 h.
func drowned(t testing.TB) grain.Batch {
	s := aired(t, 15, 8, 10, 8, 7)
	for s.Airless() < 6*hour {
		require.NoError(t, s.Soak(math.Max(60, 6*hour-s.Airless()), steep.Water{T: 15}))
	}
	return s.Batch()
}

// breathOf is how fast a batch breathes, against one of its growth that owes nothing.
func breathOf(b grain.Batch) float64 {
	rate := func(debt float64) float64 { return b.Lot.RespirationSpeed(b.Clock, 16, b.Moisture(), 1-debt) }
	return rate(b.Debt) / rate(0)
}

func recovery(t testing.TB) float64 {
	p := piece(t, drowned(t), 40, 16)
	for breathOf(p.Batch()) < 0.98 && p.Age() < 100*hour {
		require.NoError(t, p.Advance(hour/4, steady(16)))
	}
	return p.Age() / hour
}

// laterPeak compares the peak of the breath with that of the same grain without its debt.
func laterPeak(t testing.TB) float64 {
	owing := drowned(t)
	free := owing
	free.Debt = 0
	peak := func(b grain.Batch) float64 {
		p, at, most := piece(t, b, 40, 16), 0.0, 0.0
		for p.Age() < 8*24*hour {
			before := p.RespirationLoss()
			require.NoError(t, p.Advance(hour/4, steady(16)))
			if burnt := p.RespirationLoss() - before; burnt > most {
				at, most = p.Age(), burnt
			}
		}
		return at / hour
	}
	return peak(owing) - peak(free)
}

// couch is by how much a heap of grain out of a steep warms in a day, in a room as cold as
// its steep.
func couch(t testing.TB, at float64, hours ...float64) float64 {
	b := steeped(t, 0.12, at, hours...).Batch()
	p := piece(t, b, b.Lot.BedVolume(b.X(), b.Clock)/0.35, at)
	require.NoError(t, p.Advance(24*hour, germinate.Room{T: at, RH: 0.97, Cover: 1}))
	return p.CoreT() - at
}
