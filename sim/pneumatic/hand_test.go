package pneumatic_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
	"maltwright/sim/grain"
	"maltwright/sim/pneumatic"
)

// settled is a tonne, turned every twelve hours, at the end of the third day.
func settled(t testing.TB, s pneumatic.Supply) pneumatic.Bed {
	b := tonne(t)
	keep(t, &b, 3*day, 12*hour, s)
	return b
}

// By hand: saturated air of 12 to 18 °C takes 0.88–0.96 W/K for each m³/h, so that
// ΔT ≈ 1,060·q/V K, q in kW, V in m³/h. The bed warms or dries a little as well.
func TestSettledDifferenceIsHeatOverAir(t *testing.T) {
	for _, flow := range []float64{300, 500, 700} {
		s := blown(flow, 13, 1)
		b := settled(t, s)
		d := b.Draught()
		byHand := 1060 * d.Heat / 1000 / flow
		assert.InEpsilon(t, byHand, d.Off.T-d.On.T, 0.08, "%g m³/h", flow)
		assert.InDelta(t, 1, d.Off.RH(), 0.003, "the air leaves saturated")
	}
}

// By hand: of the heat that saturated air takes between 12 and 18 °C, 59–62 % is
// latent. Air-on of 98 % takes some water more: 181 kg for 693 MJ, 65 %.
func TestMostOfTheHeatGoesAsVapour(t *testing.T) {
	for rh, share := range map[float64]float64{1: 0.61, 0.98: 0.65} {
		s := blown(500, 13, rh)
		b := settled(t, s)
		d := b.Draught()
		vaporising := air.VapourEnthalpy(d.Off.T) - air.WaterHeat*d.Off.T
		latent := (d.Off.W - d.On.W) * vaporising / (d.Off.Enthalpy() - d.On.Enthalpy())
		assert.InDelta(t, share, latent, 0.02, "%g", rh)
	}
}

// The bottom stands at the wet bulb of the air-on, and dries there; by hand 0.19 g
// for each kg of dry air at 13 °C and 95 %, 0.04 g at 99 %.
func TestTheBottomStandsAtTheWetBulb(t *testing.T) {
	batch := cast(t, 0.45)
	for rh, grams := range map[float64]float64{0.95: 0.19, 0.99: 0.04} {
		b := bed(t, batch, pneumatic.Vessel{Area: metre(batch, 1), Layers: 40}, 13)
		s := blown(500, 13, rh)
		keep(t, &b, day, 0, s)
		on := b.Draught().On
		bulb, err := on.WetBulb()
		require.NoError(t, err)
		saturated, err := air.FromRH(bulb, 1, on.P)
		require.NoError(t, err)
		assert.InDelta(t, bulb, b.Layers(nil)[0].T, 0.08)
		assert.InDelta(t, grams, 1000*(saturated.W-on.W), 0.005)
	}
}

// By hand: the front passes a bed in C/(G·dh/dT), some 2.5 h at 500 m³/h·t, and in
// inverse proportion to the flow. Half way through it the top falls fastest.
func TestAFrontPassesAsHandReckonsIt(t *testing.T) {
	for _, flow := range []float64{300, 500, 700} {
		batch := cast(t, 0.45)
		batch.Lot.RespirationFactor, batch.Clock, batch.Chitted = 0.2, 0, 0 // they hardly breathe
		b := bed(t, batch, pneumatic.Vessel{Area: metre(batch, 1), Layers: 40}, 16)
		s := blown(flow, 13, 1)
		on, off := state(t, 13), state(t, 16)
		g := s.Flow / on.Volume()
		capacity := 1300*batch.Dry + air.WaterHeat*batch.Water
		byHand := capacity * 3 / (g * (off.Enthalpy() - on.Enthalpy()))
		top := b.Layers(nil)[39].T
		for mid := (top + 13) / 2; b.At(1).T > mid; {
			require.NoError(t, b.Advance(60, s))
		}
		assert.InEpsilon(t, byHand, b.Age(), 0.06, "%g m³/h", flow)
	}
}

// state is saturated air of t °C.
func state(t testing.TB, at float64) air.State {
	s, err := air.FromRH(at, 1, air.StandardPressure)
	require.NoError(t, err)
	return s
}

func TestDepthAtTheSameAirChangesNothing(t *testing.T) {
	batch := cast(t, 0.45)
	var ends [2]pneumatic.Bed
	for i, depth := range []float64{1, 0.5} {
		ends[i] = bed(t, batch, pneumatic.Vessel{Area: metre(batch, depth)}, 15)
		keep(t, &ends[i], 3*day, 12*hour, blown(500, 13, 0.98))
	}
	for _, at := range []float64{0, 0.5, 1} {
		assert.InDelta(t, ends[0].At(at).T, ends[1].At(at).T, 0.01)
	}
	assert.InDelta(t, ends[0].Moisture(), ends[1].Moisture(), 1e-5)
}

// A drum is one mixed layer: all of it stands where the top of a box does.
func TestADrumStandsAtAirOnAndTheWholeDifference(t *testing.T) {
	batch := cast(t, 0.45)
	s := blown(500, 13, 1)
	drum := bed(t, batch, pneumatic.Vessel{Area: metre(batch, 1), Mixed: true}, 15)
	keep(t, &drum, 3*day, 0, s)
	d := drum.Draught()
	assert.InDelta(t, d.Off.T, drum.T(), 0.02)
	assert.InEpsilon(t, 1060*d.Heat/1000/500, drum.T()-13, 0.08)
	assert.Len(t, drum.Layers(nil), 1)
}

// Leading air round changes what cold it takes and the carbon dioxide; never the
// difference across the bed nor what it loses of water.
func TestLeadingAirRoundChangesTheColdAndNotTheBed(t *testing.T) {
	fresh, round := blown(500, 13, 0.98), blown(500, 13, 0.98)
	round.Return = 0.8
	a, b := settled(t, fresh), settled(t, round)
	assert.InDelta(t, a.Warmest(), b.Warmest(), 1e-6)
	assert.InDelta(t, a.Moisture(), b.Moisture(), 1e-9)
	assert.InEpsilon(t, 5*a.Draught().CO2, b.Draught().CO2, 1e-6)
	assert.Greater(t, b.Plant().Cooler, 1.5*a.Plant().Cooler, "the exhaust is warmer than the hall")
	// derived by hand: 0.181·q/V, q in kW, V in m³/h
	d := a.Draught()
	assert.InEpsilon(t, 0.181*d.Heat/1000/500, d.CO2, 0.01)
}

// By hand: the cold of air led round is G·(h_mix − h_on).
func TestColdOfAirLedRound(t *testing.T) {
	s := blown(500, 13, 0.98)
	s.Return = 0.5
	b := settled(t, s)
	before, d := b.Plant(), b.Draught()
	require.NoError(t, b.Advance(600, s))
	room, err := air.FromRH(14, 0.95, air.StandardPressure)
	require.NoError(t, err)
	byHand := s.Flow / d.On.Volume() * (0.5*room.Enthalpy() + 0.5*d.Off.Enthalpy() - d.On.Enthalpy())
	assert.InEpsilon(t, byHand, (b.Plant().Cooler-before.Cooler)/600, 0.02)
}

// Without air the bed warms by q/C, as long as its pores hold oxygen.
func TestABedWithoutAirWarmsByItsHeat(t *testing.T) {
	b := settled(t, blown(500, 13, 0.98))
	b.Turn()
	batch, before := b.Batch(), b
	const dt = 600
	require.NoError(t, b.Advance(dt, pneumatic.Supply{Room: hall(), T: 13}))
	q := grain.StarchHeat * (b.Ledger().Burnt - before.Ledger().Burnt) / dt
	byHand := q * hour / (1300*batch.Dry + air.WaterHeat*batch.Water)
	assert.InDelta(t, byHand, (b.At(0.5).T-before.At(0.5).T)*hour/dt, 0.05)
	assert.InDelta(t, 1.9, byHand, 0.35, "some two kelvin an hour at the peak")
}

func ExampleBed_Advance() {
	profile, _ := grain.Of("barley")
	batch, _ := grain.NewBatch(grain.LotOf(profile, 880, 0.136))
	batch.Water, batch.Clock, batch.Chitted = 720, 177, 0.8
	b, err := pneumatic.New(batch, profile.Malt, pneumatic.Vessel{Area: 2}, 15)
	if err != nil {
		fmt.Println(err)
		return
	}
	air := pneumatic.Supply{Room: pneumatic.Room{T: 14, RH: 0.9}, Flow: 500.0 / 3600, T: 13, RH: 0.98}
	for range 6 {
		if err := b.Advance(12*3600, air); err != nil {
			fmt.Println(err)
			return
		}
		bottom, top := b.At(0), b.At(1)
		if b.Turns() == 5 {
			fmt.Printf("after three days %.0f °C below, %.0f °C above, %.0f %% moisture\n", bottom.T, top.T, 100*b.Moisture())
		}
		b.Turn()
	}
	// Output: after three days 13 °C below, 17 °C above, 43 % moisture
}

// Respiration × 0.8 gives four fifths of the difference.
func TestDifferenceFollowsRespiration(t *testing.T) {
	var differ [2]float64
	for i, factor := range []float64{1, 0.8} {
		batch := cast(t, 0.45)
		batch.Lot.RespirationFactor = factor
		b := bed(t, batch, pneumatic.Vessel{Area: metre(batch, 1)}, 15)
		s := blown(500, 13, 0.98)
		s.Follow = &pneumatic.Follow{T: 16, Least: 5, Most: 20}
		keep(t, &b, 3*day, 12*hour, s)
		require.InDelta(t, 16, b.T(), 0.02, "the mean is led")
		differ[i] = b.Warmest() - b.Coldest()
	}
	assert.InDelta(t, 0.8, differ[1]/differ[0], 0.02)
	assert.False(t, math.IsNaN(differ[0]))
}

// By hand, from the documented resistance of green malt: a bed of 1 m of a tonne has 60,
// 115, 180 Pa at 300, 500, 700 m³/h, on the 2.15 m² of barley of 650 kg/m³.
func TestResistanceOfABed(t *testing.T) {
	batch := cast(t, 0.45)
	batch.Lot.Profile.BulkDensity = 650
	b := bed(t, batch, pneumatic.Vessel{Area: metre(batch, 1)}, 15)
	for flow, want := range map[float64]float64{300: 60, 500: 115, 700: 180} {
		pa, err := b.Resistance(flow / hour)
		require.NoError(t, err)
		assert.InEpsilon(t, want, pa, 0.05, "%g m³/h", flow)
	}
	still, err := b.Resistance(0)
	require.NoError(t, err)
	assert.Zero(t, still)
}
