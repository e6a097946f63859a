package seasons

import (
	"path/filepath"
	"testing"
)

// porch is a batch of the house that dries in a dryer and cures in an oven.
func porch(t *testing.T, lines string) Season {
	t.Helper()
	return Of(batchIn(t, filepath.Join(folder, "..", "home"), "use \"porch.malt\"\nbatch \"b\" of \"Porch pale\" {\n  began 2026-10-03 06:30\n"+
		"  weighed 15 lb at 2026-10-09 22:00 after germinate\n  read air-on 115 °F at 22:30\n  read air-off 82 °F at 23:00\n"+lines+"}\n"))
}

// Of several kilns the time on them is that on all, and the break that on the first.
func TestSeveralKilnsCountTogetherAndBreakOnTheFirst(t *testing.T) {
	const off = "  weighed 9 lb 4 oz at 2026-10-10 10:00 after cool 1\n"
	both := porch(t, "  read air-off 108 °F at 2026-10-10 05:00\n"+off+"  weighed 8 lb 12 oz at 17:00 after cool 2\n")
	is(t, 19*hour, Measured, both.Kiln, second, "22:00 to 17:00")
	is(t, 7*hour, Under, both.Break, second, "seen at 05:00")
	half := porch(t, off)
	is(t, 0, Missing, half.Kiln, second, "it only left the first")
	later := porch(t, "  read air-off 83 °F at 2026-10-10 02:00\n"+off+"  read air-off 90 °F at 10:30\n")
	is(t, 4*hour, Over, later.Break, second, "what is read in the second says nothing of the first")
}
