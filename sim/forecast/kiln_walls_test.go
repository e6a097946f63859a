package forecast

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/sim/kiln"
)

const kilnFacts = "area 0.5 m2; airflow 120 m3/h; reaches 20 to 110 °C; heater 5 kW; fired electric"

// inKiln forecasts the usual kilning on a kiln of these facts.
func inKiln(t *testing.T, facts, body string) *Forecast {
	t.Helper()
	text := strings.Replace(house, kilnFacts, facts, 1)
	require.Contains(t, text, facts)
	f, err := Run(load(t, text+"process \"p\" {\n make pale malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steepText+growText+body+"}\n"), Options{})
	require.NoError(t, err)
	return f
}

func takenOf[A Assumption](f *Forecast) (list []A) {
	for _, a := range f.Assumed {
		if a, ok := a.(A); ok {
			list = append(list, a)
		}
	}
	return list
}

// steps are those of the kiln.
func kilnSteps(f *Forecast) []Step {
	for _, s := range f.Stages {
		if s.Kind == model.KilnStage {
			return s.Steps
		}
	}
	return nil
}

func last(f *Forecast) Step {
	s := kilnSteps(f)
	return s[len(s)-1]
}

func TestWallsAreHeatedBesideTheMalt(t *testing.T) {
	bare, brick := inKiln(t, kilnFacts, kilnText), inKiln(t, kilnFacts+"; walls brick", kilnText)
	wool := inKiln(t, kilnFacts+"; walls metal 3 m2 with insulation", kilnText)
	large := inKiln(t, kilnFacts+"; walls brick 3.5 m2", kilnText)
	assert.Greater(t, large.Totals.KilnEnergy, 1.1*bare.Totals.KilnEnergy)
	assert.Greater(t, brick.Totals.KilnEnergy, bare.Totals.KilnEnergy)
	assert.Less(t, brick.Totals.KilnEnergy, large.Totals.KilnEnergy, "a cabinet around the trays is smaller than a room")
	assert.Greater(t, wool.Totals.KilnEnergy, bare.Totals.KilnEnergy)
	assert.Less(t, wool.Totals.KilnEnergy, 1.1*bare.Totals.KilnEnergy)
	assert.Greater(t, last(brick).End-last(brick).Start, last(bare).End-last(bare).Start, "warm bricks keep the malt warm")

	require.Len(t, takenOf[KilnWalls](brick), 1)
	area, height := kiln.CabinetAround(0.5)
	assert.Equal(t, KilnWalls{Of: "brick", Area: area, Height: height, Trays: true, Thick: 0.24}, takenOf[KilnWalls](brick)[0])
	assert.Equal(t, []KilnWalls{{Of: "metal", Area: 3, Thick: 0.001, Wool: 0.05}}, takenOf[KilnWalls](wool))
	assert.Empty(t, takenOf[KilnWalls](bare))
}

// Stone that was warm at 80 °C gives more than 35 °C for hours, and that is told.
func TestWarmWallsAreToldOf(t *testing.T) {
	f := inKiln(t, kilnFacts+"; walls stone 40 m2", "kiln in \"kiln\" { dry at air-on 70 °C for 12 h; cure at air-on 80 °C for 8 h; dry at air-on 22 °C for 4 h; cool to malt 30 °C }\n")
	short := Troubles[KilnShort](f)
	require.NotEmpty(t, short)
	assert.Equal(t, kiln.ByWalls, short[len(short)-1].Limit)
	assert.Greater(t, short[len(short)-1].Got, 24.0)
}

// Walls of which nothing is said are told of where the heater comes near its end, and there alone.
func TestSilentWallsAreToldOfWhereTheyMatter(t *testing.T) {
	assert.Empty(t, takenOf[NoWalls](inKiln(t, kilnFacts, kilnText)))
	weak := strings.Replace(kilnFacts, "5 kW", "2 kW", 1)
	list := takenOf[NoWalls](inKiln(t, weak, kilnText))
	still := takenOf[NoWalls](inKiln(t, "area 2 m2; draught still; heater 20 kW; reaches 20 to 110 °C", kilnText))
	require.Len(t, still, 1, "the most of an oven's heat goes by its walls")
	assert.Zero(t, still[0].Share)
	assert.Empty(t, takenOf[NoWalls](inKiln(t, "area 2 m2; draught still; heater 20 kW; reaches 20 to 110 °C; walls metal", kilnText)))
	require.Len(t, list, 1)
	assert.Greater(t, list[0].Share, nearlyAll)
	assert.LessOrEqual(t, list[0].Share, 1.0)
	assert.Empty(t, takenOf[NoWalls](inKiln(t, weak+"; walls brick", kilnText)))
}

const ovenText = `kiln in "kiln" { dry at oven 55 °C until moisture at most 12 % allow 0 to 48 h; cure at oven 80 °C for 4 h; cool to malt 30 °C }
`

// An oven with its door ajar dries sooner than a shut one, as its gap lets air through; beside an
// airflow the gap says nothing.
func TestADoorAjarDriesAnOven(t *testing.T) {
	oven := "area 0.5 m2; draught still; reaches 30 to 220 °C; heater 2.2 kW; fired electric"
	shut, ajar := inKiln(t, oven, ovenText), inKiln(t, oven+"; door ajar 3 cm", ovenText)
	dries := func(f *Forecast) float64 { s := kilnSteps(f)[0]; return s.End - s.Start }
	assert.Less(t, dries(ajar), 0.8*dries(shut))
	doors := takenOf[OvenDoor](ajar)
	require.Len(t, doors, 1)
	assert.Equal(t, kiln.OvenDoor, doors[0].Height)
	// 0.6/3 · 0.03 · 0.4^1.5 · √(9.81·41/308) by hand
	assert.InEpsilon(t, 1.735e-3, doors[0].Flow, 0.02)
	assert.Empty(t, takenOf[OvenDoor](shut))

	said := oven + "; airflow 6 m3/h"
	both := inKiln(t, said+"; door ajar 3 cm", ovenText)
	assert.Equal(t, dries(inKiln(t, said, ovenText)), dries(both), "the airflow holds")
	assert.Len(t, takenOf[DoorIdle](both), 1)
	assert.Empty(t, takenOf[OvenDoor](both))
	assert.Len(t, takenOf[OpenOven](shut), 1)
}

// A covered pan takes its share of what the door lets through.
func TestADoorAjarDriesAPanUnderCover(t *testing.T) {
	oven := "area 0.5 m2; draught still; reaches 30 to 220 °C; heater 2.2 kW; fired electric"
	stew := `kiln in "kiln" { stew at oven 65 °C for 3 h; cure at oven 80 °C for 4 h; cool to malt 30 °C }
`
	left := func(f *Forecast) float64 { return kilnSteps(f)[0].MoistureEnd }
	assert.Less(t, left(inKiln(t, oven+"; door ajar 5 cm", stew)), left(inKiln(t, oven, stew)))
}

// Once the fire is out a natural draught is what the warm malt draws by itself, no more than what
// the fire drew; a fan goes on.
func TestANaturalDraughtFadesAsTheMaltCools(t *testing.T) {
	cools := func(f *Forecast) float64 { return last(f).End - last(f).Start }
	fan, natural := inKiln(t, kilnFacts+"; draught fan", kilnText), inKiln(t, kilnFacts+"; draught natural", kilnText)
	assert.Greater(t, cools(natural), cools(fan))
	assert.Less(t, cools(natural), 3600.0, "a tray cools by itself")
	assert.Equal(t, []CoolDraught{{Above: houseAbove + houseBelow}}, takenOf[CoolDraught](natural))
	assert.Empty(t, takenOf[CoolDraught](fan))
}

// Thin malt under a fan or in an oven lies on a stack of trays; a deep bed, a natural draught and a wide floor have
// a room around them.
func TestWhatStandsAroundTrays(t *testing.T) {
	for facts, trays := range map[string]bool{
		"area 5 m2; walls wood": true, "area 5 m2; walls wood; draught fan; airflow 500 m3/h": true, "area 0.5 m2; walls metal; draught still": true,
		"area 0.5 m2; walls wood; draught fan; airflow 500 m3/h": false, "area 5 m2; walls wood; draught natural": false, "area 25 m2; walls wood": false,
	} {
		mass := "60 kg"
		if strings.Contains(facts, "still") {
			mass = "5 kg"
		}
		list := takenOf[KilnWalls](driven(t, mass, facts, "dry at air-on 50 °C for 6 h; cool to malt 30 °C"))
		require.Len(t, list, 1, facts)
		assert.Equal(t, trays, list[0].Trays, facts)
	}
}
