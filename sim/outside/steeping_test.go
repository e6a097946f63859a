package outside

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/sim/grain"
	"maltwright/sim/outside/figure"
	"maltwright/sim/steep"
)

const hour = 3600.0

// Of the steeping table no point may be off by more than 2, and all within 1.0 rms: its own
// steps are about that uneven.
func steeping() []row {
	var list []row
	for _, c := range figure.Kunze() {
		list = append(list, row{what: fmt.Sprintf("continuous steep, %g h at %g °C", c.Hours, c.T), unit: "%", digits: 1,
			source: c.Moisture, accepted: about(c.Moisture, 2), key: "kunze", standing: "from memory",
			model: func(t testing.TB) float64 { return 100 * steeped(t, 0.12, c.T, c.Hours).Moisture() }}.fitted("pelegK1", "barleyCoreWater"))
	}
	list = append(list, row{what: "the twelve together, root mean square", unit: "points", digits: 2, says: "at most 1.0", accepted: atMost(1),
		key: "kunze", standing: "from memory; the bound is ours", model: kunzeRMS}.fitted("pelegK1", "barleyCoreWater"))
	return slices.Concat(list, schedules(), otherSteeps(), weighings(), foretold())
}

// schedules are steeps in soaks and rests, and what the water does.
func schedules() []row {
	canadian := []float64{8, 10, 8, 7, 3} // the middle of each of its bands
	guide := func(what, unit, says string, accepted band, model func(testing.TB) float64) row {
		return row{what: what, unit: unit, digits: 1, says: says, accepted: accepted, key: "canadian-guide", standing: "seen", model: model}
	}
	return []row{
		guide("first soak, 8 h at 15 °C", "%", "30–35", band{30, 35},
			func(t testing.TB) float64 { return 100 * steeped(t, 0.12, 15, 8).Moisture() }).held("only the cast was fitted"),
		guide("soak 8, rest 10, soak 8, rest 7, soak 3 h at 15 °C: cast", "%", "43–45", band{43, 45},
			func(t testing.TB) float64 { return 100 * steeped(t, 0.12, 15, canadian...).Moisture() }).calibrated("eagerFrom", "eagerBy", "eagerness"),
		guide("soak 8, rest 10, soak 8, rest 7, soak 3 h at 15 °C, air blown through its soaks: kernels chitted", "%", "over 80", atLeast(80),
			func(t testing.TB) float64 { return 100 * aired(t, 15, canadian...).Batch().Chitted }).calibrated("barleyChit"),
		guide("soak 8, rest 10, soak 8, rest 7, soak 3 h at 15 °C, in still water: kernels chitted", "%", "over 80", atLeast(80),
			func(t testing.TB) float64 { return 100 * steeped(t, 0.12, 15, canadian...).Batch().Chitted }).calibrated("barleyChit").
			butMissed(band{62, 69}, "in still water next to nothing grows, and the source does not say whether its soaks are aired"),
		row{what: "14.5 °C: 5 h wet, 19 h air, 4 h wet, 20 h air, wet to 45 %", unit: "h", digits: 0, says: "day 3, 48–72", accepted: band{48, 72},
			key: "mebak", standing: "from memory", model: mebakSteep}.held("its kiln set the drying, not its steep"),
		// Its first moisture is not given. Husk and film together hold 0.14 kg/kg, as the
		// table and the weighings ask for; that fits from 14 %, not from 12 %.
		row{what: "5 min at 18 °C, from 14 %", unit: "%", digits: 1, source: 23.2, accepted: about(23.2, 0.3),
			key: "heriot-watt-icbd", standing: "seen; first moisture not given", model: func(t testing.TB) float64 { return 100 * steeped(t, 0.14, 18, 1.0/12).Moisture() }}.calibrated("fillTime", "barleyHuskWater", "barleyFilmWater").untried(),
		row{what: "5 min at 18 °C, from 12 %", unit: "%", digits: 1, source: 23.2, accepted: about(23.2, 0.3), measured: about(21.7, 0.1),
			missed: "husk and film hold what the weighings ask for, which fits a grain of 14 %",
			key:    "heriot-watt-icbd", standing: "seen; first moisture not given", model: func(t testing.TB) float64 { return 100 * steeped(t, 0.12, 18, 1.0/12).Moisture() }}.calibrated("fillTime", "barleyHuskWater", "barleyFilmWater").untried(),
		oxygenRow(10, 11.3), oxygenRow(15, 10.1), oxygenRow(20, 9.1),
		row{what: "oxygen taken in the third soak over that in the first", unit: "times", digits: 1, source: 10, accepted: about(10, 0.5),
			key: "kent-evers", standing: "from memory", model: oxygenGrowth}.calibrated("oxygen that grain takes (sim/steep/oxygen.go)"),
	}
}

// otherSteeps are those of other grains.
func otherSteeps() []row {
	list := []row{
		row{what: "maize, 20 h, 4 h of rest and 20 h at 22 °C", unit: "%", digits: 1, says: "40–46", accepted: band{40, 46},
			standing: "common practice; calibrated to it", model: func(t testing.TB) float64 { return 100 * soaked(t, "maize", 22, 20, 4, 20).Moisture() }}.calibrated("maizeUptake"),
		row{what: "maize, ten days at 22 °C: no wetter than it is milled", unit: "%", digits: 1, source: 45, accepted: about(45, 0.5),
			standing: "common practice; calibrated to it", model: func(t testing.TB) float64 { return 100 * soaked(t, "maize", 22, 240).Moisture() }}.calibrated("maizeCoreWater"),
		row{what: "sorghum, 22 h, 4 h of rest and 22 h at 25 °C", unit: "%", digits: 1, says: "40 and more", accepted: band{40, 46},
			key: "sorghum-study", standing: "seen; calibrated to it", model: func(t testing.TB) float64 { return 100 * soaked(t, "sorghum", 25, 22, 4, 22).Moisture() }}.calibrated("sorghumUptake"),
	}
	for _, c := range []struct {
		species, by string
		low, high   float64
	}{
		{"wheat", "nakedCoreWater", 46, 49}, {"rye", "nakedCoreWater", 46, 49}, {"sorghum", "nakedCoreWater", 44, 49},
		{"oats", "oatsCoreWater", 45, 48}, {"buckwheat", "buckwheatCoreWater", 45, 48},
	} {
		list = append(list, row{what: c.species + ", ten days at 15 °C", unit: "%", digits: 1, says: fmt.Sprintf("%g–%g", c.low, c.high), accepted: band{c.low, c.high},
			standing: "common practice; calibrated to it", model: func(t testing.TB) float64 { return 100 * soaked(t, c.species, 15, 240).Moisture() }}.calibrated(c.by))
	}
	// What leaches in the longer hours, and what husk and film take at once, makes them some
	// hundredths less.
	for _, c := range []struct {
		species       string
		energy        float64 // kJ/mol
		key, standing string
	}{
		{"barley", 48.5, "mok-1983", "published, from its activation energy of 48.5 kJ/mol"},
		{"wheat", 51, "becker-1960", "published, from its activation energy of 51 kJ/mol"},
		{"maize", 31, "shull-1924", "seen; calibrated to it, 31 kJ/mol"},
	} {
		ratio := math.Exp(c.energy * 1e3 / 8.314 * (1/283.15 - 1/293.15))
		r := row{what: c.species + " to 38 %, hours at 10 °C over those at 20 °C", unit: "times", digits: 2, source: ratio, accepted: about(ratio, 0.03),
			key: c.key, standing: c.standing, model: func(t testing.TB) float64 { return hoursTo(t, c.species, 10, 0.38) / hoursTo(t, c.species, 20, 0.38) }}
		if c.species == "maize" {
			r = r.calibrated("maizeUptakeEnergy")
		} else {
			r = r.sum()
		}
		list = append(list, r)
	}
	return list
}

// hoursTo is how long a grain of 12 % stands in water until it has the moisture w.
func hoursTo(t testing.TB, species string, at, w float64) float64 {
	s, err := steep.New(lot(t, species, 880, 0.12))
	require.NoError(t, err)
	const step = 0.05 // h
	before := s.Moisture()
	for n := 1; n < 20_000; n++ {
		require.NoError(t, s.Soak(step*hour, steep.Water{T: at}))
		if now := s.Moisture(); now >= w {
			return step * (float64(n) - (now-w)/(now-before))
		}
		before = s.Moisture()
	}
	return math.NaN()
}

func oxygenRow(at, mg float64) row {
	return row{what: fmt.Sprintf("oxygen in water at %g °C", at), unit: "mg/l", digits: 2, source: mg, accepted: about(mg, 0.1),
		key: "thomann-mueller-1987", standing: "published tables, seen; the fit from memory",
		model: func(t testing.TB) float64 {
			v, err := steep.OxygenInWater(at)
			require.NoError(t, err)
			return v
		}}.sum()
}

// lot is so many kg of dry matter of a species at the moisture w, wet basis.
func lot(t testing.TB, species string, dry, w float64) grain.Lot {
	t.Helper()
	p, err := grain.Of(species)
	require.NoError(t, err)
	return lotOf(t, grain.LotOf(p, dry, w/(1-w)))
}

// steeped is barley of the moisture w after soak, rest, soak ... of so many hours.
func steeped(t testing.TB, w, at float64, hours ...float64) *steep.State {
	t.Helper()
	return grainSteeped(t, lot(t, "barley", 880, w), at, hours...)
}

// soaked is a grain of 12 % after the same.
func soaked(t testing.TB, species string, at float64, hours ...float64) *steep.State {
	t.Helper()
	return grainSteeped(t, lot(t, species, 880, 0.12), at, hours...)
}

func grainSteeped(t testing.TB, l grain.Lot, at float64, hours ...float64) *steep.State {
	t.Helper()
	s, err := steep.New(l)
	require.NoError(t, err)
	for i, h := range hours {
		if i%2 == 0 {
			require.NoError(t, s.Soak(h*hour, steep.Water{T: at}))
		} else {
			require.NoError(t, s.Rest(h*hour, steep.Air{T: at, RH: 0.9}))
		}
	}
	return &s
}

// aired is the same schedule of barley of 12 % with air blown through all its soaks.
func aired(t testing.TB, at float64, hours ...float64) *steep.State {
	t.Helper()
	s, err := steep.New(lot(t, "barley", 880, 0.12))
	require.NoError(t, err)
	for i, h := range hours {
		if i%2 == 0 {
			require.NoError(t, s.Soak(h*hour, steep.Water{T: at, Aerated: true}))
		} else {
			require.NoError(t, s.Rest(h*hour, steep.Air{T: at, RH: 0.9}))
		}
	}
	return &s
}

func kunzeRMS(t testing.TB) float64 {
	sum := 0.0
	for _, c := range figure.Kunze() {
		sum += math.Pow(100*steeped(t, 0.12, c.T, c.Hours).Moisture()-c.Moisture, 2)
	}
	return math.Sqrt(sum / 12)
}

func mebakSteep(t testing.TB) float64 {
	s := steeped(t, 0.12, 14.5, 5, 19, 4, 20)
	at := 48.0
	for ; s.Moisture() < 0.45 && at < 200; at += 0.1 {
		require.NoError(t, s.Soak(0.1*hour, steep.Water{T: 14.5}))
	}
	return at
}

// oxygenGrowth compares six minutes in the first soak with six in the third of the
// Canadian schedule.
func oxygenGrowth(t testing.TB) float64 {
	took := func(s *steep.State) float64 {
		before := s.Oxygen()
		require.NoError(t, s.Soak(360, steep.Water{T: 15}))
		return before - s.Oxygen()
	}
	return took(steeped(t, 0.12, 15, 8, 10, 8, 7, 0.01)) / took(steeped(t, 0.12, 15, 0.01))
}
