package quantity

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestPoundsAndOuncesAreToldAsAHouseWritesThem(t *testing.T) {
	house := System{British: true, Ounces: true}
	const oz = Pound / 16
	assert.Equal(t, "14 lb 9 oz", house.Weight(14*Pound+8.7*oz))
	assert.Equal(t, "15 lb", house.Weight(14*Pound+15.7*oz), "ounces that round up to a pound are one")
	assert.Equal(t, "8.7 oz", house.Weight(8.7*oz))
	assert.Equal(t, "250 lb", house.Weight(250*Pound))
	assert.Equal(t, "14 lb 8.7 oz", house.WeightBy(14*Pound+8.72*oz, 0.1*oz))
	assert.Equal(t, "14 lb 8.5 oz", house.WeightBy(14*Pound+8.72*oz, 0.5*oz))
	assert.Equal(t, "15 lb", house.WeightBy(14*Pound+15.98*oz, 0.1*oz))
	assert.Equal(t, "14.54 lb", System{British: true}.WeightBy(14*Pound+8.7*oz, 0.01*Pound), "who writes no ounces is told none")
}
