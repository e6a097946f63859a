package read

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/finding"
)

// A repair is the only thing that can be meant: with it the finding is gone, and
// nothing else has come.
func TestTheRepairOfEachBadExampleLeavesLessToFind(t *testing.T) {
	repaired := 0
	for _, r := range Rules() {
		text := whole(r.Bad)
		_, found := Load("main.malt", []byte(text), ".", loft(t))
		for _, f := range found {
			if len(f.Fixes) == 0 {
				continue
			}
			repaired++
			edits := slices.Clone(f.Fixes)
			slices.SortFunc(edits, func(a, b finding.Edit) int { return b.Place.Start - a.Place.Start })
			mended := text
			for _, e := range edits {
				mended = mended[:e.Place.Start] + e.New + mended[e.Place.End:]
			}
			_, left := Load("main.malt", []byte(mended), ".", loft(t))
			assert.Less(t, len(left), len(found), "%s: %s", r.Name, mended)
			for _, l := range left {
				assert.True(t, slices.ContainsFunc(found, func(g finding.Finding) bool { return g.Rule == l.Rule && g.Message == l.Message }), "%s brings %s", r.Name, l.Message)
				assert.NotEqual(t, f.Message, l.Message)
			}
		}
	}
	assert.GreaterOrEqual(t, repaired, 4)
}
