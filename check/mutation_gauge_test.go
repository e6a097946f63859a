package check

import (
	"maps"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// The measure is measured too: were it blind, every slip would seem caught.

func TestChangedLinesAreThoseThatDiffer(t *testing.T) {
	for _, c := range []struct {
		name, before, after string
		lines               []int
	}{
		{"nothing", "a\nb", "a\nb", nil},
		{"a line changed", "a\nb\nc\nd", "a\nB\nc\nd", []int{2}},
		{"a line more", "a\nb\nc", "a\nx\nb\nc", []int{2}},
		{"a line less", "a\nb\nc\nd", "a\nb\nd", []int{2, 3}},
		{"two lines far apart", "a\nb\nc\nd\ne", "x\na\nb\nc\nd\ne\ny", []int{1, 7}},
	} {
		assert.Equal(t, c.lines, slices.Sorted(maps.Keys(differing(c.before, c.after))), c.name)
	}
}

func TestOnlyWhatIsNewCounts(t *testing.T) {
	f := source.New("broken.malt", []byte("soak\nrest\nturn\n"))
	of := func(rule string, s finding.Severity, start int) finding.Finding {
		return finding.Finding{Rule: rule, Severity: s, Place: source.Place{File: f, Span: source.Span{Start: start, End: start + 4}}}
	}
	before := []finding.Finding{of("oxygen-gone", caution, 0)}
	assert.Empty(t, fresh(before, before))
	assert.Empty(t, fresh(before, []finding.Finding{of("oxygen-gone", caution, 5)}), "the same in another place")
	assert.Equal(t, []finding.Finding{of("oxygen-gone", fault, 0)}, fresh(before, []finding.Finding{of("oxygen-gone", fault, 0)}), "worse than it was")
	assert.Equal(t, []finding.Finding{of("oxygen-gone", caution, 10)},
		fresh(before, []finding.Finding{of("oxygen-gone", caution, 0), of("oxygen-gone", caution, 10)}), "once more")
}

func TestASlipIsCaughtByAFittingRuleAlone(t *testing.T) {
	m := mutant{kind: kind{fits: "soak-too-long oxygen-gone", least: caution, at: "steep"},
		good: pair{process: "steep\nsoak 1\nrest 1\nturn 1\nstir 1"}, bad: pair{process: "steep\nsoak 9\nrest 1\nturn 1\nstir 1"}}
	f := source.New("broken.malt", []byte(m.bad.process))
	of := func(rule string, s finding.Severity, start int) []finding.Finding {
		return []finding.Finding{{Rule: rule, Severity: s, Place: source.Place{File: f, Span: source.Span{Start: start, End: start + 4}}}}
	}
	for _, c := range []struct {
		name           string
		told           []finding.Finding
		caught, placed bool
		unrelated      int
	}{
		{"silence", nil, false, false, 0},
		{"of the changed line", of("soak-too-long", caution, 6), true, true, 0},
		{"of the stage", of("oxygen-gone", fault, 0), true, true, 0},
		{"elsewhere", of("oxygen-gone", fault, 27), true, false, 0},
		{"too mild", of("oxygen-gone", note, 6), false, false, 0},
		{"another rule", of("turn-gap-long", caution, 6), false, false, 1},
		{"another rule's note", of("turn-gap-long", note, 6), false, false, 0},
	} {
		v := m.judged(nil, c.told)
		assert.Equal(t, c.caught, v.caught, c.name)
		assert.Equal(t, c.placed, v.placed, c.name)
		assert.Equal(t, c.unrelated, v.unrelated, c.name)
	}
}
