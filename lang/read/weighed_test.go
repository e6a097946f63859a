package read

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
)

// weighing gives the readings of a record in a house with a tub and two scales.
func weighing(t *testing.T, lines string) (*model.Batch, []*model.Weighed) {
	t.Helper()
	const house = "vessel \"tub\" { holds 20 l; weighs 2 lb 3 oz }\nscale \"kitchen\" { division 1 g; holds 5 kg }\nscale \"barn\" { division 0.5 kg; holds 100 kg }\n"
	h, found := Load("main.malt", []byte(house+batchOf(lines)), ".", loft(t))
	for _, f := range found {
		require.Equal(t, unusedDefinition.Name, f.Rule, f.Message)
	}
	require.Len(t, h.Batches, 1)
	var list []*model.Weighed
	for _, x := range h.Batches[0].Readings {
		list = append(list, x.(*model.Weighed))
	}
	return h.Batches[0], list
}

// 2 lb 3 oz are 35 oz, 0.99223 kg.
func TestAGrossWeightHasItsVesselTakenOff(t *testing.T) {
	b, x := weighing(t, "  weighed 8.33 kg in \"tub\" on \"barn\" after soak 1\n  weighed 7.34 kg after soak 1\n")
	net, _, can := b.Net(x[0])
	assert.True(t, can)
	assert.InDelta(t, 8.33-35*0.028349523125, net, 1e-9)
	assert.Equal(t, "barn", b.ScaleOf(x[0]).Name)
	net, _, _ = b.Net(x[1])
	assert.Equal(t, 7.34, net, "what does not say in what it was weighed is drained grain, whatever the house says")
	assert.Nil(t, b.ScaleOf(x[1]), "one of two scales")
}

// The tare of a bag is in every weight of the bag, what that stands in too; a batch in a
// tub has none of it.
func TestTheTareIsThatOfTheBagWhereThereIsOne(t *testing.T) {
	b, x := weighing(t, "  bag 100 g at the start\n  tare 8 g\n  weighed 8.33 kg in \"tub\" after soak 1\n  weighed bag 131 g after soak 1\n  weighed bag 1.123 kg in \"tub\" after soak 1\n")
	for i, want := range []float64{8.33 - 35*0.028349523125, 0.123, 1.123 - 0.008 - 35*0.028349523125} {
		net, _, can := b.Net(x[i])
		assert.True(t, can)
		assert.InDelta(t, want, net, 1e-9)
	}
}

// The process has a bag: a record that weighs the batch alone has the tare of a vessel, as
// it had before the process said so.
func TestABagOfTheProcessServesItsRecords(t *testing.T) {
	text := func(lines string) string {
		return strings.Replace(batchOf(lines), "  steep", "  bag 100 g at the start\n  steep", 1)
	}
	h, found := Load("main.malt", []byte(text("  tare 1 kg\n  weighed 8.34 kg after soak 1\n")), ".", loft(t))
	require.Empty(t, found)
	b := h.Batches[0]
	net, _, _ := b.Net(b.Readings[0].(*model.Weighed))
	assert.InDelta(t, 7.34, net, 1e-9)
	assert.Nil(t, b.BagTare())
	h, found = Load("main.malt", []byte(text("  tare 8 g\n  weighed 7.34 kg after soak 1\n  weighed bag 131 g after soak 1\n")), ".", loft(t))
	require.Empty(t, found)
	b = h.Batches[0]
	net, _, _ = b.Net(b.Readings[0].(*model.Weighed))
	assert.InDelta(t, 7.34, net, 1e-9)
	net, raw, can := b.Net(b.Readings[1].(*model.Weighed))
	assert.InDelta(t, 0.123, net, 1e-9)
	assert.Equal(t, 0.1, raw.SI)
	assert.True(t, can)
}

func TestTheFinestScaleThatTakesAWeightIsItsScale(t *testing.T) {
	b, _ := weighing(t, "")
	assert.Equal(t, "kitchen", b.Process.House.Scale(4.9).Name)
	assert.Equal(t, "barn", b.Process.House.Scale(5.1).Name)
	assert.Nil(t, b.Process.House.Scale(101))
}
