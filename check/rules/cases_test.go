package rules_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/check/mend"
	"maltwright/check/rules"
	"maltwright/lang/finding"
	"maltwright/lang/source/golden"
)

// A rule's cases stand in testdata/NAME.txtar. A file "fires/TITLE" must raise the
// rule, a file "quiet/TITLE" must not; of the quiet ones there are at least as many.
// A case is a whole process text, or a change of testdata/base.malt: a line "- X"
// takes out the line X (which must stand there once, blanks in front do not count),
// and lines "+ Y" behind it stand in its place. The file "findings" holds, for each
// firing case, what the rule then says; MALTWRIGHT_UPDATE=1 rewrites it.

func TestRulesFireAndStayQuiet(t *testing.T) {
	t.Parallel()
	base, err := os.ReadFile("testdata/base.malt")
	require.NoError(t, err)
	for _, r := range rules.All() {
		t.Run(r.Name, func(t *testing.T) {
			t.Parallel()
			path := filepath.Join("testdata", r.Name+".txtar")
			archive, err := txtar.ParseFile(path)
			require.NoError(t, err, "a rule needs its cases")
			fires, quiet, said := 0, 0, &bytes.Buffer{}
			var golden []byte
			for _, f := range archive.Files {
				kind, title, _ := strings.Cut(f.Name, "/")
				switch kind {
				case "findings":
					golden = f.Data
					continue
				case "fires":
					fires++
				case "quiet":
					quiet++
				default:
					require.Failf(t, "unknown kind of case", "%s", f.Name)
				}
				own, all := findingsOf(t, r.Name, caseText(t, base, f))
				if kind == "quiet" {
					assert.Empty(t, own, "%s: should stay quiet", title)
					continue
				}
				assert.NotEmpty(t, own, "%s: should fire; it finds:\n%s", title, all)
				fmt.Fprintf(said, "%s\n%s", title, own)
			}
			assert.Positive(t, fires, "no case fires")
			assert.GreaterOrEqual(t, quiet, fires, "at least as many cases stay quiet as fire")
			compareFindings(t, path, archive, golden, said.Bytes())
		})
	}
}

func compareFindings(t *testing.T, path string, archive *txtar.Archive, golden, said []byte) {
	if os.Getenv("MALTWRIGHT_UPDATE") == "" {
		assert.Equal(t, string(golden), string(said))
		return
	}
	archive.Files = slices.DeleteFunc(archive.Files, func(f txtar.File) bool { return f.Name == "findings" })
	archive.Files = append(archive.Files, txtar.File{Name: "findings", Data: said})
	require.NoError(t, os.WriteFile(path, txtar.Format(archive), 0o666))
}

// findingsOf checks a text and gives the lines of one rule, and all lines.
func findingsOf(t *testing.T, rule, text string) (own, all string) {
	t.Helper()
	r := check.File("case.malt", []byte(text), ".", nowhere{}, check.Options{Odds: rule == "expectation-at-risk", Members: fewBatches})
	for _, f := range r.Findings {
		assert.NotEmpty(t, strings.TrimSpace(f.Place.Text()), "%s stands at no words: %s", f.Rule, f.Message)
		for _, also := range f.Related {
			assert.NotEmpty(t, strings.TrimSpace(also.Place.Text()), "%s has a part in no words: %s", f.Rule, also.Message)
		}
		for _, e := range f.Fixes {
			assert.True(t, mend.About(f, e), "%s would be mended elsewhere", f.Rule)
		}
	}
	only := slices.DeleteFunc(slices.Clone(r.Findings), func(f finding.Finding) bool { return f.Rule != rule })
	return golden.Lines(only), golden.Lines(r.Findings)
}

type nowhere struct{}

func (nowhere) Read(string) ([]byte, error) { return nil, os.ErrNotExist }

func caseText(t *testing.T, base []byte, f txtar.File) string {
	t.Helper()
	lines := strings.Split(strings.TrimSpace(string(f.Data)), "\n")
	for _, l := range lines {
		if l != "" && !strings.HasPrefix(l, "- ") && !strings.HasPrefix(l, "+ ") {
			return string(f.Data)
		}
	}
	text := strings.Split(string(base), "\n")
	at := -1
	for _, l := range lines {
		switch {
		case strings.HasPrefix(l, "- "):
			at = only(t, text, l[2:], f.Name)
			text = slices.Delete(text, at, at+1)
		case strings.HasPrefix(l, "+ "):
			require.GreaterOrEqual(t, at, 0, "%s: a + line needs a - line before it", f.Name)
			text = slices.Insert(text, at, l[2:])
			at++
		}
	}
	return strings.Join(text, "\n")
}

func only(t *testing.T, text []string, want, name string) int {
	t.Helper()
	at := -1
	for i, l := range text {
		if strings.TrimSpace(l) == strings.TrimSpace(want) {
			require.Equal(t, -1, at, "%s: the base has %q more than once", name, want)
			at = i
		}
	}
	require.GreaterOrEqual(t, at, 0, "%s: the base has no line %q", name, want)
	return at
}

func TestTheBaseIsQuiet(t *testing.T) {
	base, err := os.ReadFile("testdata/base.malt")
	require.NoError(t, err)
	_, all := findingsOf(t, "", string(base))
	assert.Empty(t, all)
}

func TestNoCasesWithoutARule(t *testing.T) {
	files, err := filepath.Glob("testdata/*.txtar")
	require.NoError(t, err)
	for _, path := range files {
		name := strings.TrimSuffix(filepath.Base(path), ".txtar")
		assert.True(t, slices.ContainsFunc(rules.All(), func(r rules.Rule) bool { return r.Name == name }), "%s has cases, but is no rule", name)
	}
}

func TestEachRuleIsOneFileNamedAfterIt(t *testing.T) {
	for _, r := range rules.All() {
		text, err := os.ReadFile(r.Name + ".go")
		require.NoError(t, err)
		assert.Contains(t, string(text), fmt.Sprintf("Name: %q", r.Name))
		for what, s := range map[string]string{"title": r.Title, "why": r.Why, "do": r.Do} {
			assert.NotEmpty(t, s, "%s has no %s", r.Name, what)
		}
		assert.NotNil(t, r.Judge, r.Name)
	}
}
