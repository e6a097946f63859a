package evidence_test

import (
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/sim/forecast"
)

// porch is a batch of the house that dries in a dryer and cures in a still oven. It came into
// the dryer at 22:00 of the 9th.
func porch(t *testing.T, lines string) *forecast.Forecast {
	t.Helper()
	root, err := read.OpenRoot(filepath.Join("..", "..", "..", "examples", "home"))
	require.NoError(t, err)
	defer root.Close()
	h, found := read.Load("x.malt", []byte("use \"porch.malt\"\nbatch \"x\" of \"Porch pale\" {\n  began 2026-10-03 06:30\n"+
		"  weighed 15 lb at 2026-10-09 22:00 after germinate\n"+lines+"}\n"), ".", root)
	require.Empty(t, found, lines)
	return middle(t, trial(t, h.Batches[0], time.Time{}))
}

// porchEnds is when a step of a kiln of the porch ended, by the clock of the 10th, h.
func porchEnds(t *testing.T, f *forecast.Forecast, kind model.StepKind, n int) float64 {
	t.Helper()
	end := endOf(f, kind, n)
	require.NotZero(t, end)
	return end/3600 - (7*24 - 6.5)
}

// The air of a still oven is in no dryer, and what stood on the scale says where the malt
// lay: the kiln before it is over by then, whatever the forecast makes of its gate.
func TestAReadingTellsOnWhichKilnTheMaltIs(t *testing.T) {
	plan := porchEnds(t, porch(t, ""), model.CoolStep, 1)
	require.Greater(t, plan, 6.0, "the plan takes it out of the dryer later")
	for name, line := range map[string]string{
		"the air of the oven": "  read oven 176 °F at 2026-10-10 06:00\n",
		"weighed in the oven": "  weighed 11 lb in \"kitchen oven\" at 2026-10-10 06:00\n",
	} {
		f := porch(t, line)
		assert.LessOrEqual(t, porchEnds(t, f, model.CoolStep, 1), 6.001, name)
		require.NotEmpty(t, f.Seen, name)
		assert.Equal(t, "cure", f.Seen[len(f.Seen)-1].Step, name)
	}
	for name, line := range map[string]string{
		"the air of the dryer":  "  read air-on 140 °F at 2026-10-10 06:00\n",
		"weighed in the dryer":  "  weighed 13 lb in \"fruit dryer\" at 2026-10-10 06:00\n",
		"its own heat":          "  read malt 120 °F at 2026-10-10 06:00\n",
		"a step says otherwise": "  read oven 140 °F at 2026-10-10 06:00\n  weighed 9 lb 9 oz at 2026-10-10 07:00 after dry 2\n",
	} {
		f := porch(t, line)
		assert.Greater(t, porchEnds(t, f, model.CoolStep, 1), 6.0, name)
	}
}
