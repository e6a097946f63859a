package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/syntax/pounds"
)

// metricFigure is a figure in a unit that a house of pounds and feet does not read. Power and heat
// are W and kWh in every house, since heaters and meters are marked so.
var metricFigure = regexp.MustCompile(`[0-9] ?(°C|kg|g|t|m2|m²|cm2|m3|m³|m3/h|m/s|l|hl|ml|cm|mm|m)([^\w/²³]|$)|°C|\bkg\b|\btonne|[0-9] K\b`)

// inPounds is a folder with the examples, written in °F, lb and ft.
func inPounds(t *testing.T) (folder, all string) {
	t.Helper()
	folder = t.TempDir()
	examples := os.DirFS("../../examples")
	require.NoError(t, fs.WalkDir(examples, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			if d != nil && d.Name() == "broken" {
				return fs.SkipDir
			}
			return err
		}
		text, err := fs.ReadFile(examples, path)
		if err != nil {
			return err
		}
		written := pounds.Written(string(text))
		all += written
		if err := os.MkdirAll(filepath.Join(folder, filepath.Dir(path)), 0o755); err != nil {
			return err
		}
		return os.WriteFile(filepath.Join(folder, path), []byte(written), 0o644)
	}))
	written := pounds.Written(few)
	require.NoError(t, os.WriteFile(filepath.Join(folder, "batches/few.malt"), []byte(written), 0o644))
	return folder, all + written
}

// few is a batch of which so little was read that a fit of it takes no time.
const few = `use "pale.malt"
batch "few" of "Loft pale" {
  began   2026-03-20 07:00
  read    water 13.6 °C at 07:01
  weighed 7.41 kg at 14:00 after soak 1
  weighed 8.66 kg at 2026-03-21 06:00 after soak 2
  read    bed 17.8 °C at 2026-03-22 06:20
  counted acrospire 2 20 64 14 0 0 at 2026-03-24 08:00
}
`

// Who writes °F, lb and ft is told nothing in °C, kg and m, by any command.
func TestCommandsSpeakInTheUnitsOfTheFile(t *testing.T) {
	t.Parallel()
	folder, all := inPounds(t)
	for _, command := range []string{
		"check pale.malt munich.malt crystal.malt dryer.malt floor-kiln.malt oats.malt oven.malt wheat.malt deep-bed.malt box.malt batches/26-03.malt",
		"forecast pale.malt", "forecast pale.malt --spread --worst --members 10", "forecast floor-kiln.malt --start 2026-03-06T07:00",
		"forecast oven.malt", "forecast deep-bed.malt", "forecast box.malt", "forecast crystal.malt",
		"visits pale.malt --start 2026-03-06T07:00", "visits deep-bed.malt --start 2026-03-06T07:00",
		"contrast pale.malt munich.malt",
		"follow batches/26-04.malt --members 20", "learn batches/few.malt batches/26-03.malt", "seasons batches/few.malt batches/26-03.malt",
	} {
		t.Run(command, func(t *testing.T) {
			var out, errs strings.Builder
			w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: folder, Env: func(string) string { return "" }}
			code := Main(w, strings.Fields(command))
			require.LessOrEqual(t, code, ExitFindings, errs.String())
			said := out.String() + errs.String()
			require.NotEmpty(t, said)
			for line := range strings.Lines(said) {
				for _, m := range metricFigure.FindAllString(line, -1) {
					assert.True(t, strings.Contains(all, strings.TrimRight(m, " ,;:.)")), "%s: %s", m, line)
				}
			}
		})
	}
}
