package read

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/source/golden"
)

func record(t *testing.T, lines string) *model.Batch {
	t.Helper()
	h, found := Load("main.malt", []byte(soakedThrice+"batch \"26-03\" of \"Loft pale\" {\n"+lines+"}\n"), ".", loft(t))
	require.Empty(t, golden.Findings(found))
	require.Len(t, h.Batches, 1)
	return h.Batches[0]
}

func at(text string) time.Time {
	t, err := time.ParseInLocation("2006-01-02 15:04", text, time.Local)
	if err != nil {
		panic(err)
	}
	return t
}

func TestAShareOfKernelsIsACount(t *testing.T) {
	b := record(t, `  began 2026-03-06 07:00
  counted chit 91.3 % of 150 kernels at 2026-03-08 07:10
`)
	require.Len(t, b.Readings, 1)
	count := b.Readings[0].(*model.Counted)
	assert.Equal(t, 137.0, count.Kernels[0].SI, "to the nearest kernel")
	assert.Equal(t, "91.3 %", count.Kernels[0].String())
}

func TestABatchIsReadAsWritten(t *testing.T) {
	b := record(t, `  began 2026-03-06 07:00
  sample 20.00 g dried to 17.54 g
  bag 100 g at the start
  tare 8 g
  weighed bag 131 g at 14:05 after soak 1
  weighed 8.5 kg after soak 3
  counted chit 84 of 100 at 2026-03-08 07:10
  counted acrospire 2 6 22 55 13 2 at 2026-03-12 08:00
  felt rub chalky at 08:05
  read air-off 41 °C at 2026-03-13T15:00
  turned at 21:05
  weighed 4.92 kg clean malt at 05:00
  changed soak 3 to 5 h because "left for work"
  changed dry to air-on 48 to 50 °C because "so"
`)
	assert.Equal(t, "26-03", b.Name)
	assert.Equal(t, "Loft pale", b.Process.Name)
	assert.Equal(t, at("2026-03-06 07:00"), b.Began.Time)
	assert.Equal(t, "2026-03-06 07:00", b.Began.Place.Text())
	assert.InDelta(t, 0.01754, b.Sample.Dry.SI, 1e-12)
	assert.InDelta(t, 0.1, b.Bag.SI, 1e-12)
	assert.InDelta(t, 0.008, b.Tare.SI, 1e-12)
	require.Len(t, b.Readings, 8)
	bag, soak, chit, shoot, rub, off, turned, malt := b.Readings[0], b.Readings[1], b.Readings[2], b.Readings[3], b.Readings[4], b.Readings[5], b.Readings[6], b.Readings[7]
	assert.True(t, model.OfBag(bag))
	assert.Equal(t, model.StepName{Kind: model.Word{Text: "soak", Place: model.After(bag).Kind.Place}, Number: 1, Place: model.After(bag).Place}, *model.After(bag))
	assert.Equal(t, "soak 1", model.After(bag).Place.Text())
	assert.True(t, soak.When().IsZero(), "it says its step alone")
	count := chit.(*model.Counted)
	assert.Equal(t, 84.0, count.Kernels[0].SI)
	assert.Equal(t, 100.0, count.Of.SI)
	shoots := shoot.(*model.Counted).Kernels
	require.Len(t, shoots, 6)
	assert.Equal(t, 55.0, shoots[3].SI)
	assert.Equal(t, "chalky", model.Rub(rub))
	assert.Equal(t, at("2026-03-12 08:05"), rub.When().Time)
	assert.Equal(t, "air-off", model.Thermometer(off).Where)
	assert.True(t, model.Is[*model.Turned](turned))
	assert.Equal(t, at("2026-03-13 21:05"), turned.When().Time)
	assert.True(t, model.Clean(malt))
	assert.Equal(t, at("2026-03-14 05:00"), malt.When().Time, "the night went by")
	require.Len(t, b.Changes, 2)
	assert.Equal(t, 3, b.Changes[0].Step.Number)
	assert.InDelta(t, 5*3600, b.Changes[0].To.Low.SI, 1e-9)
	assert.Equal(t, "left for work", b.Changes[0].Because)
	assert.Equal(t, "air-on", b.Changes[1].To.Where)
	assert.InDelta(t, 50+273.15, b.Changes[1].To.High.SI, 1e-9)
}

// A record stands in a file of its own, and its process is found through use; it is
// judged where it stands, not here.
func TestABatchFindsItsProcessInAnotherFile(t *testing.T) {
	in := loft(t)
	in["pale.malt"] = soakedThrice + "limits { bed-temperature at most 22 °C }\n"
	h, found := Load("batch.malt", []byte("use \"pale.malt\"\nbatch \"26-03\" of \"Loft pale\" { began 2026-03-06 07:00 }\n"), ".", in)
	for _, f := range found {
		assert.Equal(t, limitsChanged.Name, f.Rule)
	}
	require.Len(t, h.Batches, 1)
	require.NotNil(t, h.Batches[0].Process)
	assert.InDelta(t, 6, h.Batches[0].Process.Charge.SI, 1e-12)
	assert.Empty(t, h.Processes)
	assert.Empty(t, h.Accepts)
}

func TestOneBadLineCostsThatLineAlone(t *testing.T) {
	h, found := Load("main.malt", []byte(batchOf("  counted chit 84 of 80 at 08:00\n  turned at 09:00\n  weighed 7 stone at 10:00\n  turned at 11:00\n")), ".", loft(t))
	assert.Len(t, found, 2)
	assert.Len(t, h.Batches[0].Readings, 2)
	assert.True(t, h.Batches[0].Broken)
}

func TestExampleBatchesAreRead(t *testing.T) {
	files, err := filepath.Glob("../../examples/batches/26-*.malt")
	require.NoError(t, err)
	require.Len(t, files, 3)
	for _, path := range files {
		h := loadFile(t, path)
		require.Len(t, h.Batches, 1)
		assert.Greater(t, len(h.Batches[0].Readings), 30)
		assert.Equal(t, "Loft pale", h.Batches[0].Process.Name)
	}
}

// The record stands beside its house, as in the folder of a maltster.
func TestTheHouseOfTheExampleBatchesIsThatOfTheExamples(t *testing.T) {
	for _, name := range []string{"loft.malt", "pale.malt"} {
		text, err := os.ReadFile(filepath.Join("../../examples", name))
		require.NoError(t, err)
		golden.File(t, filepath.Join("../../examples/batches", name), string(text))
	}
}
