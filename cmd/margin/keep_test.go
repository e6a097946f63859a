package margin

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source"
	"maltwright/lang/source/spoil"
	"maltwright/lang/syntax"
)

// beside lists the lines beside which a margin has hints, by their first words.
func beside(m Margin) (list []string) {
	for _, x := range m.Hints {
		word, _, _ := strings.Cut(m.File.Text(x.Of), " ")
		list = append(list, word)
	}
	return slices.Compact(list)
}

func treeOf(text string) *syntax.Tree {
	tree, _ := syntax.Parse(source.New("pale.malt", []byte(text)))
	return tree
}

// While a statement is typed at, the stages before its own keep their hints.
func TestHintsOfTheStagesBeforeABrokenOneStay(t *testing.T) {
	e := exampleOf(t, "pale.malt")
	m := Of(e.tree, e.report, nil, Options{})
	steep, floor := []string{"repeat", "soak", "rest"}, []string{"repeat", "soak", "rest", "hold", "until"}
	for _, c := range []struct {
		name, old, new string
		stay           []string
	}{
		{"nothing", "", "", beside(m)},
		{"a comment before it", "# Loft pale", "# More of Loft pale", beside(m)},
		{"a word of the kiln", "cure at air-on 82 °C", "cure at air-on 8", append(slices.Clone(floor), "wither", "until")},
		{"a word of the floor", "hold  bed at 14 to 17 °C", "hold  bed at", steep},
		{"a brace that is not closed", "  germinate on \"growing tray\" {", "  germinate on \"growing tray\" ", steep},
		{"a number of the steep", "soak 7 h", "soak 7", nil},
		{"the charge", "from 6 kg", "from 6 k", nil},
		{"a promise", "expect total time at most 14 days", "expect total time at most", beside(m)},
		{"a line before the floor", "  germinate on", "  stee\n  germinate on", steep},
		{"its name", `process "Loft pale"`, `process "Loft p`, nil},
	} {
		kept := m.On(treeOf(strings.Replace(string(e.text), c.old, c.new, 1)))
		assert.Equal(t, c.stay, beside(kept), c.name)
	}
}

func TestAProcessKeepsItsLensOnlyWhileAllOfItStands(t *testing.T) {
	e := exampleOf(t, "pale.malt")
	m := Of(e.tree, e.report, nil, Options{})
	assert.Len(t, m.On(treeOf("grain {\n"+string(e.text))).Lenses, 1)
	assert.Empty(t, m.On(treeOf(strings.Replace(string(e.text), "cool to malt 30 °C", "cool to malt", 1))).Lenses)
	assert.NotEmpty(t, m.On(e.tree).At(strings.Index(string(e.text), "soak 7 h")))
	assert.Empty(t, (Margin{}).On(e.tree).Hints)
}

// However a text is edited, a hint that is kept stands behind its own words, on their line, and no hint is kept
// that a forecast of the new text would have otherwise.
func TestAHintIsNeverKeptBesideWordsThatAreNotItsOwn(t *testing.T) {
	e := exampleOf(t, "pale.malt")
	m := Of(e.tree, e.report, nil, Options{})
	of := map[string]string{} // the words beside which a hint stood
	for _, x := range m.Hints {
		of[x.Text+x.More] = e.tree.File.Text(x.Of)
	}
	words, kept, same := spoil.Words(string(e.text)), 0, 0
	for seed := range spoil.Seeds(300, 4_000) {
		r := spoil.Random(seed)
		text := string(e.text)
		for range 1 + r.IntN(3) {
			text = spoil.Text(r, text, words)
		}
		tree := treeOf(text)
		now := m.On(tree)
		for _, x := range now.Hints {
			kept++
			require.Equal(t, of[x.Text+x.More], tree.File.Text(x.Of), "seed %d:\n%s", seed, text)
			require.Contains(t, []string{"", " {"}, tree.File.Text(source.Span{Start: x.Of.End, End: x.At}), "seed %d", seed)
		}
		if seed%10 != 0 {
			continue
		}
		fresh := exampleWith(t, "pale.malt", text)
		if fresh.report.Forecasts == nil || fresh.report.Forecasts[0] == nil || !strings.Contains(text, "\nuse \"loft.malt\"\n") {
			continue
		}
		told := Of(fresh.tree, fresh.report, nil, Options{})
		for _, x := range now.Hints {
			same++
			require.True(t, slices.ContainsFunc(told.Hints, func(y Hint) bool { return y == x }), "seed %d: %s\n%s", seed, x.Text, shown(told))
		}
	}
	assert.Greater(t, kept, 300)
	assert.Greater(t, same, 20)
}

// What is told of one process stays while another of its file is broken.
func TestAMemoryHoldsWhatIsToldOfEachProcess(t *testing.T) {
	pale := exampleOf(t, "pale.malt")
	two := string(pale.text) + strings.Replace(strings.TrimPrefix(string(pale.text[strings.Index(string(pale.text), "process"):]), "\n"), "Loft pale", "Loft other", 1)
	e := exampleWith(t, "pale.malt", two)
	var held Memory
	whole := Of(e.tree, e.report, nil, Options{})
	held.Keep(whole)
	broken := exampleWith(t, "pale.malt", strings.Replace(two, "cure at air-on 82 °C for 5 h", "cure at air-on 82 °C fr 5 h", 1))
	now := Of(broken.tree, broken.report, nil, Options{})
	told := held.Beside(now)
	assert.Less(t, len(now.Hints), len(told.Hints))
	assert.Less(t, len(told.Hints), len(whole.Hints))
	assert.Len(t, told.Lenses, 2)
	held.Keep(now)
	assert.Equal(t, told.Hints, held.Beside(now).Hints, "what tells nothing is not kept")
	assert.Equal(t, whole.Hints, held.On(e.tree).Hints)
	assert.Empty(t, (&Memory{}).On(e.tree).Hints)
}
