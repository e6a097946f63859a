package words

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

func quantityOf(t *testing.T, number, unit string) *model.Quantity {
	t.Helper()
	q, err := quantity.Make(quantity.Part{Number: number, Unit: unit})
	require.NoError(t, err)
	return &model.Quantity{Quantity: q}
}

// What no scale takes is weighed in several goes on the largest, and is shown as that shows it.
func TestAWeightIsRoundedOnceToItsScale(t *testing.T) {
	home := &model.House{Scales: []*model.Scale{{Name: "kit", Division: quantityOf(t, "50", "g"), Holds: quantityOf(t, "10", "kg")}}}
	h := Of(&model.Process{House: home})
	assert.Equal(t, "8.45 kg", Weighed(h, 8.465))
	assert.Equal(t, "10.45 kg", Weighed(h, 10.465))
	assert.Equal(t, "10.5 kg", Weighed(Of(&model.Process{House: &model.House{}}), 10.465))
}

func TestTheBagIsToldInItsOwnUnit(t *testing.T) {
	home := &model.House{Scales: []*model.Scale{{Name: "bench", Division: quantityOf(t, "0.1", "oz")}}}
	p := &model.Process{House: home, Charge: quantityOf(t, "1", "t"), Bag: quantityOf(t, "4", "oz")}
	assert.Equal(t, "5.0 oz", Bag(Of(p), 0.1415))
	assert.Equal(t, "142 g", Weighed(Of(p), 0.1415))
	assert.Equal(t, "142 g", Bag(OfBatch(p, &model.Batch{Bag: quantityOf(t, "100", "g")}), 0.1415))
}
