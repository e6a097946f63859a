package kiln_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/air"
	"maltwright/sim/drying"
	"maltwright/sim/kiln"
)

// roaster is a drum of 20 l with a heater of 2 kW and a small vent; pale 4 kg of finished malt in it, at 4 %.
var (
	roaster = kiln.Equipment{Airflow: 2.0 / 3600, Heater: new(2000.0), ReachLow: new(60.0), ReachHigh: new(230.0)}
	pale    = kiln.Charge{DryMass: 3.84, Moisture: dry(0.04), Temperature: 20}
	green   = kiln.Charge{DryMass: 2.4, Moisture: dry(0.45), Temperature: 15}
)

// tumbled puts a charge that lies at 500 kg/m³ into a drum of so many litres.
func tumbled(t require.TestingT, charge kiln.Charge, kit kiln.Equipment, litres float64) *kiln.Bed {
	malt := charge.DryMass * (1 + charge.Moisture) / 500
	kit = kit.In(kiln.Drum{Volume: litres / 1000, Malt: malt})
	charge.Depth = new(malt / kit.Area)
	b, err := kiln.New(charge, kit, spring, drying.Malt{})
	require.NoError(t, err)
	return b
}

// A cylinder as long as it is wide, half full: half of its round and of both ends.
func TestMaltLiesAgainstHalfOfAHalfFullDrum(t *testing.T) {
	d := kiln.Drum{Volume: math.Pi / 4, Malt: math.Pi / 8}
	assert.InDelta(t, math.Pi/2+math.Pi/4, kiln.Equipment{}.In(d).Area, 1e-9)
	assert.InDelta(t, 0.5, d.Share(), 1e-12)
	d.Malt *= 2
	assert.InDelta(t, 1.5*math.Pi, kiln.Equipment{}.In(d).Area, 1e-3)
}

func TestMoreMaltInADrumLiesAgainstMoreOfIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		volume, share := rapid.Float64Range(1e-3, 100).Draw(t, "volume"), rapid.Float64Range(0.01, 0.98).Draw(t, "share")
		less, more := kiln.Equipment{}.In(kiln.Drum{Volume: volume, Malt: share * volume}), kiln.Equipment{}.In(kiln.Drum{Volume: volume, Malt: (share + 0.01) * volume})
		assert.Greater(t, more.Area, less.Area)
	})
}

// First law: what the malt gains is what the heater gave but for what the vent carried off, and
// a drum of 2 kW warms 4 kg of malt to 175 °C within the hour.
func TestDrumBringsMaltToTheRoastAndHoldsItThere(t *testing.T) {
	b := tumbled(t, pale, roaster, 20)
	hours := until(t, b, kiln.Hold(kiln.Malt, 175), 60, func(v kiln.View) bool { return v.MaltT > 174 })
	assert.Greater(t, hours, 3.84*1350*155/2000/3600, "no faster than its heater")
	assert.Less(t, hours, 1.0)
	v := run(t, b, 0.5, kiln.Hold(kiln.Malt, 175))
	assert.InDelta(t, 175, v.MaltT, 0.2)
	assert.Less(t, v.WetBasis, 0.02)
	assert.Len(t, b.Layers(nil), 1)
	w := b.Balance()
	gained := 3.84 * ((1300+4187*v.X)*v.MaltT - (1300+4187*dry(0.04))*20)
	assert.InEpsilon(t, gained, w.Warmed, 1e-6)
	assert.Greater(t, w.Heater, w.Warmed+w.Evaporated)
	assert.InEpsilon(t, w.Heater, w.Warmed+w.Evaporated+w.Exhaust+w.Shed, 1e-9)
}

// Bone-dry malt in a drum that stands at 150 °C warms as one lump does: T = 150 − 130·exp(−t/τ), τ = m·c/(U·A), U the
// contact and what the vent's air gives up on the way, g·c_p·n/(1 + n). Bone-dry air takes and brings no water.
func TestDryMaltWarmsInADrumAsALumpDoes(t *testing.T) {
	malt := kiln.Drum{Volume: 0.02, Malt: 4.0 / 500}
	kit := kiln.Equipment{Airflow: 6.0 / 3600}.In(malt)
	charge := kiln.Charge{DryMass: 4, Temperature: 20, Depth: new(malt.Malt / kit.Area)}
	b, err := kiln.New(charge, kit, kiln.Ambient{T: 20}, drying.Malt{})
	require.NoError(t, err)
	p := drying.Malt{}.Packing()
	g := kit.Airflow / kit.Area / (air.State{T: 150, P: air.StandardPressure}).Volume()
	n := 0.05 * p.Surface * *charge.Depth * p.Falling(1) / (g * 1006)
	tau := 4 * 1300 / (kit.Area * (75 + g*1006*n/(1+n)))
	for _, share := range []float64{0.5, 1, 2} {
		v := b.Clone()
		_, err := v.Advance(share*tau, kiln.Hold(kiln.AirOn, 150))
		require.NoError(t, err)
		assert.InDelta(t, 150-130*math.Exp(-share), v.View().MaltT, 0.3, "%g τ", share)
	}
}

// A bare shell gives its heat to the room while it is heated too: 0.41 m² of 20 l at 175 °C in a room of 15 °C
// take 11·0.41·160 W, about 0.7 kW, and a heater of 500 W never roasts in it.
func TestShellOfAHeatedDrumLosesHeatToTheRoom(t *testing.T) {
	b := tumbled(t, pale, roaster, 20)
	run(t, b, 1.5, kiln.Hold(kiln.Malt, 175))
	before, on := b.Balance(), b.View().On.T
	b, hour := b.Clone(), 1.0
	run(t, b, hour, kiln.Hold(kiln.Malt, 175))
	w := math.Cbrt(4 / math.Pi * 0.02)
	assert.InEpsilon(t, 11*1.5*math.Pi*w*w*(on-spring.T)*3600*hour, b.Balance().Shed-before.Shed, 0.02)
	assert.Less(t, b.View().Ledger.KilnError(), 1e-9)

	weak := roaster
	weak.Heater = new(500.0)
	v := run(t, tumbled(t, pale, weak, 20), 12, kiln.Hold(kiln.Malt, 175))
	assert.Equal(t, kiln.ByHeater, v.Limit)
	assert.Less(t, v.MaltT, spring.T+500/(11*1.5*math.Pi*w*w), "no hotter than where the shell sheds all")
	assert.Greater(t, v.MaltT, 80.0)
}

func TestWeakHeaterLimitsADrum(t *testing.T) {
	kit := roaster
	kit.Heater = new(150.0)
	v := run(t, tumbled(t, pale, kit, 20), 0.5, kiln.Hold(kiln.Malt, 175))
	assert.Equal(t, kiln.ByHeater, v.Limit)
	assert.InDelta(t, 150, v.HeaterPower, 0.1)
}

func TestDrumStopsAtItsReach(t *testing.T) {
	v := run(t, tumbled(t, pale, roaster, 20), 2, kiln.Hold(kiln.Malt, 250))
	assert.Equal(t, kiln.ByReachHigh, v.Limit)
	assert.InDelta(t, 230, v.On.T, 0.01)
	assert.Less(t, v.MaltT, 230.0)
	assert.Greater(t, v.MaltT, 220.0)
}

// With the flaps shut the stew keeps its water, and what dries afterwards is bounded by the heat:
// evaporation takes 2.4 MJ/kg and more, and the shell gives no more than 75 W/(m² K).
func TestDrumHoldsTheWaterOfAStewAndDriesByItsHeat(t *testing.T) {
	b := tumbled(t, green, roaster, 20)
	shut := 0.98
	set := kiln.Hold(kiln.Malt, 68)
	set.Recirculation = &shut
	v := run(t, b, 1.5, set)
	assert.InDelta(t, 68, v.MaltT, 0.5)
	assert.Greater(t, v.WetBasis, 0.43)
	water := v.Ledger.WaterInMalt
	hours := until(t, b, kiln.Hold(kiln.AirOn, 130), 300, moistureAtMost(0.06))
	left := b.View().Ledger.WaterInMalt
	assert.Greater(t, hours*3600*75*0.25*70, 2.26e6*(water-left), "no faster than by its heat")
	assert.Less(t, hours, 6.0)
}

func TestDrumCoolsThroughItsShellAndQuenchedAtOnce(t *testing.T) {
	b := tumbled(t, pale, roaster, 20)
	run(t, b, 1, kiln.Hold(kiln.Malt, 175))
	wet := b.Clone()
	hours := until(t, b, still, 60, func(v kiln.View) bool { return v.MaltT <= 30 })
	assert.Greater(t, hours, 0.3)
	assert.Less(t, hours, 3.0)
	assert.Positive(t, b.Balance().Shed)
	_, err := wet.Quench(0.1, 15)
	require.NoError(t, err)
	sooner := until(t, wet, still, 60, func(v kiln.View) bool { return v.MaltT <= 30 })
	assert.Less(t, sooner, hours-0.1)
	assert.Less(t, wet.View().Ledger.KilnError(), 1e-9)
}

// Heat balance by hand: malt of 4 kg dry at 170 °C and next to no water gives 4·1.3·70 = 364 kJ
// down to 100 °C. A litre of water of 15 °C takes 2.62 MJ as steam of 100 °C (2.26 from the boil on): 0.139 l boil
// off; 50 ml cool the malt by 25 K.
func TestQuenchByHand(t *testing.T) {
	hot := func() *kiln.Bed {
		return tumbled(t, kiln.Charge{DryMass: 4, Moisture: 0, Temperature: 170}, roaster, 20)
	}
	little, err := hot().Quench(0.05, 15)
	require.NoError(t, err)
	assert.InDelta(t, 0.05, little.Steam, 1e-9)
	assert.InDelta(t, 170-0.05*2.624e6/5200, little.After, 0.1)
	assert.InDelta(t, 0.05*1.7, little.Volume, 0.002, "1.7 m³ for each litre")

	b := hot()
	much, err := b.Quench(1, 15)
	require.NoError(t, err)
	wetting, _ := drying.Malt{}.Wetting(0)
	assert.InDelta(t, 0.139, much.Steam, 0.139*wetting*4/364e3+0.005, "and what wetting sets free")
	assert.InDelta(t, (1-much.Steam)/(5-much.Steam), much.Moisture, 1e-9)
	assert.Less(t, much.After, 100.1)
	v := b.View()
	assert.Less(t, v.Ledger.WaterError(), 1e-9)
	assert.Less(t, v.Ledger.HeatError(), 1e-9)
	assert.Less(t, v.Ledger.KilnError(), 1e-9)

	flood, err := hot().Quench(5, 15) // poured a little at a time: the first of it boils off all the same
	require.NoError(t, err)
	assert.InDelta(t, 0.139, flood.Steam, 1e-3)
	assert.InDelta(t, (5-flood.Steam)/(9-flood.Steam), flood.Moisture, 1e-9)
	assert.Less(t, flood.After, 60.0)

	cold := tumbled(t, kiln.Charge{DryMass: 4, Moisture: 0.04, Temperature: 60}, roaster, 20)
	none, err := cold.Quench(0.2, 15)
	require.NoError(t, err)
	assert.Zero(t, none.Steam)
	_, err = cold.Quench(7, 15)
	assert.ErrorContains(t, err, "water poured on the malt, for each kg of its dry matter 1.75 kg is outside 0 to 1.5 kg")
}

func TestAnyDrumUnderAnySettingRunsWithItsBalancesClosed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		litres := math.Pow(10, in("lg litres", 0, 4))
		share := in("share", 0.02, 1.2)
		x := in("moisture", 0, 1.2)
		charge := kiln.Charge{DryMass: litres * share * 0.5 / (1 + x), Moisture: x, Temperature: in("malt", 0, 120)}
		kit := kiln.Equipment{Airflow: litres / 20 * math.Pow(10, in("lg m3/h", -1, 1.5)) / 3600, ReachHigh: new(in("reach", 60, 300))}
		if rapid.Bool().Draw(t, "heater stated") {
			kit.Heater = new(litres * math.Pow(10, in("lg heater", 0, 2.5)))
		}
		if rapid.Bool().Draw(t, "returns") {
			kit.Recirculation = in("recirculation", 0, 0.98)
		}
		bed := tumbled(t, charge, kit, litres)
		for range 5 {
			if rapid.IntRange(0, 4).Draw(t, "quench") == 0 {
				q, err := bed.Quench(charge.DryMass*in("water", 0, 0.2), in("water t", 0, 30))
				require.NoError(t, err)
				require.LessOrEqual(t, q.Steam, q.Water*(1+1e-12))
				require.GreaterOrEqual(t, q.Steam, 0.0)
				switch {
				case q.Steam >= q.Water*(1-1e-9) && q.Steam > 0: // all of it boiled off
					require.GreaterOrEqual(t, q.After, q.Boils-1e-3)
				case q.Steam > 0: // what is left has cooled it to less
					require.LessOrEqual(t, q.After, q.Boils+1e-3)
				}
			}
			set := kiln.Setting{Target: kiln.Target(rapid.IntRange(int(kiln.AirOn), int(kiln.Fresh)).Draw(t, "target")), From: in("from", 0, 300), To: in("to", 0, 300)}
			_, err := bed.Advance(600, set)
			require.NoError(t, err)
			v := bed.View()
			require.True(t, finite(v), "%+v", v)
			require.Less(t, v.Ledger.WaterError(), 1e-9)
			require.Less(t, v.Ledger.HeatError(), 1e-9)
			require.Less(t, v.Ledger.KilnError(), 1e-9)
			require.GreaterOrEqual(t, v.Driest, -1e-9)
		}
	})
}

// Walls that are said of a drum are its shell, and stand in place of the bare one: hot malt gives its heat to them, they
// give it to the air and the room, and nothing is led off beside. Bone-dry malt cools through them as a lump does,
// m·c/(U·A) with the contact of the malt, and behind it in parallel the walls, h·λ/d as they let heat through, and
// the vent.
func TestWallsOfADrumStandInPlaceOfItsShell(t *testing.T) {
	charge := kiln.Charge{DryMass: 4, Moisture: 1e-4, Temperature: 175}
	cool := func(walls *kiln.Walls) *kiln.Bed {
		kit := roaster
		kit.Walls = walls
		b := tumbled(t, charge, kit, 20)
		run(t, b, 1, kiln.Setting{Target: kiln.Fresh})
		assert.Less(t, b.View().Ledger.KilnError(), 1e-9)
		assert.Less(t, b.View().Ledger.HeatError(), 1e-9)
		assert.InDelta(t, 0, b.Balance().Heater, 1e-6)
		return b
	}
	shell := kiln.Drum{Volume: 0.02}.Shell()
	metal, wool := &kiln.Walls{Of: kiln.Metal, Area: shell}, &kiln.Walls{Of: kiln.Metal, Area: shell, Insulated: true}
	bare, thin, thick := cool(nil), cool(metal), cool(wool)
	assert.Greater(t, bare.Balance().Shed, 1e5)
	assert.Less(t, bare.View().MaltT, thin.View().MaltT, "a film on each side")
	assert.Less(t, thin.View().MaltT, thick.View().MaltT-10)
	for walls, b := range map[*kiln.Walls]*kiln.Bed{metal: thin, wool: thick} {
		w := b.Balance()
		assert.InDelta(t, 0, w.Shed, 1e-3*w.WallLoss)
		assert.Greater(t, w.WallLoss, 0.0)
		from := b.View().MaltT
		v := run(t, b, 0.5, kiln.Setting{Target: kiln.Fresh})
		kit := roaster.In(kiln.Drum{Volume: 0.02, Malt: 4 * (1 + 1e-4) / 500})
		vent := roaster.Airflow * 353 / (273 + (from+v.MaltT)/2) * 1006
		sides := 1 / (1/(75*kit.Area) + 1/(walls.Passes()*shell+vent))
		warm := 0.5 // of a thin sheet between two like films; behind wool it is nearly as warm as the air, and the wool half as warm
		if walls.Insulated {
			warm = (0.91*3510 + 0.46*2575) / 6085
		}
		holds := 4*1350 + warm*walls.Holds()*shell
		hand := spring.T + (from-spring.T)*math.Exp(-1800*sides/holds)
		t.Logf("%.1f °C, by hand %.1f", v.MaltT, hand)
		assert.InDelta(t, hand, v.MaltT, 0.06*(from-v.MaltT)+0.5)
	}
}
