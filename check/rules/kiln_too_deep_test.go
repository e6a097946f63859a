package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// Flaps that were assumed are what settles a heater that is too weak, not the air that the kiln drives.
func TestAssumedFlapsAreNamedBeforeTheAir(t *testing.T) {
	assert.True(t, among(kilnHeat, forecast.KilnFlaps{}))
	c := &Case{Process: &model.Process{}, Forecast: &forecast.Forecast{Assumed: []forecast.Assumption{forecast.KilnFlaps{}, forecast.DrivenAir{}}}}
	how, _, _ := c.settled(forecast.KilnFlaps{})
	assert.Contains(t, how, vocabulary.WithAirflow)
	assert.True(t, c.flapsAssumed(""))
	assert.False(t, c.flapsAssumed("kiln 2"))
}

func TestTheAirOfAnUpperFloorIsThatOfTheFloorBelow(t *testing.T) {
	low := &model.Kiln{Chimney: &model.Quantity{}}
	low.Draught.Text = vocabulary.DraughtNatural
	high := &model.Kiln{AirFrom: low}
	assert.Equal(t, 0.4, deepest[airSource(high)])
	assert.Equal(t, 0.4, deepest[airSource(&model.Kiln{AirFrom: high})])
	assert.Equal(t, 0.4, deepest[airSource(&model.Kiln{Chimney: low.Chimney})])
	low.Draught.Text = vocabulary.DraughtFan
	assert.Equal(t, 1.2, deepest[airSource(high)])
	low.AirFrom = high
	airSource(high) // a ring ends
}
