package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

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
