package pneumatic_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/air"
	"maltwright/sim/drying"
	"maltwright/sim/drying/invent"
	"maltwright/sim/grain"
	"maltwright/sim/pneumatic"
)

// drawBed draws a bed from a jar with a pump to a large box, growing or withered.
func drawBed(t *rapid.T, material drying.Material) (pneumatic.Bed, pneumatic.Vessel) {
	in := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	profile, err := grain.Of(rapid.SampledFrom(grain.Names()).Draw(t, "grain"))
	require.NoError(t, err)
	dry := math.Pow(10, in("lg dry", 0, 5))
	b, err := grain.NewBatch(grain.LotOf(profile, dry, 0.14))
	require.NoError(t, err)
	b.Leached, b.Respired = 0.01*dry, 0.003*dry
	b.Dry = dry - b.Leached - b.Respired
	b.Water = b.Dry * in("X", 0.2, 1)
	b.Clock = in("clock", 0, 1500)
	b.Chitted = profile.Due(b.Clock) * b.Lot.Germination
	if material == nil {
		material = profile.Malt
	}
	v := pneumatic.Vessel{
		Area: b.Lot.BedVolume(b.X(), b.Clock) / in("depth", 0.02, 2), Layers: rapid.IntRange(0, pneumatic.MostLayers).Draw(t, "layers"),
		Mixed: rapid.IntRange(0, 4).Draw(t, "drum") == 0,
	}
	p, err := pneumatic.New(b, material, v, in("T", 5, 30))
	require.NoError(t, err)
	return p, v
}

func drawSupply(t *rapid.T, area float64) pneumatic.Supply {
	in := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	is := func(name string) bool { return rapid.Bool().Draw(t, name) }
	flow := func(name string) float64 { return area * math.Pow(10, in(name, -4, 0)) }
	s := pneumatic.Supply{
		Room: pneumatic.Room{T: in("room", 0, 35), RH: in("room RH", 0.1, 1), Open: is("open"), AirSpeed: in("wind", 0, 1)},
		Flow: flow("lg speed"), T: in("air-on", 5, 30), RH: in("RH", 0.3, 1), NoSpray: is("no spray"),
	}
	if is("led round") {
		s.Return = in("return", 0, 0.98)
	}
	if is("cooler") {
		s.Cooler = new(rapid.SampledFrom([]float64{0, 1e3 * area}).Draw(t, "cold"))
	}
	if is("heater") {
		s.Heater = new(rapid.SampledFrom([]float64{0, 1e3 * area}).Draw(t, "warm"))
	}
	if is("fan heat") {
		s.Fan = pneumatic.Fan{Pressure: in("Pa", 0, 1000), Efficiency: in("efficiency", 0.3, 1)}
	}
	if is("fan power") {
		s.Fan.Power = in("W", 0, 2e3*area)
	}
	switch rapid.IntRange(0, 4).Draw(t, "run") {
	case 0:
		s.Run.Clock = &pneumatic.Clock{On: in("on", 60, 600), Every: in("every", 600, 3*hour)}
	case 1:
		s.Run.Thermostat = &pneumatic.Thermostat{Above: in("above", 12, 20), Difference: in("difference", 0.3, 2), Warmest: is("warmest")}
	case 2:
		s.Flow = 0
	}
	switch rapid.IntRange(0, 3).Draw(t, "follow") {
	case 0:
		s.Follow = &pneumatic.Follow{T: in("led to", 12, 20), Least: 8, Most: 20}
	case 1:
		least := flow("lg least")
		s.Follow = &pneumatic.Follow{T: in("led to", 12, 20), By: pneumatic.Airflow, Least: least, Most: math.Min(least*in("times", 1, 5), area)}
	}
	return s
}

func TestWaterDryMatterAndHeatBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { balances(t, nil, drying.Malt{}.DryHeat()) })
}

func TestWaterDryMatterAndHeatBalanceForAnyMaterial(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		material := invent.Material(t)
		balances(t, material, material.DryHeat())
	})
}

// balances takes a bed through stays and holds its accounts to 1e-9.
func balances(t *rapid.T, material drying.Material, dryHeat float64) {
	b, v := drawBed(t, material)
	first := b.Batch()
	for range rapid.IntRange(1, 4).Draw(t, "stays") {
		s := drawSupply(t, v.Area)
		before := b
		if err := b.Advance(rapid.Float64Range(1, 12*hour).Draw(t, "dt"), s); err != nil {
			var outside *air.RangeError
			require.True(t, errors.As(err, &outside), "%v", err)
			require.Equal(t, before, b)
			return
		}
		if rapid.Bool().Draw(t, "turn") {
			b.Turn()
		}
		if b.X() < 0.9 && rapid.Bool().Draw(t, "wet") {
			_ = b.Sprinkle(0.02*b.DryMatter(), 12)
		}
		closed(t, &b, first, dryHeat)
	}
}

func closed(t *rapid.T, b *pneumatic.Bed, first grain.Batch, dryHeat float64) {
	now, l, p := b.Batch(), b.Ledger(), b.Plant()
	require.NoError(t, now.Check())
	sum := func(of ...float64) (s, size float64) {
		for _, x := range of {
			s, size = s+x, size+math.Abs(x)
		}
		return s, size
	}
	nothing := func(what string, of ...float64) {
		s, size := sum(of...)
		require.LessOrEqual(t, math.Abs(s), 1e-9*size, what)
	}
	nothing("dry matter", now.Dry, now.Leached, now.Respired, -now.Lot.DryMass)
	nothing("burnt", now.Respired-first.Respired, -l.Burnt, first.Respired, -first.Respired)
	nothing("water", l.WaterNow, -l.WaterStart, -l.Grown, -l.Sprinkled, l.Evaporated)
	nothing("water of growth", l.Grown, -grain.StarchWater*l.Burnt)
	nothing("heat", l.HeatNow, -l.HeatStart, -l.Respired, -l.SprinkledHeat, l.Carried, l.Faces, l.Vapour)
	nothing("heat content", l.HeatNow, -(dryHeat*now.Dry+air.WaterHeat*now.Water)*b.T())
	passed := p.AirPassed * 1e-3 // kg of water: the air brings more than it takes
	nothing("water of the air", p.Vented, -l.Evaporated, l.OffFace, -p.Sprayed, p.Drained, passed, -passed)
	brought := p.AirPassed * 1e4 // J
	nothing("heat of the air", p.VentedHeat, -l.Carried, -p.Heater, p.Cooler, -p.Fan, -p.WaterHeat, brought, -brought)
}

func TestGrowthAndLossesOnlyRise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, v := drawBed(t, nil)
		for range 3 {
			before := b
			if b.Advance(rapid.Float64Range(1, 6*hour).Draw(t, "dt"), drawSupply(t, v.Area)) != nil {
				return
			}
			b.Turn()
			require.GreaterOrEqual(t, b.Clock(), before.Clock()*(1-1e-12)-1e-12)
			require.GreaterOrEqual(t, b.Chitted(), before.Chitted()*(1-1e-12)-1e-12)
			require.LessOrEqual(t, b.DryMatter(), before.DryMatter()*(1+1e-12))
			require.GreaterOrEqual(t, b.Highest(), before.Highest())
			require.LessOrEqual(t, b.Chitted(), b.Batch().Lot.Germination*(1+1e-12))
		}
	})
}

func TestATurnEvensTheBedAndKeepsWhatIsInIt(t *testing.T) {
	b := tonne(t)
	keep(t, &b, day, 0, blown(400, 12, 0.95))
	before := b
	b.Turn()
	assert.InEpsilon(t, before.Batch().Water, b.Batch().Water, 1e-12)
	assert.InEpsilon(t, before.DryMatter(), b.DryMatter(), 1e-12)
	assert.InEpsilon(t, before.Clock(), b.Clock(), 1e-12)
	assert.InEpsilon(t, before.Chitted(), b.Chitted(), 1e-12)
	assert.InEpsilon(t, before.T(), b.T(), 1e-12)
	assert.InDelta(t, b.Coldest(), b.Warmest(), 1e-9)
	assert.Greater(t, before.Warmest()-before.Coldest(), 2.0)
	assert.Zero(t, b.SinceTurn())
	assert.InDelta(t, day, b.LongestUnturned(), 1e-6)
}

func TestACopyIsABedOfItsOwn(t *testing.T) {
	b := tonne(t)
	kept, ahead := b, b
	require.NoError(t, ahead.Advance(day, blown(500, 13, 0.98)))
	ahead.Turn()
	assert.Equal(t, kept, b)
	assert.NotEqual(t, kept, ahead)
}

func TestAnythingAtAllIsRunOrRefusedButNeverPanics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		any := rapid.OneOf(rapid.Float64(), rapid.Float64Range(-2, 50), rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1)}))
		f := func(name string) float64 { return any.Draw(t, name) }
		b, v := drawBed(t, nil)
		batch := b.Batch()
		for _, field := range []*float64{&batch.Water, &batch.Dry, &batch.Clock, &batch.Chitted, &batch.Lot.DryMass, &batch.Lot.Germination} {
			if rapid.IntRange(0, 5).Draw(t, "spoil") == 0 {
				*field = f("field")
			}
		}
		if made, err := pneumatic.New(batch, batch.Lot.Profile.Malt, pneumatic.Vessel{Area: f("area"), Layers: rapid.Int().Draw(t, "layers")}, f("T")); err == nil {
			b = made
		}
		s := drawSupply(t, v.Area)
		for _, field := range []*float64{&s.Flow, &s.T, &s.RH, &s.Return, &s.Room.T, &s.Room.RH, &s.Fan.Pressure, &s.Fan.Efficiency, &s.Fan.Power} {
			if rapid.IntRange(0, 8).Draw(t, "spoil") == 0 {
				*field = f("field")
			}
		}
		if rapid.Bool().Draw(t, "odd") {
			s.Room.Pressure, s.Cooler = new(f("pressure")), new(f("cooler"))
			s.Follow = &pneumatic.Follow{T: f("led to"), By: pneumatic.Lever(rapid.IntRange(-1, 2).Draw(t, "lever")), Least: f("least"), Most: f("most")}
			s.Run = pneumatic.Run{Thermostat: &pneumatic.Thermostat{Above: f("above"), Difference: f("difference")}, Clock: &pneumatic.Clock{On: f("on"), Every: f("every")}}
		}
		before := b
		if b.Advance(math.Mod(f("dt"), 1e4), s) != nil {
			require.Equal(t, before, b)
		}
		b.Turn()
		_ = b.Sprinkle(f("kg"), f("water"))
		for _, l := range b.Layers(nil) {
			require.False(t, math.IsNaN(l.T+l.Moisture) || math.IsInf(l.T+l.Moisture, 0))
		}
		sum := b.T() + b.Mass() + b.Clock() + b.Chitted() + b.Ledger().Carried + b.Plant().VentedHeat + b.Plant().Short
		require.False(t, math.IsNaN(sum) || math.IsInf(sum, 0))
		_, _ = b.Draught(), b.OxygenDepth()
	})
}

func TestABedThatHoldsNoGrainIsRefused(t *testing.T) {
	var b pneumatic.Bed
	assert.Error(t, b.Advance(60, blown(500, 13, 0.98)))
	assert.Error(t, b.Sprinkle(1, 12))
	b.Turn()
	assert.True(t, math.IsNaN(b.T()))
	assert.Empty(t, b.Layers(nil))
}

// In the thinnest air that the equations take, warm grain is far from its limits.
func TestThinAirAndHotGrainStayNumbers(t *testing.T) {
	for _, flow := range []float64{0, 1e-4, 0.2, 2} {
		b := tonne(t)
		s := pneumatic.Supply{Room: pneumatic.Room{T: 45, RH: 1, Pressure: new(20e3)}, Flow: flow, T: 45, RH: 1, Cooler: new(0.0), Fan: pneumatic.Fan{Pressure: 3000, Efficiency: 0.15}}
		for range 96 {
			before := b
			if err := b.Advance(hour, s); err != nil {
				var outside *air.RangeError
				require.True(t, errors.As(err, &outside), "%v", err)
				require.False(t, math.IsNaN(outside.Value), "%g m³/s: %v", flow, err)
				require.Equal(t, before, b)
				break
			}
			require.False(t, math.IsNaN(b.T()+b.Moisture()))
		}
	}
}

func TestABatchThatIsTakenOutIsTheOnePutIn(t *testing.T) {
	b := tonne(t)
	keep(t, &b, 2*day, 12*hour, blown(500, 13, 0.98))
	out := b.Batch()
	require.NoError(t, out.Check())
	again := bed(t, out, pneumatic.Vessel{Area: metre(out, 1)}, b.T())
	assert.InEpsilon(t, b.Mass(), again.Mass(), 1e-12)
	assert.InEpsilon(t, b.Clock(), again.Clock(), 1e-12)
	assert.InEpsilon(t, b.CO2(), again.CO2(), 1e-12)
	assert.Equal(t, b.Rub(), again.Rub())
}
