package check

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/source/golden"
	"maltwright/lang/syntax"
)

const broken = "../examples/broken"

// made are the rules whose input would be no file that a person can look at, each
// with the input and the reason.
var made = map[string]struct {
	reason string
	text   func() string
	used   house
}{
	"file-too-large": {"more than 4 MiB",
		func() string { return strings.Repeat("# page after page of notes\n", source.MaxBytes/27+1) }, nil},
	"too-many-statements": {"more than 10,000 lines",
		func() string {
			return "site \"Loft, autumn\" {\n" + strings.Repeat("air 7 to 14 °C\n", syntax.MaxStatements) + "}\n"
		}, nil},
	"nested-too-deep": {"33 blocks, one inside the other",
		func() string {
			n := syntax.MaxNesting + 1
			return "process \"Loft pale\" {" + strings.Repeat(" repeat 2 times {", n) + strings.Repeat(" }", n) + " }\n"
		}, nil},
	"findings-left-out": {"more than 200 findings",
		func() string {
			var b strings.Builder
			for i := range mostFindings + 5 {
				fmt.Fprintf(&b, "vessel \"tub %d\" { }\n", i)
			}
			return b.String()
		}, nil},
	"use-too-many": {"65 files beside it",
		func() string {
			var b strings.Builder
			for i := range read.MaxFiles + 1 {
				fmt.Fprintf(&b, "use \"shed-%d.malt\"\n", i)
			}
			return b.String()
		}, func() house {
			h := house{}
			for i := range read.MaxFiles + 1 {
				h[fmt.Sprintf("shed-%d.malt", i)] = fmt.Sprintf("vessel \"tub %d\" { holds 25 l }\n", i)
			}
			return h
		}()},
}

// A rule of the forecast that has no broken example has its cases beside it, as
// each of these must.
func casesOf(rule string) string { return filepath.Join("rules", "testdata", rule+".txtar") }

func TestEveryRuleHasABrokenExample(t *testing.T) {
	for _, r := range Rules() {
		t.Run(r.Name, func(t *testing.T) {
			if m, ok := made[r.Name]; ok {
				found := File("made.malt", []byte(m.text()), ".", m.used, Options{}).Findings
				for _, f := range found {
					assert.NotEmpty(t, strings.TrimSpace(f.Place.Text()), "%s stands at no words", f.Rule)
				}
				got := names(found)
				assert.Contains(t, got, r.Name, m.reason)
				return
			}
			path := filepath.Join(broken, r.Name+".malt")
			if _, err := os.Stat(path); os.IsNotExist(err) {
				assert.FileExists(t, casesOf(r.Name), "neither an example nor cases")
				return
			}
			raises(t, r, brokenOnes()[path])
		})
	}
}

// brokenOnes are the findings of each broken example, by its path, with the odds where its
// rule needs them.
var brokenOnes = sync.OnceValue(func() map[string][]finding.Finding {
	root, err := read.OpenRoot(broken)
	if err != nil {
		return nil
	}
	defer root.Close()
	paths, _ := filepath.Glob(filepath.Join(broken, "*.malt"))
	found := map[string][]finding.Finding{}
	for _, path := range paths {
		if text, err := os.ReadFile(path); err == nil {
			name := filepath.Base(path)
			found[path] = File(name, text, ".", root, Options{Odds: name == "expectation-at-risk.malt", Members: 40}).Findings
		}
	}
	return found
})

// raises asks that the findings hold one of the rule, and nothing that is
// worse: what is no worse may come of it, or stand beside it.
func raises(t *testing.T, r finding.Rule, found []finding.Finding) {
	severity := finding.Note
	for _, f := range found {
		assert.NotEmpty(t, strings.TrimSpace(f.Place.Text()), "%s stands at no words: %s", f.Rule, f.Message)
		if f.Rule == r.Name {
			severity = f.Severity
		}
	}
	assert.Contains(t, names(found), r.Name)
	for _, f := range found {
		if f.Rule != r.Name {
			assert.LessOrEqual(t, f.Severity, severity, "%s as well: %s", f.Rule, f.Message)
		}
	}
}

// helpers of the broken examples: what other files use.
var helpers = []string{"loft", "pale", "use-circle-floor"}

func TestEveryBrokenExampleIsNamedAfterItsRule(t *testing.T) {
	known := append([]string(nil), helpers...)
	for _, r := range Rules() {
		known = append(known, r.Name)
	}
	files, err := filepath.Glob(filepath.Join(broken, "*.malt"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, path := range files {
		assert.Contains(t, known, strings.TrimSuffix(filepath.Base(path), ".malt"))
	}
}

func TestTheHouseOfTheBrokenExamplesIsThatOfTheExamples(t *testing.T) {
	for _, name := range []string{"loft.malt", "pale.malt"} {
		house, err := os.ReadFile("../examples/" + name)
		require.NoError(t, err)
		golden.File(t, filepath.Join(broken, name), string(house))
	}
}

func TestFindingsOfTheBrokenExamplesReadAsOneSentence(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(broken, "*.malt"))
	require.NoError(t, err)
	require.Len(t, brokenOnes(), len(files))
	for _, path := range files {
		for _, f := range brokenOnes()[path] {
			assert.False(t, strings.HasSuffix(f.Message, "."), "no full stop: %s", f.Message)
			assert.NotContains(t, f.Message, "\n")
			assert.Equal(t, strings.ToLower(f.Message[:1]), f.Message[:1], "a small letter first: %s", f.Message)
			assert.NotEmpty(t, f.Why, f.Rule)
			assert.True(t, f.Hint != "" || f.Rule == "limits-changed", "%s says what to do", f.Rule)
		}
	}
}
