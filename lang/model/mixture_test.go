package model

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/quantity"
)

func amount(t *testing.T, si float64, unit string) *Quantity {
	t.Helper()
	q, err := quantity.In(si, unit)
	require.NoError(t, err)
	return &Quantity{Quantity: q}
}

// 3 kg of 10 % moisture hold 2.7 kg of dry matter, 1 kg of 14 % hold 0.86.
func TestAMixtureIsWeightedByDryMatter(t *testing.T) {
	a := &Grain{Name: "A", Species: Word{Text: "barley"}, Moisture: amount(t, 0.10, "%"), Protein: amount(t, 0.10, "%"), KernelWeight: amount(t, 0.040, "g"), Ergot: Word{Text: "none"},
		Germination: []GerminationTest{{Share: *amount(t, 0.98, "%"), Kernels: amount(t, 200, "kernels"), Water: amount(t, 4e-6, "ml"), On: Word{Text: "2026-02-02"}}, {Share: *amount(t, 0.90, "%"), Water: amount(t, 8e-6, "ml")}}}
	b := &Grain{Name: "B", Species: Word{Text: "barley"}, Moisture: amount(t, 0.14, "%"), Protein: amount(t, 0.12, "%"), KernelWeight: amount(t, 0.050, "g"), Ergot: Word{Text: "found"},
		Germination: []GerminationTest{{Share: *amount(t, 0.90, "%"), Kernels: amount(t, 100, "kernels"), Water: amount(t, 4e-6, "ml"), On: Word{Text: "2026-01-05"}}}}
	list := []Taken{{Weight: amount(t, 3, "kg"), Grain: a}, {Weight: amount(t, 1, "kg"), Grain: b}}
	m := Mixed(list)
	assert.Equal(t, "A and B", m.Name)
	assert.InDelta(t, 0.11, m.Moisture.SI, 1e-12, "0.44 kg of water in 4 kg")
	assert.InDelta(t, (2.7*0.10+0.86*0.12)/3.56, m.Protein.SI, 1e-12)
	assert.InDelta(t, 4/(3/0.040+1/0.050), m.KernelWeight.SI, 1e-12, "95,000 kernels in 4 kg")
	require.Len(t, m.Germination, 1, "the second lot was not tested in 8 ml")
	test := m.Germination[0]
	assert.InDelta(t, (2.7*0.98+0.86*0.90)/3.56, test.Share.SI, 1e-12)
	assert.Equal(t, 100.0, test.Kernels.SI, "as narrowly as the worst")
	assert.Equal(t, "2026-01-05", test.On.Text, "as long ago")
	assert.Equal(t, "found", Worst(list, func(g *Grain) Word { return g.Ergot }, "found", "", "none").Text)
	assert.Empty(t, Worst(list, func(g *Grain) Word { return g.Mould }, "found", "", "none").Text)

	b.Protein, b.Moisture, b.KernelWeight = nil, nil, nil
	m = Mixed(list)
	assert.Nil(t, m.Protein)
	assert.Nil(t, m.Moisture)
	assert.Nil(t, m.KernelWeight)
	b.Germination[0].Water = amount(t, 6e-6, "ml")
	assert.Nil(t, Mixed(list).Germination[0].Water, "no water that both were tested in")
	b.Germination = nil
	assert.Empty(t, Mixed(list).Germination)

	p := &Process{Charge: amount(t, 4, "kg"), Grain: m, Lots: list}
	assert.Equal(t, 1.0, p.TakenOf(b))
	p = &Process{Charge: amount(t, 4, "kg"), Grain: a}
	assert.Equal(t, 4.0, p.TakenOf(a))
	assert.Zero(t, p.TakenOf(b))
	assert.Empty(t, (&Process{}).Taken())
}
