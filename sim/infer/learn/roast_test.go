package learn

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
)

// A house learns from a roast what is forecast of it: nothing that was read or weighed where the model ends
// moves a factor, and none of it leaves the batch out. (Weights that are near in time count for less each, and these are not.)
func TestWhatIsNotForecastTeachesNothing(t *testing.T) {
	const text = `site "Shed" { air 18 °C; water 12 °C; humidity 60 %; altitude 100 m }
kiln "roaster" { holds 20 l; tumbles yes; airflow 4 m3/h; heater 2 kW; reaches 60 to 230 °C; fired gas by indirect }
grain "Pale" { species barley; already kilned malt; moisture 5 % }
process "Black" {
  make black malt
  from 4 kg of "Pale"
  at "Shed"
  kiln in "roaster" { roast at malt 150 °C for 30 min; roast at malt 215 °C for 40 min; cool to malt 30 °C }
  store in "tin" for at least 2 weeks
}
batch "C1" of "Black" {
  began 2026-03-01 10:00
  weighed 3.90 kg at 10:30 after roast 1
`
	before, err := Of(context.Background(), []*model.Batch{batchOf(t, text+"}\n")}, Options{})
	require.NoError(t, err)
	behind, err := Of(context.Background(), []*model.Batch{batchOf(t, text+"  read malt 190 °C at 11:00\n  weighed 2.9 kg at 2026-03-02 10:30 after cool\n}\n")}, Options{})
	require.NoError(t, err)
	require.Empty(t, behind.Left)
	require.Len(t, behind.Factors, len(before.Factors))
	for i, f := range before.Factors {
		assert.InDelta(t, f.Value, behind.Factors[i].Value, 1e-6*(1+f.Value), f.Which)
	}
}
