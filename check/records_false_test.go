package check

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source/golden"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/infer/evidence/evidencetest"
)

// saidOf lists what check says of a text among the batches of the examples, in its own file.
func saidOf(t *testing.T, folder, text string) (said []string) {
	t.Helper()
	root, err := read.OpenRoot(folder)
	require.NoError(t, err)
	defer root.Close()
	for _, f := range File("x.malt", []byte(text), ".", root, Options{}).Findings {
		if f.Place.File.Name() == "x.malt" && f.Severity > finding.Note {
			said = append(said, fmt.Sprintf("%s: %s [%s]", f.Place.Text(), f.Message, f.Rule))
		}
	}
	return said
}

// A record is checked while it grows: after each line it is as honest as at its end. The
// long run stops behind every line.
func TestARecordUnderWayRaisesNothing(t *testing.T) {
	if testing.Short() || golden.Raced {
		t.Skip("dozens of records; go test without -short and -race runs them")
	}
	every := 12 // lines
	if golden.Long() {
		every = 1
	}
	for _, file := range []string{"26-03", "26-04", "26-05"} {
		text, err := os.ReadFile("../examples/batches/" + file + ".malt")
		require.NoError(t, err)
		lines := strings.Split(strings.TrimSuffix(string(text), "}\n"), "\n")
		for n := 12; n < len(lines); n += every {
			so := strings.Join(lines[:n], "\n") + "\n}\n"
			assert.Empty(t, saidOf(t, "../examples/batches", so), "%s up to: %s", file, lines[n-1])
		}
	}
}

// Records that were invented from a truth drawn from what is usual, with the scatter that
// scales, thermometers and counts have, raise nothing either.
func TestInventedRecordsRaiseNothing(t *testing.T) {
	if testing.Short() || golden.Raced {
		t.Skip("dozens of records; go test without -short and -race runs them")
	}
	seeds := uint64(1)
	if golden.Long() {
		seeds = 4
	}
	root, err := read.OpenRoot("../examples")
	require.NoError(t, err)
	defer root.Close()
	for _, example := range []string{"pale", "munich", "floor-kiln"} {
		text, err := os.ReadFile("../examples/" + example + ".malt")
		require.NoError(t, err)
		h, _ := read.Load(example+".malt", text, ".", root)
		for seed := range seeds {
			b := inventedOf(t, h.Processes[0], seed)
			assert.Empty(t, saidOf(t, "../examples", fmt.Sprintf("use %q\n", example+".malt")+b.Text), "%s, seed %d:\n%s", example, seed, b.Text)
		}
	}
}

func inventedOf(t *testing.T, p *model.Process, seed uint64) *evidencetest.Batch {
	t.Helper()
	began := time.Date(2026, 3, 6, 7, 0, 0, 0, time.Local)
	tr, err := evidence.New(&model.Batch{Process: p, Began: model.Instant{Time: began}}, time.Time{})
	require.NoError(t, err)
	r, z := rand.New(rand.NewPCG(seed, 9)), make([]float64, len(tr.Axes))
	for i := range z {
		z[i] = min(max(r.NormFloat64(), -2), 2)
	}
	b, err := evidencetest.Of(p, "x", began, evidencetest.Truth{Options: tr.Options(z), Offset: tr.Offset(z)}, seed)
	require.NoError(t, err)
	return b
}
