package check

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/source/spoil"
)

// FuzzCheck checks any text as a process file: it must end, and every finding must
// be about words of a file that was read, in one sentence that is safe to show. Texts
// are short, as in FuzzParse and for the same reason, but may use whole files; what
// breaks in whole processes is hunted by the loop over commands in cmd/maltwright.
func FuzzCheck(f *testing.F) {
	files := house{}
	for _, pattern := range []string{"../examples/*.malt", "../examples/batches/*.malt", broken + "/*.malt", "testdata/*/*.malt"} {
		paths, err := filepath.Glob(pattern)
		require.NoError(f, err)
		for _, path := range paths {
			text, err := os.ReadFile(path)
			require.NoError(f, err)
			for _, piece := range spoil.Pieces(string(text), longestFuzzed) {
				f.Add(piece)
			}
			files[filepath.Base(path)] = string(text)
		}
	}
	f.Add(smallest)
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > longestFuzzed {
			return
		}
		hangs := time.AfterFunc(patience, func() { panic("the check does not end") })
		defer hangs.Stop()
		looked := File("fuzzed.malt", []byte(text), ".", files, Options{NoForecast: true})
		if long(looked.House) {
			return
		}
		r := File("fuzzed.malt", []byte(text), ".", files, Options{})
		for _, found := range r.Findings {
			sound(t, found)
		}
	})
}

// longestFuzzed is enough for a process of every stage, written close.
const longestFuzzed = 300 // bytes

// smallest is a whole process that is forecast, over the lot, the floor and the kiln
// of examples/loft.malt.
const smallest = `use "loft.malt"
process "p" {
make pale malt
from 5 kg of "Far field 2026"
steep in "blue tub" { soak 7 h in water at 13 °C }
germinate on "growing tray" { hold bed at 15 °C; for 4 days }
kiln in "tray kiln" { dry at air-on 55 °C for 20 h }
}
`

// patience is far more than any check takes; the fuzzer itself waits for ever.
const patience = 20 * time.Second

func sound(t *testing.T, f finding.Finding) {
	inside(t, f.Place)
	require.NotEmpty(t, f.Message)
	require.NotEmpty(t, f.Rule)
	for _, r := range f.Related {
		inside(t, r.Place)
	}
	for _, e := range f.Fixes {
		inside(t, e.Place)
	}
}

func inside(t *testing.T, p source.Place) {
	require.True(t, p.Known())
	require.LessOrEqual(t, 0, p.Start)
	require.LessOrEqual(t, p.Start, p.End)
	require.LessOrEqual(t, p.End, p.File.Size())
}

// long tells whether a house asks for more than a year of work, or for more than
// a few processes: such a forecast ends, but not while a fuzzer waits.
func long(h *model.House) bool {
	total := 0.0
	for _, p := range h.Processes {
		for _, st := range p.Stages {
			total += stepsTime(model.StepsOf(st))
		}
	}
	return total > 365*86400 || len(h.Processes) > 4
}

func stepsTime(steps []model.Step) float64 {
	total := 0.0
	for _, s := range steps {
		times := 1.0
		if r, ok := s.(*model.Repeat); ok && r.Times != nil {
			times = r.Times.Range.High.SI
		}
		if s.Ends().For != nil {
			total += times * s.Ends().For.SI
		}
		total += times * (stepsTime(model.Inner(s)) + 60)
	}
	return total
}

func TestTheSmallestProcessIsForecast(t *testing.T) {
	loft, err := os.ReadFile("../examples/loft.malt")
	require.NoError(t, err)
	require.LessOrEqual(t, len(smallest), longestFuzzed)
	r := File("smallest.malt", []byte(smallest), ".", house{"loft.malt": string(loft)}, Options{})
	for _, u := range r.NotJudged {
		require.NotEqual(t, "forecast", u.Rule, u.Reason)
	}
}
