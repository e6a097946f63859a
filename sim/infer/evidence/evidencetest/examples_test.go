package evidencetest

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"maltwright/lang/layout"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
)

// The loft as it really is, which no file of the examples says: its thermometer shows
// too much, its kiln dries slower than the model's, and its lot drinks a little faster.
var loft = forecast.Options{Uptake: new(1.08), Growth: new(0.94), Respiration: new(1.1), Drying: new(0.88)}

const loftOffset = 0.7 // K

var loftBatches = []struct {
	file, name, began string
	sample            float64
	head              string
	air, band         float64
	changed           string
	seed              uint64
}{
	{"26-03.malt", "26-03", "2026-03-06 07:00", 0.1230, "# The first pale malt of the spring.\n", -0.2, 0.1, "", 3},
	{"26-04.malt", "26-04", "2026-03-20 07:00", 0.1250, "# A cold week: it grew some hours longer.\n", -0.8, -0.6, "", 4},
	{"26-05.malt", "26-05", "2026-04-10 06:30", 0.1215, "# The third soak was cut short.\n", 0.6, 0.4, `changed soak 3 to 6 h because "it had its weight an hour early"`, 5},
}

const notice = "# Invented: no grain was malted. A forecast of a house that only the test knows which\n# makes this file, with the scatter that scales, thermometers and counting have.\n"

// The porch as it really is: its dryer is slow and its oven quick, and its thermometer
// shows too little.
var porchBatches = []struct {
	file, name, began string
	head              string
	air, band         float64
	seed              uint64
}{
	{"26-02.malt", "26-02", "2026-10-12 06:30", "# Dried in the dryer, cured in the oven.\n", 0.2, 0.1, 12},
	{"26-03.malt", "26-03", "2026-10-24 06:30", "# The nights were cold.\n", -0.7, 0.3, 13},
	{"26-04.malt", "26-04", "2026-11-05 06:30", "# The third of the fall.\n", -0.3, -0.4, 14},
}

const porchOffset = -0.8 // K

// porch is how the house really is, for a process of it.
func porch(p *model.Process) forecast.Options {
	kilns := model.Every[*model.Kilning](p)
	return forecast.Options{Growth: new(1.06), Respiration: new(0.9),
		DryingOf: map[*model.Kiln]float64{kilns[0].Kiln: 0.8, kilns[1].Kiln: 1.3}}
}

func TestTheRecordsOfThePorchAreInvented(t *testing.T) {
	folder := filepath.Join("..", "..", "..", "..", "examples", "home")
	root, err := read.OpenRoot(folder)
	require.NoError(t, err)
	defer root.Close()
	for _, x := range porchBatches {
		began, err := time.ParseInLocation("2006-01-02 15:04", x.began, time.UTC)
		require.NoError(t, err)
		h, found := read.Load("x.malt", []byte("use \"porch.malt\"\nbatch \"x\" of \"Porch pale\" { began "+x.began+" }\n"), ".", root)
		require.Empty(t, found)
		p := h.Batches[0].Process
		truth := Truth{Options: porch(p), Offset: porchOffset, Scatter: 0.4, Home: true}
		truth.Options.AirAt, truth.Options.BandAt = x.air, x.band
		b, err := Of(p, x.name, began, truth, x.seed)
		require.NoError(t, err)
		written(t, filepath.Join(folder, x.file), x.head+notice+"use \"porch.malt\"\n\n"+b.Text)
	}
}

// written holds a record among the examples to a text, laid out.
func written(t *testing.T, path, text string) {
	t.Helper()
	tree, _ := syntax.Parse(source.New(filepath.Base(path), []byte(text)))
	text = string(layout.Write(tree))
	if os.Getenv("MALTWRIGHT_UPDATE") != "" {
		require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, string(want), text)
}

// pale gives the pale malt's process with the sample of a batch, and its changes.
func pale(t *testing.T, statements string) (*model.Process, []model.Change) {
	t.Helper()
	root, err := read.OpenRoot(filepath.Join("..", "..", "..", "..", "examples"))
	require.NoError(t, err)
	defer root.Close()
	h, found := read.Load("x.malt", []byte("use \"pale.malt\"\nbatch \"x\" of \"Loft pale\" {\n"+statements+"}\n"), ".", root)
	require.Empty(t, found)
	trial, err := evidence.New(h.Batches[0], time.Time{})
	require.NoError(t, err)
	return trial.Process, h.Batches[0].Changes
}

func TestTheRecordsOfTheExamplesAreInvented(t *testing.T) {
	for _, x := range loftBatches {
		began, err := time.ParseInLocation("2006-01-02 15:04", x.began, time.UTC)
		require.NoError(t, err)
		p, changes := pale(t, fmt.Sprintf("  began %s\n  sample 20.00 g dried to %.2f g\n  %s\n", x.began, 20*(1-x.sample), x.changed))
		truth := Truth{Options: loft, Offset: loftOffset, Sample: x.sample, Scatter: 0.4}
		truth.Options.AirAt, truth.Options.BandAt = x.air, x.band
		truth.Changes = changes
		b, err := Of(p, x.name, began, truth, x.seed)
		require.NoError(t, err)
		if x.changed != "" {
			b.Text = strings.TrimSuffix(b.Text, "}\n") + "\n  " + x.changed + "\n}\n"
		}
		written(t, filepath.Join("..", "..", "..", "..", "examples", "batches", x.file), x.head+notice+"use \"pale.malt\"\n\n"+b.Text)
	}
}
