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

// outside is the air of the place.
func outside(t require.TestingT, a kiln.Ambient) air.State {
	p, err := air.Pressure(a.Altitude)
	require.NoError(t, err)
	s, err := air.FromRH(a.T, a.RH, p)
	require.NoError(t, err)
	return s
}

// fed is a bed that takes air from elsewhere, in the layers that green malt needs.
func fed(t testing.TB, charge kiln.Charge, kit kiln.Equipment, course kiln.Intake, fan bool) *kiln.Bed {
	t.Helper()
	b := bed(t, charge, kit, spring)
	require.NoError(t, b.Feed(course, fan))
	return b
}

var asComes = kiln.Setting{Target: kiln.AsComes}

// Air that somebody else warmed does what air does that the kiln warms itself, and costs its
// heater nothing.
func TestAirWarmedElsewhereDriesAsAirWarmedHere(t *testing.T) {
	here := bed(t, tonne, house, spring)
	v := run(t, here, 10, kiln.Hold(kiln.AirOn, 60))
	at := outside(t, spring)
	hot := air.State{T: 60, W: at.W, P: at.P}
	there := fed(t, tonne, house, kiln.Intake{{T: 60, W: at.W, Flow: house.Airflow / hot.Volume()}}, false)
	w := run(t, there, 10, asComes)
	assert.InDelta(t, v.X, w.X, 1e-9)
	assert.InDelta(t, v.Off.T, w.Off.T, 1e-6)
	assert.Zero(t, w.Ledger.Heater)
	assert.InEpsilon(t, v.Ledger.Heater, w.Ledger.HeatIntake, 1e-9)
}

// A course that bends, jumps and stops, through a flap, a weak heater, return air and a fan of
// its own: water and heat close to rounding at every step.
func TestBalancesCloseWithIncomingAir(t *testing.T) {
	course := kiln.Intake{
		{At: 0, T: 28, W: 0.022, Flow: 1.2}, {At: 1800, T: 30, W: 0.021, Flow: 1.2}, {At: 1800, T: 45, W: 0.018, Flow: 0.9},
		{At: 4000, T: 75, W: 0.010, Flow: 0.9}, {At: 5000, T: 40, W: 0.008, Flow: 1.1}, {At: 5000, T: 15, W: 0.007, Flow: 1.1},
	}
	weak, none, round, fan, saving := house, house, house, house, house
	saving.Recovers = 0.6
	brick := none
	brick.Heater, brick.Walls = new(0.0), &kiln.Walls{Of: kiln.Brick, Area: 15}
	weak.Heater, none.Heater, round.Recirculation, fan.Airflow = new(20e3), new(0.0), 0.5, 2.0
	for name, c := range map[string]struct {
		kit kiln.Equipment
		fan bool
		set kiln.Setting
	}{
		"as it comes":  {none, false, asComes},
		"flap":         {none, false, kiln.Hold(kiln.AirOn, 35)},
		"heater":       {house, false, kiln.Hold(kiln.AirOn, 50)},
		"weak heater":  {weak, false, kiln.Hold(kiln.AirOn, 55)},
		"return air":   {round, false, kiln.Hold(kiln.AirOn, 40)},
		"round":        {round, false, asComes},
		"exchanger":    {saving, false, kiln.Hold(kiln.AirOn, 45)},
		"its own fan":  {fan, true, kiln.Hold(kiln.AirOn, 40)},
		"by the malt":  {house, false, kiln.Hold(kiln.Malt, 35)},
		"brick":        {brick, false, asComes},
		"brick, flap":  {brick, false, kiln.Hold(kiln.AirOn, 35)},
		"outside only": {house, false, still},
	} {
		b := fed(t, tonne, c.kit, course, c.fan)
		for range 360 {
			_, err := b.Advance(20, c.set)
			require.NoError(t, err, name)
			l := b.View().Ledger
			require.Less(t, l.WaterError(), 1e-9, name)
			require.Less(t, l.HeatError(), 1e-9, name)
			require.Less(t, l.KilnError(), 1e-9, name)
			balanced(t, b, name)
		}
		w, l := b.Balance(), b.View().Ledger
		assert.InDelta(t, w.Heater+w.Intake+w.Recovered, w.Warmed+w.Evaporated+w.Exhaust+w.WallHeat+w.WallLoss, 1e-9*(w.Heater+w.Intake+1e8), name)
		if c.kit.Heater != nil && *c.kit.Heater == 0 {
			assert.InDelta(t, 0, w.Heater, 1e-3*w.Intake, name)
		}
		assert.Greater(t, w.Heater, -1e-3*w.Intake-1, "%s: no heater cools", name)
		if name == "outside only" {
			assert.InDelta(t, 0, l.HeatIntake, 1e-3, name)
		} else {
			assert.Positive(t, l.HeatIntake, name)
		}
	}
}

// ends notes the times at which a bed stands at the end of a step.
type ends struct{ at []float64 }

func (e *ends) Stepped(dt float64) error {
	last := 0.0
	if n := len(e.at); n > 0 {
		last = e.at[n-1]
	}
	e.at = append(e.at, last+dt)
	return nil
}

func TestStepsMeetTheKnotsOfTheIncomingAir(t *testing.T) {
	course := kiln.Intake{
		{At: 0, T: 30, W: 0.02, Flow: 1}, {At: 777, T: 30, W: 0.02, Flow: 1}, {At: 777, T: 60, W: 0.01, Flow: 1}, {At: 2222, T: 40, W: 0.01, Flow: 1},
	}
	e := &ends{}
	b := fed(t, tonne, house, course, false)
	for range 6 {
		_, err := b.AdvanceBy(600, asComes, e)
		require.NoError(t, err)
	}
	for _, want := range []float64{777, 2222} {
		near := math.Inf(1)
		for _, at := range e.at {
			near = min(near, math.Abs(at-want))
		}
		assert.Less(t, near, 1e-5, "%.0f s", want)
	}
	assert.Less(t, len(e.at), 80)
}

// The air on to the bed is that of the course at that very time.
func TestAirComesOnAsItComes(t *testing.T) {
	course := kiln.Intake{{At: 0, T: 30, W: 0.02, Flow: 1}, {At: 3600, T: 60, W: 0.01, Flow: 0.8}}
	b := fed(t, tonne, house, course, false)
	v := run(t, b, 0.5, asComes)
	assert.InDelta(t, 45, v.On.T, 1e-9)
	assert.InDelta(t, 0.015, v.On.W, 1e-12)
	assert.InDelta(t, 0.9*1800, v.Ledger.AirPassed, 0.01*0.9*1800+0.06*1800)
	assert.Equal(t, kiln.Unlimited, v.Limit)
}

// The flap mixes: heat and water of outside air and of what comes, in the share that gives the
// temperature asked for.
func TestFlapMixesOutsideAirIn(t *testing.T) {
	course := kiln.Intake{{T: 70, W: 0.02, Flow: 1.1}}
	b := fed(t, tonne, house, course, false)
	v := run(t, b, 1, kiln.Hold(kiln.AirOn, 45))
	at := outside(t, spring)
	assert.InDelta(t, 45, v.On.T, 1e-9)
	share := (v.On.W - at.W) / (0.02 - at.W)
	hot := air.State{T: 70, W: 0.02, P: at.P}
	assert.InEpsilon(t, share*hot.Enthalpy()+(1-share)*at.Enthalpy(), v.On.Enthalpy(), 1e-9)
	assert.InDelta(t, 30.0/55, share, 0.02)
	assert.Equal(t, kiln.Unlimited, v.Limit)
	assert.InEpsilon(t, 1.1*3600, v.Ledger.AirPassed, 1e-9, "the flow stays")
	assert.Zero(t, v.Ledger.Heater)

	v = run(t, b, 1, kiln.Hold(kiln.AirOn, 5))
	assert.Equal(t, kiln.ByIncomingAir, v.Limit)
	assert.InDelta(t, spring.T, v.On.T, 1e-9, "the flap can cool no further")
}

func TestColdIncomingAirIsWarmedByItsOwnHeaterOrNotAtAll(t *testing.T) {
	course := kiln.Intake{{T: 35, W: 0.02, Flow: 1.1}}
	none, weak := house, house
	none.Heater, weak.Heater = new(0.0), new(10e3)
	v := run(t, fed(t, tonne, none, course, false), 1, kiln.Hold(kiln.AirOn, 50))
	assert.Equal(t, kiln.ByFeed, v.Limit)
	assert.InDelta(t, 35, v.On.T, 1e-9)
	v = run(t, fed(t, tonne, weak, course, false), 1, kiln.Hold(kiln.AirOn, 50))
	assert.Equal(t, kiln.ByHeater, v.Limit)
	assert.InEpsilon(t, 10e3, 1.1*(v.On.Enthalpy()-air.State{T: 35, W: 0.02}.Enthalpy()), 1e-6)
	v = run(t, fed(t, tonne, house, course, false), 1, kiln.Hold(kiln.AirOn, 50))
	assert.Equal(t, kiln.Unlimited, v.Limit)
	assert.InDelta(t, 50, v.On.T, 1e-9)
}

// A fan of its own moves its volume: outside air makes up what the floor below lacks, and
// what it gives too much goes by.
func TestFanOfItsOwnMovesItsVolume(t *testing.T) {
	at := outside(t, spring)
	hot := air.State{T: 60, W: 0.01, P: at.P}
	for _, from := range []float64{0.3, 3} {
		b := fed(t, tonne, house, kiln.Intake{{T: 60, W: 0.01, Flow: from}}, true)
		v := run(t, b, 1, asComes)
		assert.InEpsilon(t, house.Airflow, v.Ledger.AirPassed/3600*v.On.Volume(), 1e-3)
		if from*hot.Volume() > house.Airflow {
			assert.InDelta(t, 60, v.On.T, 1e-9)
		} else {
			assert.Less(t, v.On.T, 40.0)
		}
	}
}

// What the lower bed books as its exhaust, and what its course gives the upper one, is the
// same but for the straight lines between the times: heat within a thousandth, the little
// water that dry malt still gives within three.
func TestExhaustOfOneBedIsTheIncomingAirOfAnother(t *testing.T) {
	saving := house
	saving.Recovers = 0.5
	back := house
	back.Recirculation = 0.4
	for name, kit := range map[string]kiln.Equipment{"through": house, "led back": back, "exchanger": saving} {
		lower := bed(t, kiln.Charge{DryMass: 960, Moisture: 0.15, Temperature: 35, BulkDensity: 550}, kit, spring)
		lower.Trace()
		run(t, lower, 8, kiln.Hold(kiln.AirOn, 65))
		for at := range 24 {
			_, err := lower.Advance(600, kiln.Setting{From: 65 + float64(at)*0.75, To: 65 + float64(at+1)*0.75})
			require.NoError(t, err)
		}
		run(t, lower, 4, kiln.Hold(kiln.AirOn, 83))
		run(t, lower, 1, still)
		course := lower.Exhaust()
		assert.Less(t, len(course), 150, name)
		upper := fed(t, tonne, house, course, false)
		v := run(t, upper, 17, asComes)
		l := lower.View().Ledger
		assert.InEpsilon(t, l.HeatVented-l.Recovered, v.Ledger.HeatIntake, 2e-3, name)
		assert.InEpsilon(t, l.WaterVented-l.Condensed, v.Ledger.WaterIntake, 3e-3, name)
		if name == "through" {
			assert.InEpsilon(t, l.AirPassed, v.Ledger.AirPassed, 1e-3, name)
		}
	}
}

// A thinned course is nowhere farther off than it says.
func TestThinnedCourseStaysNear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var in kiln.Intake
		at := 0.0
		for range rapid.IntRange(1, 60).Draw(t, "times") {
			if len(in) < 2 || in[len(in)-1].At != in[len(in)-2].At { // a jump has two sides
				at += rapid.SampledFrom([]float64{0, 5, 60, 300}).Draw(t, "later")
			} else {
				at += 30
			}
			in = append(in, kiln.Incoming{At: at, T: rapid.Float64Range(20, 21).Draw(t, "T"), W: rapid.Float64Range(0.01, 0.0105).Draw(t, "W"), Flow: rapid.Float64Range(1, 1.01).Draw(t, "flow")})
		}
		thin := in.Thinned()
		if len(thin) > len(in) {
			t.Fatal("it grew")
		}
		for i, c := range in {
			if i > 0 && in[i-1].At == c.At || i+1 < len(in) && in[i+1].At == c.At {
				continue // a jump has two values
			}
			got := thin.At(c.At)
			if math.Abs(got.T-c.T) > 0.0501 || math.Abs(got.W-c.W) > 2.01e-5 || math.Abs(got.Flow-c.Flow) > 1.01e-3*c.Flow {
				t.Fatalf("%v became %v", c, got)
			}
		}
	})
}

func TestIncomingAirOutsideItsRangeIsRefused(t *testing.T) {
	b := bed(t, tonne, house, spring)
	assert.ErrorContains(t, b.Feed(kiln.Intake{{T: 400, W: 0.01, Flow: 1}}, false), "temperature of the incoming air")
	assert.ErrorContains(t, b.Feed(kiln.Intake{{T: 30, W: -1, Flow: 1}}, false), "humidity ratio of the incoming air")
	assert.ErrorContains(t, b.Feed(kiln.Intake{{T: 30, W: 0.01, Flow: 0}}, false), "flow of the incoming air")
	assert.ErrorContains(t, b.Feed(kiln.Intake{{At: 2, T: 30, W: 0.01, Flow: 1}, {At: 1, T: 30, W: 0.01, Flow: 1}}, false), "stands behind")
	oven, err := kiln.New(tray, kiln.Equipment{Area: 0.5, Airflow: kiln.StillVent, Still: true}, spring, drying.Malt{})
	require.NoError(t, err)
	assert.Error(t, oven.Feed(kiln.Intake{{T: 30, W: 0.01, Flow: 1}}, false))
}

// How far two courses are apart is the mean over the time.
func TestCoursesApart(t *testing.T) {
	a := kiln.Intake{{At: 0, T: 30, W: 0.01, Flow: 1}, {At: 100, T: 30, W: 0.01, Flow: 1}, {At: 100, T: 50, W: 0.02, Flow: 1}}
	b := kiln.Intake{{At: 0, T: 30, W: 0.01, Flow: 1}, {At: 150, T: 30, W: 0.01, Flow: 1}, {At: 150, T: 50, W: 0.02, Flow: 1}}
	kelvin, ratio := a.Apart(b, 200)
	assert.InDelta(t, 5, kelvin, 1e-9)
	assert.InDelta(t, 0.0025, ratio, 1e-12)
	kelvin, _ = a.Apart(nil, 200)
	assert.True(t, math.IsInf(kelvin, 1))
}
