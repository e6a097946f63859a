package kiln_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	drives "maltwright/sim/draught"
	"maltwright/sim/kiln"
)

// floored is the kiln of a small house: 10 m², a tonne of green malt under 6000 m³/h, 120 kW.
var (
	floored = kiln.Equipment{Area: 10, Airflow: 6000.0 / 3600, Heater: new(120e3)}
	greens  = kiln.Charge{DryMass: 550, Moisture: dry(0.45), Temperature: 15, BulkDensity: 550}
)

// A cabinet of ten trays has about half to all of their area in walls (common practice): ten of 70 by 70 cm stand a good
// metre high, 4 · 0.7 · 1.05 + 0.5 = 3.4 m², where a room around 4.9 m² in one floor has 34.
func TestACabinetStandsAroundAStackOfTrays(t *testing.T) {
	area, height := kiln.CabinetAround(4.9)
	assert.InEpsilon(t, 3.4, area, 0.1)
	assert.InDelta(t, 1.05, height, 0.1)
	around, _ := kiln.WallsAround(4.9)
	assert.Greater(t, around, 30.0)
	one, _ := kiln.WallsAround(0.17)
	got, _ := kiln.CabinetAround(0.17)
	assert.Equal(t, one, got, "a tray alone is no stack")
	last := 0.0
	for _, trays := range []float64{0.05, 0.2, 0.21, 0.3, 0.5, 1, 2, 5, 20} {
		area, height := kiln.CabinetAround(trays)
		around, _ := kiln.WallsAround(trays)
		assert.GreaterOrEqual(t, area, last)
		assert.LessOrEqual(t, area, around)
		assert.Less(t, height, 2.5)
		last = area
	}
}

func within(of kiln.Fabric, insulated bool) *kiln.Walls {
	area, _ := kiln.WallsAround(10)
	return &kiln.Walls{Of: of, Area: area, Insulated: insulated}
}

// reaches gives the hours until air-on is what was asked for.
func reaches(t *testing.T, kit kiln.Equipment, asked float64) float64 {
	b := bed(t, greens, kit, spring)
	return until(t, b, kiln.Hold(kiln.AirOn, asked), 60, func(v kiln.View) bool { return v.On.T >= asked-1e-3 })
}

// A cold kiln of brick warms late, one of insulated sheet at once. What is left of the heater beside the
// air, over the lower half of the walls, falls short of what cold brick takes at first,
// h·ΔT, until its flux h·ΔT·exp(H²at)·erfc(H√(at)) has come down to it [carslaw-jaeger-1959].
func TestColdBrickWarmsLateAndInsulatedSheetAtOnce(t *testing.T) {
	strong := floored
	strong.Heater = nil
	air := run(t, bed(t, greens, strong, spring), 1, kiln.Hold(kiln.AirOn, 65)).HeaterPower
	for _, spare := range []float64{3e3, 5e3, 7e3} {
		weak := floored
		weak.Heater = new(air + spare)
		weak.Walls = within(kiln.Brick, false)
		share := spare / (weak.Walls.Area / 2 / 0.13 * 50)
		low, high := 0.0, 10.0 // H√(at)
		for range 60 {
			if mid := (low + high) / 2; math.Exp(mid*mid)*math.Erfc(mid) > share {
				low = mid
			} else {
				high = mid
			}
		}
		root := low * 0.13 * 0.72
		want := root * root / (0.72 / (1920 * 835)) / 3600
		got := reaches(t, weak, 65)
		t.Logf("%.0f of %.0f kW: brick after %.2f h, by hand %.2f", *weak.Heater/1e3, air/1e3, got, want)
		assert.InEpsilon(t, want, got, 0.15, "colder air warms the brick a little more slowly until then")
		weak.Walls = within(kiln.Metal, true)
		assert.Less(t, reaches(t, weak, 65), 0.3)
		weak.Walls = nil
		assert.Less(t, reaches(t, weak, 65), 0.05)
	}
}

// The ledger closes with the walls, whatever they are and whatever is asked, and what they hold and
// lose is of the size that a sum on paper gives.
func TestBalancesCloseWithWalls(t *testing.T) {
	for _, of := range []kiln.Fabric{kiln.Brick, kiln.Metal, kiln.Wood, kiln.Stone} {
		for _, insulated := range []bool{false, true} {
			for _, way := range []*drives.Way{nil, {Above: 8, Opening: 0.5}, {Power: new(2000.0)}} {
				returns := 0.6
				if of == kiln.Brick {
					returns = 0
				}
				kit := floored
				kit.Walls, kit.Recirculation, kit.Way = within(of, insulated), returns, way
				b := bed(t, greens, kit, spring)
				for _, set := range []kiln.Setting{kiln.Hold(kiln.AirOn, 60), kiln.Hold(kiln.Malt, 70), kiln.Hold(kiln.AirOff, 60), kiln.Hold(kiln.AirOn, 20), still} {
					for range 6 {
						_, err := b.Advance(600, set)
						require.NoError(t, err)
						l := b.View().Ledger
						require.Less(t, l.KilnError(), 1e-9)
						require.Less(t, l.HeatError(), 1e-9)
						require.Less(t, l.WaterError(), 1e-9)
						balanced(t, b, of.String())
					}
				}
				w := b.Balance()
				require.Positive(t, w.WallLoss)
				if way == nil {
					require.Less(t, w.WallHeat+w.WallLoss, 0.4*w.Heater)
				}
			}
		}
	}
}

// After a week at one heat the walls lose what their resistances let pass: 30 m² of the lower wall
// at air-on and 30 m² of the upper at air-off, which has come near it.
func TestWarmWallsLoseWhatTheirResistancesLetPass(t *testing.T) {
	kit := floored
	kit.Walls = within(kiln.Brick, false)
	b := bed(t, greens, kit, spring)
	run(t, b, 120, kiln.Hold(kiln.AirOn, 60))
	before := b.Balance()
	v := run(t, b, 10, kiln.Hold(kiln.AirOn, 60))
	after := b.Balance()
	upper := (v.Off.T + b.Leaves().T) / 2
	assert.Less(t, b.Leaves().T, v.Off.T-0.2, "the upper walls cool it")
	want := kit.Walls.Passes() * kit.Walls.Area / 2 * (60 - 15 + upper - 15)
	assert.InEpsilon(t, want*36000, after.WallLoss-before.WallLoss, 0.02)
	assert.InDelta(t, 0, after.WallHeat-before.WallHeat, 0.02*(after.WallLoss-before.WallLoss))
}

// Warm brick warms the air that is to cool the malt, and what it gives is missed from the walls.
func TestWarmBrickKeepsTheMaltWarm(t *testing.T) {
	hours := map[bool]float64{}
	for _, walled := range []bool{false, true} {
		kit := floored
		if walled {
			kit.Walls = within(kiln.Brick, false)
		}
		b := bed(t, greens, kit, spring)
		run(t, b, 30, kiln.Hold(kiln.AirOn, 80))
		held := b.Balance().WallHeat
		hours[walled] = until(t, b, still, 60, func(v kiln.View) bool { return v.MaltT <= 25 })
		v := b.View()
		if walled {
			assert.Greater(t, v.On.T, spring.T+1)
			assert.Less(t, b.Balance().WallHeat, held)
		} else {
			assert.Equal(t, spring.T, v.On.T)
		}
		assert.Zero(t, v.HeaterPower)
	}
	t.Logf("25 °C after %.2f h, between walls of brick %.2f h", hours[false], hours[true])
	assert.Greater(t, hours[true], hours[false])
}

// Asked for less than warm walls give, the kiln says so.
func TestWarmWallsBoundAirOnFromBelow(t *testing.T) {
	kit := floored
	kit.Walls = within(kiln.Stone, false)
	b := bed(t, greens, kit, spring)
	run(t, b, 30, kiln.Hold(kiln.AirOn, 80))
	v := run(t, b, 0.2, kiln.Hold(kiln.AirOn, 16))
	assert.Equal(t, kiln.ByWalls, v.Limit)
	assert.Greater(t, v.On.T, 16.0)
	assert.InDelta(t, 0, v.HeaterPower, 1e-6)
}

// Walls of next to nothing change next to nothing.
func TestWallsOfNothingAreNone(t *testing.T) {
	kit := floored
	bare := run(t, bed(t, greens, kit, spring), 12, kiln.Hold(kiln.AirOn, 60))
	kit.Walls = &kiln.Walls{Of: kiln.Metal, Area: 1e-3, Insulated: true}
	v := run(t, bed(t, greens, kit, spring), 12, kiln.Hold(kiln.AirOn, 60))
	assert.InDelta(t, bare.X, v.X, 1e-5)
	assert.InEpsilon(t, bare.Ledger.Heater, v.Ledger.Heater, 1e-4)
}

// Halved and halved again, steps change neither malt nor walls.
func TestWalledKilnDoesNotDependOnTheStep(t *testing.T) {
	for _, of := range []kiln.Fabric{kiln.Brick, kiln.Metal} {
		kit := floored
		kit.Walls = within(of, of == kiln.Metal)
		coarse, fine := course(t, greens, kit, 1200), course(t, greens, kit, 30)
		moisture, _ := apart(coarse, everyNth(fine, 1200))
		assert.Less(t, moisture, 4e-4, of)
		last, end := coarse[len(coarse)-1].Ledger, fine[len(fine)-1].Ledger
		assert.InEpsilon(t, end.WallHeat, last.WallHeat, 1e-3, of)
		assert.InEpsilon(t, end.WallLoss, last.WallLoss, 1e-3, of)
		assert.InEpsilon(t, end.Heater, last.Heater, 1e-3, of)
	}
}

// An oven's walls are all about its one air.
func TestOvenHasWallsToo(t *testing.T) {
	kit := kiln.Equipment{Area: 0.17, Airflow: kiln.StillVent, Heater: new(1500.0), Still: true}
	charge := kiln.Charge{DryMass: 1.2, Moisture: dry(0.45), Temperature: 15, BulkDensity: 550}
	bare := bed(t, charge, kit, spring)
	run(t, bare, 8, kiln.Hold(kiln.Oven, 80))
	kit.Walls = &kiln.Walls{Of: kiln.Metal, Area: 1.2, Insulated: true}
	b := bed(t, charge, kit, spring)
	v := run(t, b, 8, kiln.Hold(kiln.Oven, 80))
	require.Less(t, v.Ledger.KilnError(), 1e-9)
	want := kit.Walls.Passes() * 1.2 * 65 * 8 * 3600
	assert.InEpsilon(t, want, v.Ledger.WallLoss, 0.1, "51 W, but for the time it took to warm up")
	assert.InDelta(t, bare.View().Ledger.Heater+v.Ledger.WallLoss+v.Ledger.WallHeat, v.Ledger.Heater, 0.02*v.Ledger.Heater)
	run(t, b, 3, still)
	l := b.View().Ledger
	require.Less(t, l.KilnError(), 1e-9)
	assert.Less(t, l.WallHeat, 0.1*v.Ledger.WallHeat)
}

func TestWallsThatCannotBeAreRefused(t *testing.T) {
	kit := floored
	kit.Walls = &kiln.Walls{Of: 9, Area: 10}
	_, err := kiln.New(greens, kit, spring, malt)
	assert.EqualError(t, err, "walls of nothing that is known")
	kit.Walls = &kiln.Walls{Of: kiln.Brick, Area: 1e9}
	_, err = kiln.New(greens, kit, spring, malt)
	assert.ErrorContains(t, err, "area of the walls")
}

// The upper floor of a kiln of brick takes what the lower gives, and its walls with it.
func TestWallsOfAnUpperFloorTakePart(t *testing.T) {
	kit := floored
	kit.Walls = within(kiln.Brick, false)
	for _, returns := range []float64{0, 0.3} {
		kit.Recirculation = returns
		for _, set := range []kiln.Setting{{Target: kiln.AsComes}, kiln.Hold(kiln.AirOn, 40), kiln.Hold(kiln.AirOn, 70), kiln.Hold(kiln.AirOff, 35), still} {
			bare := kit
			bare.Walls = nil
			course := kiln.Intake{{T: 25, W: 0.018, Flow: 1.7}, {At: 7200, T: 60, W: 0.015, Flow: 1.7}}
			b, c := fed(t, greens, kit, course, false), fed(t, greens, bare, course, false)
			for range 18 {
				_, err := b.Advance(600, set)
				require.NoError(t, err)
				_, err = c.Advance(600, set)
				require.NoError(t, err)
				l := b.View().Ledger
				require.Less(t, l.KilnError(), 1e-9)
				require.Less(t, l.WaterError(), 1e-9)
				balanced(t, b, set.Target.String())
			}
			if set.Target == kiln.AsComes {
				assert.Less(t, b.View().On.T, c.View().On.T, "cold brick takes some of the warmth")
			}
		}
	}
}
