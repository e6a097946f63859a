package forecast

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/sim/air"
	"maltwright/sim/kiln"
)

// oast is an old kiln of two floors under one chimney, for 600 kg of malt.
const oast = `
site "glen" { air 8 °C; humidity 78 % }
grain "lot" { species barley; already green malt; moisture 44 % }
kiln "low" { area 12 m2; chimney 6 m; draught natural; heater 45 kW; reaches 15 to 90 °C; fired wood by direct }
kiln "high" { area 12 m2; air from "low" }
`

func oastText(house, upper, lower string) string {
	return strings.NewReplacer(`"upper floor"`, `"high"`, `"lower floor"`, `"low"`, `"maltings"`, `"glen"`).Replace(onFloors(house, upper, lower))
}

const (
	slowly = "dry for 30 h"
	fired  = "dry at air-on 60 °C for 24 h; cure at air-on 78 °C for 4 h; cool to malt 30 °C"
)

// By hand at four times: what the two columns over the beds and the metre under them draw is what both beds
// and the ducts lose, L·0.8·21400·q²/ln(1 + 13.2·q) each, and 2.5·ρ/2·(V/A')². The lower malt is nearly dry, and
// lies as deep as the upper at its end.
func TestDraughtOfTwoFloorsIsWhatBothBedsLose(t *testing.T) {
	looks := []float64{2 * 3600, 6 * 3600, 10 * 3600, 14 * 3600}
	p := load(t, oastText(oast, slowly, fired))
	plan, err := Run(p, Options{})
	require.NoError(t, err)
	f, err := Run(p, Options{Course: &Course{Looks: looks}})
	require.NoError(t, err)
	var above kiln.Intake
	for _, e := range plan.fixed[p.Stages[0].(*model.Kilning)].above {
		above = e.course
	}
	low := above[len(above)-1].Depth
	pressure, err := air.Pressure(0)
	require.NoError(t, err)
	out, err := air.FromRH(8, 0.78, pressure)
	require.NoError(t, err)
	loses := func(depth, q float64) float64 { return depth * 0.8 * 21400 * q * q / math.Log1p(13.2*q) }
	for i, at := range looks {
		up := above.At(at)
		between, top := air.State{T: f.Seen[i].AirOn, W: up.W, P: pressure}, air.State{T: up.T, W: up.W, P: pressure}
		on := air.State{T: 60, W: out.W, P: pressure}
		draws := 9.81 * (2.5*(out.Density()-between.Density()) + 3.5*(out.Density()-top.Density()) + out.Density() - on.Density())
		v := up.Flow * on.Volume()
		q := func(a, b air.State) float64 { return up.Flow * (a.Volume() + b.Volume()) / 2 / 12 }
		lost := loses(low, q(on, between)) + loses(up.Depth, q(between, top)) + 2.5*on.Density()/2*math.Pow(v/0.6, 2)
		t.Logf("after %.0f h %.2f Pa draw %.0f m3/h through both, by hand they lose %.2f Pa", at/3600, draws, 3600*v, lost)
		assert.InEpsilon(t, draws, lost, 0.08, "at %.0f h", at/3600)
	}
}

// All the air of the lower floor goes through the malt above it. A bed six times as deep on a sixth of
// the area lets next to nothing pass, and nothing dries.
func TestMaltAboveHoldsTheDraughtBack(t *testing.T) {
	two := runText(t, oastText(oast, slowly, fired), Options{})
	require.False(t, two.BrokenOff())
	require.NotNil(t, two.Kilns[0].Fed)
	assert.True(t, two.Kilns[0].Fed.Met)
	assert.Less(t, two.Kilns[0].Fed.Kelvin, 0.3)
	assert.Empty(t, Troubles[FloorsApart](two))
	assert.Less(t, two.Totals.FinalMoisture, 0.05)

	narrow := strings.Replace(oast, `kiln "high" { area 12 m2`, `kiln "high" { area 2 m2`, 1)
	choked := runText(t, oastText(narrow, slowly, fired), Options{})
	assert.Less(t, choked.Kilns[1].Airs.First, two.Kilns[1].Airs.First/10)
	assert.Greater(t, choked.Totals.FinalMoisture, 0.3)

	// and of the two beds it is that one that is told, six times as deep as the lower
	short := Troubles[AirShort](choked)
	require.NotEmpty(t, short)
	require.NotNil(t, short[0].Driven)
	assert.Equal(t, "high", short[0].Driven.Over)
	assert.InEpsilon(t, 6*choked.Kilns[1].Depth, short[0].Driven.Depth, 0.2)
	assert.Zero(t, short[0].Driven.Area)
}

// A fan of its own on the floor above moves what it moves: its bed is not in the way.
func TestAFloorWithItsOwnFanIsNotInTheWay(t *testing.T) {
	own := strings.Replace(oast, `air from "low"`, `airflow 1500 m3/h; air from "low"`, 1)
	p := load(t, oastText(own, slowly, fired))
	r := &run{p: p}
	st := model.Every[*model.Kilning](p)
	assert.Nil(t, r.stageAbove(st[1]))
	r.p = load(t, oastText(oast, slowly, fired))
	st = model.Every[*model.Kilning](r.p)
	assert.Equal(t, st[0], r.stageAbove(st[1]))
}

// A fan in a flue: warm air above the bed draws beside what the fan gives, and that is told.
func TestAChimneyDrawsBesideAFan(t *testing.T) {
	const weak = "fan 2600 m3/h at 0 Pa; fan 1000 m3/h at 5 Pa"
	dry := "dry at air-on 60 °C for 20 h; cool to malt 30 °C"
	first := func(house string) (air float64, flue float64) {
		f := runText(t, strings.NewReplacer(`"maltings"`, `"glen"`).Replace(stages(house, `kiln in "low" { `+dry+` }`)), Options{})
		for _, a := range f.Assumed {
			if a, ok := a.(DrivenAir); ok {
				return a.Flow, a.Flue
			}
		}
		return 0, 0
	}
	alone, none := first(strings.Replace(oast, "chimney 6 m; draught natural", weak, 1))
	both, flue := first(strings.Replace(oast, "chimney 6 m; draught natural", weak+"; chimney 6 m", 1))
	assert.Zero(t, none)
	assert.InDelta(t, 6, flue, 1e-9)
	assert.Greater(t, both, 1.2*alone)
}

// What lies on the lower floor is at once as cool as is asked, so that no air leaves that floor: the upper malt
// then has outside air, and of air that was driven while malt was heated nothing is told.
func TestLowerFloorThatIsOverAsItBeginsGivesNoAir(t *testing.T) {
	f := runText(t, oastText(oast, slowly, "cool to malt 90 °C"), Options{})
	require.False(t, f.BrokenOff())
	require.Len(t, f.Kilns, 2)
	assert.Nil(t, f.Kilns[0].Fed)
	assert.Nil(t, f.Kilns[1].Airs)
	dry := f.Stages[0].Steps[0]
	assert.Equal(t, 8.0, dry.Temperature.To, "outside air")
	assert.Less(t, dry.MoistureEnd, dry.MoistureStart)
}

// A forecast that begins near to another adds nothing to what that one keeps.
func TestForecastLeavesTheOneThatItIsLikeAlone(t *testing.T) {
	p := load(t, oastText(oast, slowly, fired))
	like, err := Run(p, Options{})
	require.NoError(t, err)
	kept := like.fixed[p.Stages[0].(*model.Kilning)]
	require.NotEmpty(t, kept.cut)
	clear(kept.cut)
	_, err = Run(p, Options{Like: like})
	require.NoError(t, err)
	assert.Empty(t, kept.cut)
}
