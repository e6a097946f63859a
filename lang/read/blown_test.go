package read

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/source/golden"
	"maltwright/lang/vocabulary"
)

func growth(t *testing.T, lines string) *model.Germination {
	t.Helper()
	h, found := load("process \"p\" { germinate {\n" + lines + "\n} }\n")
	require.Len(t, h.Processes, 1, golden.Findings(found))
	return model.First[*model.Germination](h.Processes[0])
}

func TestAirThatIsBlownIsReadAsWrittenAndInItsOrder(t *testing.T) {
	st := growth(t, `air at air-on 13 to 14 °C with airflow 1200 m3/h when bed above 15 °C and moisture above 40 %
air at air-on 12 °C for 0.25 h every 60 min
humidity air-on 98 %`)
	require.Len(t, st.Blown, 2)
	first, second := st.Blown[0], st.Blown[1]
	assert.InDelta(t, 286.65, first.At.Mid(), 1e-9)
	assert.Equal(t, vocabulary.PlaceAirOn, first.At.Where)
	assert.InDelta(t, 1.0/3, first.Airflow.SI, 1e-12)
	require.Len(t, first.When.Tests, 2)
	assert.Equal(t, vocabulary.MeasureBed, first.When.Tests[0].Measure)
	assert.Nil(t, first.Every)
	assert.Equal(t, "air at air-on 12 °C for 0.25 h every 60 min", second.Place().Text())
	assert.Equal(t, 900.0, second.For.SI)
	assert.Equal(t, 3600.0, second.Every.SI)
	assert.Nil(t, st.Humidity, "it is none over the piece")
	assert.InDelta(t, 0.98, st.AirOnHumidity.Low.SI, 1e-12)
	assert.Empty(t, st.Steps, "air is no step")
}

func TestHumidityWithoutAPlaceIsOverThePiece(t *testing.T) {
	st := growth(t, "humidity 95 to 98 %")
	assert.Nil(t, st.AirOnHumidity)
	assert.InDelta(t, 0.95, st.Humidity.Low.SI, 1e-12)
}

func TestASprinklingIsOfAnAmountALoadOrAMoisture(t *testing.T) {
	s := growth(t, "sprinkle 20 l/t every 24 h").Sprinkle
	assert.InDelta(t, 2e-5, s.Water.SI, 1e-15)
	assert.Nil(t, s.To)
	s = growth(t, "sprinkle to moisture 45 % when moisture below 43 %").Sprinkle
	assert.Nil(t, s.Water)
	assert.Nil(t, s.Every)
	assert.InDelta(t, 0.45, s.To.SI, 1e-12)
	assert.Equal(t, "moisture below 43 %", s.When.Place.Text())
	s = growth(t, "sprinkle to 45 % every 12 h").Sprinkle
	assert.InDelta(t, 0.45, s.To.SI, 1e-12)
}

func TestATurnIsByMachineOrByHand(t *testing.T) {
	assert.Equal(t, vocabulary.ByMachine, growth(t, "turn every 12 h by machine").Turner.Text)
	assert.Empty(t, growth(t, "turn every 12 h").Turner.Text)
}

func TestAFloorTellsWhetherAirIsBlownThroughIt(t *testing.T) {
	h, found := load("floor \"drum\" { area 2 m2; airflow 500 m3/h; returns 60 %; tumbles yes }\nfloor \"tray\" { area 1 m2 }\n")
	require.Empty(t, found)
	assert.True(t, h.Floors[0].Blown())
	assert.InDelta(t, 0.6, h.Floors[0].Returns.SI, 1e-12)
	assert.Equal(t, vocabulary.SaidYes, h.Floors[0].Tumbles.Text)
	assert.False(t, h.Floors[1].Blown())
	var none *model.Floor
	assert.False(t, none.Blown())
}

func TestAirOfTheRoomStandsOnce(t *testing.T) {
	_, found := load("process \"p\" { wither { air at 18 °C; air at 20 °C } }")
	assert.True(t, has(found, saidTwice.Name), golden.Findings(found))
}
