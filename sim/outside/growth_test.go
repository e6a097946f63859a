package outside

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/sim/germinate"
	"maltwright/sim/grain"
	"maltwright/sim/steep"
)

func growth() []row {
	var list []row
	for _, c := range [][3]float64{{12, 7, 9}, {14, 6, 7}, {16, 5, 6}, {18, 4, 5}} {
		list = append(list, row{what: fmt.Sprintf("barley at %g °C, half way from an acrospire of 3/4 to a full one", c[0]), unit: "days", digits: 1,
			says: fmt.Sprintf("%g–%g", c[1], c[2]), accepted: band{c[1], c[2]}, key: "kunze", standing: "from memory",
			model: func(t testing.TB) float64 {
				return (daysTo(t, "barley", 0.45, c[0], 0.75) + daysTo(t, "barley", 0.45, c[0], 1)) / 2
			}}.fitted("marks of the acrospire (sim/grain/barley.go)"))
	}
	list = append(list,
		row{what: "germination index in the dish, 20 °C (10 over the mean day)", unit: "", digits: 1, says: "6.7–9.4", accepted: band{6.7, 9.4},
			standing: "handbook, from memory", model: germinationIndex}.calibrated("barleyChit", "barleyChitSpread"),
		row{what: "dry matter respired in six days at 16 °C", unit: "%", digits: 1, source: 5.8, accepted: about(5.8, 0.1),
			key: "narziss", standing: "from memory; calibrated to it", model: func(t testing.TB) float64 { return 100 * grown(t, 20, 6).RespirationLoss() }}.calibrated("table of respiration (sim/grain/barley.go)"),
		row{what: "carbon dioxide of a tonne in five days (1.83 kg/m³)", unit: "m³", digits: 0, source: 39, accepted: about(39, 4),
			standing: "handbook, from memory", model: func(t testing.TB) float64 { return grown(t, 880, 5).CO2() / 1.83 }},
		row{what: "heat of 1 % a day, a tonne of barley at 12 %", unit: "kW", digits: 2, source: 1.77, accepted: about(1.77, 0.005),
			standing: "first principles", model: func(testing.TB) float64 { return 880 * 0.01 / 86400 * grain.StarchHeat / 1000 }},
	)
	for _, c := range [][2]float64{{15, 95}, {25, 89}, {30, 77}, {35, 19}, {40, 0}} {
		list = append(list, row{what: fmt.Sprintf("a bed kept at %g °C, final germination of a lot with 95 %%", c[0]), unit: "%", digits: 0, source: c[1], accepted: about(c[1], 1),
			key: "onofri-2018", standing: "seen", model: finalGermination(c[0])}.sum()) // the model has the source's own table
	}
	return append(append(append(list, otherGrains()...), breath()...), floors()...)
}

// otherGrains come to a mark of their acrospire within the days of a whole
// germination.
func otherGrains() []row {
	var list []row
	for _, c := range []struct {
		species, mark   string
		w, at, share    float64
		least, most     float64
		says, key, pace string
	}{
		{"rye", "3/4", 0.45, 16, 0.75, 3, 5, "within 5", "ndsu-2018", "ryePace"},
		{"oats", "full", 0.46, 17, 1, 4, 8, "within 8", "munoz-insa-2011", "oatsPace"},
		{"sorghum", "full", 0.42, 26.5, 1, 3, 5, "within 5", "sorghum-study", "sorghumPace"},
		{"maize", "full", 0.43, 27, 1, 5, 6, "5–6", "", "maizePace"},
		{"millet", "full", 0.40, 27.5, 1, 2.5, 5, "3–5", "csir-millet", "milletPace"},
	} {
		from := "seen; calibrated to it"
		if c.key == "" {
			from = "common practice, from memory; calibrated to it"
		}
		list = append(list, row{what: fmt.Sprintf("%s at %g °C, %g %%, to an acrospire of %s", c.species, c.at, 100*c.w, c.mark), unit: "days", digits: 1,
			says: c.says, accepted: band{c.least, c.most}, key: c.key, standing: from,
			model: func(t testing.TB) float64 { return daysTo(t, c.species, c.w, c.at, c.share) }}.calibrated(c.pace))
	}
	for _, species := range []string{"sorghum", "maize"} {
		list = append(list, row{what: species + " at 25 °C, 43 %, to an acrospire of full: dry matter burnt", unit: "%", digits: 1,
			says: "4–6", accepted: band{4, 6}, standing: "common practice, from memory; calibrated to it",
			model: func(t testing.TB) float64 { return 100 * burntTo(t, species, 0.43, 25, 1) }}.calibrated("tropicalBreath"))
	}
	return list
}

// cast is dry kg of a species of which half the kernels have just chitted.
func cast(t testing.TB, species string, dryMass, w float64) grain.Batch {
	t.Helper()
	b, err := grain.NewBatch(lot(t, species, dryMass, 0.12))
	require.NoError(t, err)
	b.Water, b.Clock, b.Chitted = dryMass*dry(w), b.Lot.Profile.Chit, 0.5*b.Lot.Germination
	return b
}

// steady is a damp room in which a bed is held at just t °C.
func steady(at float64) germinate.Room {
	return germinate.Room{T: at, RH: 0.98, Hold: &germinate.Band{Low: at, High: at}, Heater: 1e6, Cooler: 1e6}
}

func piece(t testing.TB, b grain.Batch, area, at float64) *germinate.Piece {
	t.Helper()
	p, err := germinate.New(b, b.Lot.Profile.Malt, germinate.Floor{Area: area}, at)
	require.NoError(t, err)
	return &p
}

func daysTo(t testing.TB, species string, w, at, length float64) float64 {
	return grownTo(t, species, w, at, length).Age() / (24 * hour)
}

// burntTo is the share of the dry matter that is burnt by then.
func burntTo(t testing.TB, species string, w, at, length float64) float64 {
	return grownTo(t, species, w, at, length).RespirationLoss()
}

func grownTo(t testing.TB, species string, w, at, length float64) *germinate.Piece {
	p := piece(t, cast(t, species, 20, w), 1, at)
	for p.Acrospire() < length && p.Age() < 20*24*hour {
		require.NoError(t, p.Advance(hour/4, steady(at)))
	}
	return p
}

// grown is barley after days at 16 °C, 35 kg of dry matter on the square metre at
// most.
func grown(t testing.TB, dryMass, days float64) *germinate.Piece {
	p := piece(t, cast(t, "barley", dryMass, 0.45), max(1, dryMass/35), 16)
	require.NoError(t, p.Advance(days*24*hour, steady(16)))
	return p
}

func finalGermination(at float64) func(testing.TB) float64 {
	return func(t testing.TB) float64 {
		b := cast(t, "barley", 20, 0.45)
		b.Lot.Germination, b.Clock, b.Chitted = 0.95, 0, 0
		p := piece(t, b, 1, at)
		require.NoError(t, p.Advance(4*24*hour, steady(at)))
		return 100 * p.Chitted()
	}
}

// germinationIndex counts the kernels at 24, 48 and 72 h; the dish is kept wet by dips
// of five minutes.
func germinationIndex(t testing.TB) float64 {
	s, err := steep.New(lot(t, "barley", 0.88, 0.12))
	require.NoError(t, err)
	days, before := 0.0, 0.0
	for h := range 72 {
		require.NoError(t, s.Soak(300, steep.Water{T: 20, Aerated: true}))
		require.NoError(t, s.Rest(3300, steep.Air{T: 20, RH: 1}))
		if day := float64(h+1) / 24; (h+1)%24 == 0 {
			days += (s.Batch().Chitted - before) * day
			before = s.Batch().Chitted
		}
	}
	return 10 * before / days
}
