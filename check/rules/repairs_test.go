package rules_test

import (
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/check/mend"
	"maltwright/check/rules"
	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// fittedOrAsItIs puts an example into the base, or leaves it where it does not read
// or its words belong nowhere: then that is what it shows.
func fittedOrAsItIs(t *testing.T, base, example string) string {
	from := source.New("example.malt", []byte(example))
	tree, found := syntax.Parse(from)
	f := fitting{base: source.New("base.malt", []byte(base))}
	whole, _ := syntax.Parse(f.base)
	f.collect("file", whole.Top)
	belongs := func(s *syntax.Statement) bool {
		for i := range f.blocks {
			if slices.ContainsFunc(f.blocks[i].body.Statements, alike(s)) || f.fits(i, s) {
				return true
			}
		}
		return false
	}
	for _, s := range tree.Top.Statements {
		if len(found) > 0 || !belongs(s) {
			return example
		}
	}
	return fitted(t, base, example)
}

// Whatever is found in the bad example of any rule, its repair is about the words that
// it is about; with it the finding is gone and nothing new of weight has come; mending
// all of it at once leaves less to find, and once more changes nothing.
func TestRepairsOfEachBadExampleMakeItBetter(t *testing.T) {
	t.Parallel()
	text, err := os.ReadFile("testdata/base.malt")
	require.NoError(t, err)
	base, repaired := string(text), map[string]bool{}
	for _, r := range check.Rules() {
		if r.Bad == "" {
			continue
		}
		bad := fittedOrAsItIs(t, base, r.Bad)
		look := func(text []byte) (*source.File, []finding.Finding) {
			rep := check.File("bad.malt", text, ".", nowhere{}, check.Options{On: asked[r.Name].On}) // what is found by odds alone has no repair
			return rep.House.Files[0], rep.Findings
		}
		file, found := look([]byte(bad))
		for _, f := range found {
			if len(f.Fixes) == 0 {
				continue
			}
			for _, e := range f.Fixes {
				assert.True(t, mend.About(f, e), "%s: %s would be mended elsewhere", r.Name, f.Message)
			}
			repaired[f.Rule] = true
			assertBetter(t, r.Name, file, f, found, look)
		}
		if !slices.ContainsFunc(found, func(f finding.Finding) bool { return len(f.Fixes) > 0 }) {
			continue
		}
		got := mend.Text([]byte(bad), look)
		_, left := look(got.Text)
		assert.LessOrEqual(t, len(left), len(found), r.Name)
		assert.Equal(t, string(got.Text), string(mend.Text(got.Text, look).Text), "%s: a second time", r.Name)
	}
	for _, r := range rules.All() { // of the forecast rules all that bring repairs
		if slices.Contains([]string{"cure-without-gate", "target-not-reached", "target-overshot"}, r.Name) {
			assert.True(t, repaired[r.Name], "%s brings no repair", r.Name)
		}
	}
	t.Logf("%d rules bring a repair: %v", len(repaired), repaired)
}

// assertBetter makes the edits of one finding and looks again.
func assertBetter(t *testing.T, name string, file *source.File, f finding.Finding, found []finding.Finding, look mend.Checker) {
	t.Helper()
	edits := slices.Clone(f.Fixes)
	slices.SortFunc(edits, func(a, b finding.Edit) int { return b.Place.Start - a.Place.Start })
	text := string(file.Bytes())
	for _, e := range edits {
		text = text[:e.Place.Start] + e.New + text[e.Place.End:]
	}
	_, left := look([]byte(text))
	for _, l := range left {
		assert.False(t, l.Rule == f.Rule && l.Message == f.Message, "%s: %s still stands", name, f.Message)
		assert.True(t, l.Severity < finding.Caution || slices.ContainsFunc(found, func(g finding.Finding) bool { return g.Rule == l.Rule }),
			"%s: the repair of %q brings %q", name, f.Message, l.Message)
	}
}
