package forecast

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/sim/grain"
)

const day = 24 * hour

// boxed is a process with a tonne in a box a metre deep, of which the growing is given.
// The plant makes any air.
func boxed(t testing.TB, box, growing string) *model.Process {
	t.Helper()
	return load(t, fmt.Sprintf(`grain "lot" { species barley; moisture 12 %%; kernel-weight 45 g; germination 97 %% of 100 kernels; treated no }
site "hall" { air 14 °C; humidity 95 %%; water 12 °C; altitude 0 m }
vessel "tank" { holds 3000 l }
floor "box" { area %s }
kiln "kiln" { area 4 m2; airflow 4500 m3/h; heater 110 kW; draught fan }
process "tonne" {
  make pale malt
  from 1 t of "lot"
  at "hall"
  steep in "tank" { soak 6 h in water at 14 °C; rest 8 h in air at 14 °C; soak 8 h in water at 14 °C }
  germinate on "box" { %s }
  kiln in "kiln" { dry at air-on 55 °C for 20 h }
}
`, box, growing))
}

// cast is a tonne of raw barley at 12 %, steeped to a moisture, wet basis, with 80 % of
// the kernels due to chit chitted.
func cast(t testing.TB, w float64) grain.Batch {
	t.Helper()
	profile, err := grain.Of("barley")
	require.NoError(t, err)
	b, err := grain.NewBatch(grain.LotOf(profile, 880, 0.12/0.88))
	require.NoError(t, err)
	b.Water = 880 * w / (1 - w)
	b.Clock = profile.Chit * math.Exp(profile.ChitSpread*0.8416)
	b.Chitted = profile.Due(b.Clock) * b.Lot.Germination
	return b
}

// grownIn forecasts the growing alone, of a batch that is cast at 15 °C.
func grownIn(t testing.TB, p *model.Process, b grain.Batch, c *Course) *Forecast {
	t.Helper()
	r := &run{p: p, o: Options{Course: c}, f: &Forecast{Process: p}, effort: effortOf(nil)}
	require.NoError(t, r.begin())
	r.batch, r.t = b, 15
	r.f.Stages = []Stage{{Kind: model.GerminateStage}}
	require.NoError(t, r.germinate(model.First[*model.Germination](p)))
	return r.f
}

const anyAir = "2.19 m2; airflow 700 m3/h; heater 100 kW; cooler 100 kW"

// Independent calculation, per tonne, cast at 45 %, turned every 12 h, ± 0.5 K: bottom,
// middle and top of 500 m³/h at 13 °C and 98 %, at the end of days 1, 3 and 5.
func TestABoxStandsWhereAnIndependentCalculationHasIt(t *testing.T) {
	p := boxed(t, anyAir, "air at air-on 13 °C with airflow 500 m3/h; humidity air-on 98 %; turn every 12 h; for 5 days")
	looks := []float64{day - 60, 3*day - 60, 5*day - 60}
	f := grownIn(t, p, cast(t, 0.45), &Course{Looks: looks})
	require.Len(t, f.Seen, 3)
	for i, want := range [][3]float64{{12.9, 14.2, 15.3}, {13.0, 15.1, 17.2}, {13.0, 14.5, 16.0}} {
		s := f.Seen[i]
		got := [3]float64{s.Bottom, s.Bed, s.Top}
		for k := range want {
			assert.InDelta(t, want[k], got[k], 0.5, "day %d, place %d", 2*i+1, k)
		}
		assert.InDelta(t, 13, s.AirOn, 1e-6)
		assert.InDelta(t, 500, s.Airflow*hour, 1e-6)
		assert.InDelta(t, 0.98, s.Humidity, 1e-3)
	}
}

// The same: what it burns, evaporates and gives off, ± 10 %; its end ± 0.5 points.
func TestABoxLosesWhatAnIndependentCalculationHas(t *testing.T) {
	p := boxed(t, anyAir, "air at air-on 13 °C with airflow 500 m3/h; humidity air-on 98 %; turn every 12 h; for 5 days")
	b := cast(t, 0.45)
	f := grownIn(t, p, b, nil)
	piece := f.Pieces[0]
	blown := piece.Blown
	require.NotNil(t, blown)
	end := f.Stages[0].Steps[0]
	assert.InEpsilon(t, 693e6, blown.Growing, 0.1)
	assert.InEpsilon(t, 65, f.Totals.CO2-b.CO2(), 0.1)
	assert.InEpsilon(t, 0.0008, blown.CO2, 0.1)
	assert.InDelta(t, 0.400, end.MoistureEnd, 0.005)
	evaporated := b.Water + grain.StarchWater*blown.Growing/grain.StarchHeat - (end.WeightEnd - (b.Dry - blown.Growing/grain.StarchHeat))
	assert.InEpsilon(t, 181, evaporated, 0.1)
	assert.InDelta(t, 5*day, blown.Fan, 1)
}

// By hand: saturated air warms on its way by 1,060·q/V K, q in kW, V in m³/h.
func TestABoxIsUnevenByItsHeatOverItsAir(t *testing.T) {
	for _, flow := range []float64{300, 500, 700} {
		p := boxed(t, anyAir, fmt.Sprintf("air at air-on 13 °C with airflow %g m3/h; humidity air-on 100 %%; turn every 12 h; for 4 days", flow))
		u := grownIn(t, p, cast(t, 0.45), nil).Pieces[0].Blown.Uneven
		assert.InEpsilon(t, 1060*u.Heat/1000/flow, u.Difference(), 0.1, "%g m³/h", flow)
		assert.InDelta(t, 13, u.Bottom, 0.1, "%g m³/h", flow)
	}
}

// The same: 12 to 14 °C, 95 to 99 %, 300 to 700 m³/h lose 156 to 221 kg and end at 38.5 to
// 40.8 %.
func TestABoxDriesWithinItsBand(t *testing.T) {
	for _, growing := range []string{
		"air at air-on 12 °C with airflow 300 m3/h; humidity air-on 99 %", "air at air-on 14 °C with airflow 700 m3/h; humidity air-on 95 %",
		"air at air-on 12 °C with airflow 700 m3/h; humidity air-on 95 %", "air at air-on 14 °C with airflow 300 m3/h; humidity air-on 99 %",
	} {
		f := grownIn(t, boxed(t, anyAir, growing+"; turn every 12 h; for 5 days"), cast(t, 0.45), nil)
		end := f.Stages[0].Steps[0].MoistureEnd
		assert.Greater(t, end, 0.385-0.002, growing)
		assert.Less(t, end, 0.408+0.002, growing)
	}
}

// The same: 50 kg sprinkled on each of three days end at 45.4 instead of 39.4 %, 60 kg in
// all at 41.9 %, ± 0.5.
func TestWhatIsSprinkledStaysInTheBed(t *testing.T) {
	for sprinkle, want := range map[string]float64{"": 0.394, "sprinkle 50 l/t every 35 h": 0.454, "sprinkle 0.015 l/kg every 29 h": 0.419} {
		f := grownIn(t, boxed(t, anyAir, "hold bed at 16 °C; "+sprinkle+"; turn every 12 h; for 5 days"), cast(t, 0.45), nil)
		assert.InDelta(t, want, f.Stages[0].Steps[0].MoistureEnd, 0.005, sprinkle)
	}
}

// The same: the mean held at 16 °C by the air-on stands at 7.2, 4.4 and 3.1 K on day 3 at
// 300, 500 and 700 m³/h, with air-on of 12.3, 13.8 and 14.5 °C.
func TestABandIsHeldByTheAirOn(t *testing.T) {
	for flow, want := range map[int][2]float64{300: {7.2, 12.3}, 500: {4.4, 13.8}, 700: {3.1, 14.5}} {
		box := fmt.Sprintf("2.19 m2; airflow %d m3/h; heater 100 kW; cooler 100 kW", flow)
		f := grownIn(t, boxed(t, box, "hold bed at 15 to 17 °C; turn every 12 h; for 5 days"), cast(t, 0.45), &Course{Looks: []float64{3*day - 60}})
		s := f.Seen[0]
		assert.InEpsilon(t, want[0], s.Top-s.Bottom, 0.1, "%d m³/h", flow)
		assert.InDelta(t, want[1], s.AirOn, 0.5, "%d m³/h", flow)
	}
}
