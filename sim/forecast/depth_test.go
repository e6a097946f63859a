package forecast

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A charge lies on a kiln of the same area as deep as it lay in the box at last: what grew
// lifted it there, and what dries lets it down here. The tonne of barley on 4 m² is 0.5 m
// deep when it is filled in, and 0.62 m when it has grown and dried to 41 %.
func TestOneChargeIsAsDeepOnTheKilnAsInTheBox(t *testing.T) {
	f, err := Run(load(t, `grain "lot" { species barley; moisture 12 %; kernel-weight 45 g; germination 97 % of 100 kernels; treated no }
site "hall" { air 14 °C; humidity 95 %; water 12 °C; altitude 0 m }
vessel "tank" { holds 3000 l }
floor "box" { area 4 m2; airflow 700 m3/h; cooler 20 kW; heater 20 kW; returns 80 % }
kiln "kiln" { area 4 m2; airflow 4500 m3/h; heater 110 kW; draught fan }
process "tonne" {
  make pale malt
  from 1 t of "lot"
  at "hall"
  steep in "tank" { soak 8 h in water at 14 °C; rest 10 h in air at 14 °C; soak 8 h in water at 14 °C; rest 8 h in air at 14 °C; soak 4 h in water at 14 °C }
  germinate on "box" { hold bed at 15 to 17 °C; turn every 12 h; until acrospire at least 3/4; allow 3 to 12 days }
  kiln in "kiln" { dry at air-on 55 °C until moisture at most 10 % allow 6 to 40 h }
}
`), Options{})
	require.NoError(t, err)
	require.Len(t, f.Pieces, 1)
	require.Len(t, f.Kilns, 1)
	box, kiln := f.Pieces[0], f.Kilns[0]
	assert.InDelta(t, 0.51, box.Depth, 0.02)
	assert.InDelta(t, 0.62, box.Deepest, 0.03)
	assert.InEpsilon(t, box.Deepest, kiln.Depth, 0.02)
	assert.InDelta(t, 0.68, kiln.Dried/kiln.Depth, 0.05)
}
