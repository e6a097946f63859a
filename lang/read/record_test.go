package read

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source/golden"
)

func TestABatchGoesByItsOwnChargeAndLot(t *testing.T) {
	text := soakedThrice + "grain \"Mill lane\" { species barley; moisture 13.1 % }\n" +
		"batch \"a\" of \"Loft pale\" { began 2026-03-06 07:00; from 5.8 kg of \"Mill lane\"; weighed 13 kg after soak 1 }\n" +
		"batch \"b\" of \"Loft pale\" { began 2026-03-06 07:00; weighed 14 kg after soak 1 }\n"
	h, found := Load("main.malt", []byte(text), ".", loft(t))
	require.Empty(t, golden.Findings(found))
	a, b := h.Batches[0], h.Batches[1]
	assert.Equal(t, 5.8, a.Process.Charge.SI)
	assert.Equal(t, "Mill lane", a.Process.Grain.Name)
	assert.Equal(t, "Loft pale", a.Process.Name)
	assert.Equal(t, 6.0, b.Process.Charge.SI, "the process itself is as it was")
	assert.Equal(t, "Far field 2026", h.Processes[0].Grain.Name)
	_, raw, _ := a.Net(a.Readings[0].(*model.Weighed))
	assert.Equal(t, 5.8, raw.SI)
}

// A weight that the charge of the process could have, and that of the batch cannot.
func TestAWeightIsJudgedByTheChargeOfTheBatch(t *testing.T) {
	text := soakedThrice + "batch \"a\" of \"Loft pale\" { began 2026-03-06 07:00; from 3 kg of \"Far field 2026\"; weighed 8.5 kg after soak 3 }\n"
	_, found := Load("main.malt", []byte(text), ".", loft(t))
	require.Len(t, found, 1)
	assert.Contains(t, found[0].Message, "which 3 kg of raw grain cannot")
}

func TestWhatARecordKeepsBesideItsReadings(t *testing.T) {
	b := record(t, `  began 2026-03-06 07:00 by "AK"
  pinned "3f9a2c71d0e4" from "1a2b3c4"
  read bed 17 °C at 2026-03-08 07:00 by "BL"
  remark "smells of cucumber" at 08:00 by "AK"
  changed soak 3 to 5 h because "left for work" by "AK"
  tested friability 86 % by "EBC 4.15" at 2026-04-01 10:00
  tested colour 2 °L at 10:05
  tested moisture 4.5 % dry basis at 10:10
`)
	assert.Equal(t, "3f9a2c71d0e4", b.Pinned.Print.Text)
	assert.Equal(t, "1a2b3c4", b.Pinned.Revision.Text)
	require.Len(t, b.Readings, 1)
	require.Len(t, b.Remarks, 1)
	assert.Equal(t, "smells of cucumber", b.Remarks[0].Text.Text)
	assert.Equal(t, "AK", b.Remarks[0].By.Text)
	assert.Equal(t, at("2026-03-08 08:00"), b.Remarks[0].At.Time)
	assert.Equal(t, "AK", b.Changes[0].By.Text)
	require.Len(t, b.Tested, 3)
	assert.Equal(t, "EBC 4.15", b.Tested[0].Method.Text)
	assert.Empty(t, b.Tested[0].By.Text)
	assert.Equal(t, 0.86, b.TestOf("friability").Found.SI)
	assert.InDelta(t, 4.1, b.TestOf("colour").Found.SI, 1e-12, "2.65 × 2 − 1.2")
	assert.Equal(t, quantity.Share, b.TestOf("moisture").Found.Dimension)
	assert.InDelta(t, 4.5/104.5, b.TestOf("moisture").Found.SI, 1e-12)
	assert.Nil(t, b.TestOf("don"))
}

func TestAnAnalysisThatCannotBeIsNone(t *testing.T) {
	for line, want := range map[string]string{
		"tested friability 186 % at 10:00":          "outside 0 to 100 %",
		"tested colour 5.1 % at 10:00":              "is a share, and colour is tested in EBC or Lovibond",
		"tested diastatic 80 °L at 10:00":           "is a colour, and diastatic is tested in °WK or °Lintner",
		"tested friability 86 % dry basis at 10:00": "is of the dry matter, and friability is tested in",
		"tested extract 102 % dry basis at 10:00":   "outside 5 to 100 %",
		"tested moisture 93 % at 10:00":             "outside 0.1 to 60 %",
		"tested don 300 mg/kg at 10:00":             "outside 0 to 200 mg/kg",
		"tested friability at 10:00":                "tested needs what was found",
		"pinned \"3f9a\"":                           "no fingerprint",
		"tested smell 4 % at 10:00":                 "not one of the words",
		"remark \" \" at 10:00":                     "remark says nothing",
		"remark smells at 10:00":                    "what was noticed in quotes",
		"from 5.8 kg of \"Far feild 2026\"":         "no grain is called",
		"from 58000 t of \"Far field 2026\"":        "outside 2 g to 1000 t",
	} {
		_, found := Load("main.malt", []byte(soakedThrice+"batch \"a\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n  "+line+"\n}\n"), ".", loft(t))
		require.NotEmpty(t, found, line)
		assert.Contains(t, found[0].Message, want, line)
	}
}

func TestABatchOfTwoLotsIsOfTheirMixture(t *testing.T) {
	const lot = "grain \"Mill lane\" { species barley; moisture 14.4 %; delivered 1 kg on 2026-02-01 }\n"
	of := func(lines string) (*model.House, []finding.Finding) {
		return Load("main.malt", []byte(soakedThrice+lot+"batch \"a\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n"+lines+"}\n"), ".", loft(t))
	}
	h, found := of("  from 5 kg of \"Far field 2026\"\n  from 1 kg of \"Mill lane\"\n  weighed 9 kg after soak 2\n")
	require.Empty(t, golden.Findings(found))
	b := h.Batches[0]
	assert.Equal(t, "6 kg", b.Process.Charge.String())
	assert.InDelta(t, (5*0.124+0.144)/6, b.Process.Grain.Moisture.SI, 1e-12)
	require.Len(t, b.Process.Taken(), 2)
	assert.Equal(t, []float64{5, 1}, []float64{b.Process.Taken()[0].Weight.SI, b.Process.Taken()[1].Weight.SI})
	_, found = of("  from 4 kg of \"Far field 2026\"\n  from 2 kg of \"Mill lane\"\n")
	require.Len(t, found, 1, "of the one too much is taken")
	assert.Equal(t, lotOverdrawn.Name, found[0].Rule)
	_, found = of("  from 4 kg of \"Far field 2026\"\n  from 2 kg of \"Far field 2026\"\n")
	assert.True(t, has(found, saidTwice.Name), golden.Findings(found))
}

// A charge of the record's own is held against the house, on its own line.
func TestAnOwnChargeFitsTheHouse(t *testing.T) {
	for from, want := range map[string]string{"3 t": "at least 1.3 l is needed", "600 g": "1 to 700 kg is usual", "6 kg": "", "5 kg": ""} {
		_, found := Load("main.malt", []byte(soakedThrice+"batch \"a\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n  from "+from+" of \"Far field 2026\"\n}\n"), ".", loft(t))
		if want == "" {
			assert.Empty(t, golden.Findings(found), from)
			continue
		}
		require.Len(t, found, 1, from)
		assert.Equal(t, []string{outOfProportion.Name, from}, []string{found[0].Rule, found[0].Place.Text()})
		assert.Contains(t, found[0].Message, want)
	}
}

// What is a share of the dry matter anyway stays the number that it is.
func TestADryBasisOfTheDryMatterIsItself(t *testing.T) {
	h, found := Load("main.malt", []byte(soakedThrice+`grain "dry" { species barley; protein 11.1 % dry basis }
batch "a" of "Loft pale" {
  began 2026-03-06 07:00
  tested extract 82 % dry basis at 10:00
  tested protein 11 % dry basis at 10:00
}
`), ".", loft(t))
	require.Len(t, found, 1, "no process uses the lot")
	assert.InDelta(t, 0.82, h.Batches[0].TestOf("extract").Found.SI, 1e-12)
	assert.InDelta(t, 0.11, h.Batches[0].TestOf("protein").Found.SI, 1e-12)
	i := slices.IndexFunc(h.Grains, func(g *model.Grain) bool { return g.Name == "dry" })
	assert.InDelta(t, 0.111, h.Grains[i].Protein.SI, 1e-12)
}

func TestALotSaysWhatCameInAndWhereItLies(t *testing.T) {
	h, found := load(`grain "lot" {
  species   barley
  delivered 2.5 t from "Hill farm" on 2026-02-01 as "L-118"
  delivered 500 kg
  store     in "silo 2"
}`)
	require.Empty(t, golden.Findings(found))
	g := h.Grains[0]
	require.Len(t, g.Delivered, 2)
	d := g.Delivered[0]
	assert.Equal(t, []string{"Hill farm", "2026-02-01", "L-118"}, []string{d.From.Text, d.On.Text, d.As.Text})
	assert.Equal(t, 2500.0, d.Weight.SI)
	assert.Equal(t, 500.0, g.Delivered[1].Weight.SI)
	assert.Equal(t, "silo 2", g.Store.Text)
}
