package read

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
)

func TestTwoLotsAreOneMixture(t *testing.T) {
	const lots = "grain \"A\" { species barley; moisture 10 %; treated no; ergot none }\ngrain \"B\" { species barley; moisture 14 %; treated unknown; mould found }\n"
	h, found := load(lots + "process \"p\" { from 3 kg of \"A\"; from 1000 g of \"B\" }\n")
	require.Len(t, h.Processes, 1, golden.Findings(found))
	p := h.Processes[0]
	assert.Equal(t, "4 kg", p.Charge.String())
	assert.Equal(t, "A and B", p.Grain.Name)
	assert.InDelta(t, 0.11, p.Grain.Moisture.SI, 1e-12)
	assert.Equal(t, []string{"unknown", "", "found"}, []string{p.Grain.Treated.Text, p.Grain.Ergot.Text, p.Grain.Mould.Text})
	require.Len(t, p.Lots, 2)
	assert.Same(t, h.Grains[1], p.Lots[1].Grain)
	assert.False(t, has(found, unusedDefinition.Name), golden.Findings(found))
	h, _ = load(lots + "process \"p\" { from 3 kg of \"A\" }\n")
	assert.Same(t, h.Grains[0], h.Processes[0].Grain)
	assert.Empty(t, h.Processes[0].Lots)
	_, found = load(lots + "process \"p\" { from 3 kg of \"A\"; from 1 kg of \"A\" }\n")
	assert.True(t, has(found, saidTwice.Name), golden.Findings(found))
	_, found = load(lots + "process \"p\" { from 3 kg of \"A\"; from 1 kg of \"C\" }\n")
	assert.True(t, has(found, unknownName.Name), golden.Findings(found))
	_, found = load("grain \"A\" { species barley; delivered 2 kg on 2026-02-01 }\ngrain \"B\" { species barley }\nprocess \"p\" { from 3 kg of \"A\"; from 1 kg of \"B\" }\n")
	assert.True(t, has(found, lotOverdrawn.Name), golden.Findings(found))
}
