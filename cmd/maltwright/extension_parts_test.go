package main

import (
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Parts of the extension that can be tried without an editor.

func readExtension(t *testing.T, name string, into any) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(extensionFolder, name))
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, into))
}

var (
	choice = regexp.MustCompile(`\$\{\d+\|([^,|]*)[^}]*\}`)
	stop   = regexp.MustCompile(`\$\{\d+:([^}]*)\}`)
	end    = regexp.MustCompile(`\$\d+`)
)

// plainSnippet is a snippet as it stands when nothing of it is changed.
func plainSnippet(lines []string) string {
	text := strings.Join(lines, "\n") + "\n"
	text = stop.ReplaceAllString(choice.ReplaceAllString(text, "$1"), "$1")
	return end.ReplaceAllString(text, "")
}

// Snippets fit one another: a house, a process in it with each stage in its place, and a record of that.
func TestSnippetsOfTheExtensionCheckClean(t *testing.T) {
	var snippets map[string]struct {
		Prefix string
		Body   []string
	}
	readExtension(t, "snippets/malt.json", &snippets)
	texts := map[string]string{}
	for name, s := range snippets {
		require.NotContains(t, texts, s.Prefix, name)
		texts[s.Prefix] = plainSnippet(s.Body)
	}
	stages := map[string]string{"pale.malt": texts["process"]}
	for _, stage := range []string{"steep", "germinate", "kiln"} {
		old := regexp.MustCompile(`(?ms)^  ` + stage + ` .*?^  \}\n`)
		require.Regexp(t, old, texts["process"])
		inner := "  " + strings.ReplaceAll(strings.TrimSpace(texts[stage]), "\n", "\n  ") + "\n"
		stages[stage+".malt"] = old.ReplaceAllLiteralString(texts["process"], inner)
		delete(texts, stage)
	}
	for name, process := range stages {
		folder := t.TempDir()
		for file, text := range map[string]string{"house.malt": texts["house"], "pale.malt": process, "26-01.malt": texts["batch"]} {
			require.NoError(t, os.WriteFile(filepath.Join(folder, file), []byte(text), 0o644))
		}
		out, errs, code := run("check", "--format", "lines", folder)
		assert.Zero(t, code, "%s: %s%s", name, out, errs)
		for line := range strings.Lines(out) {
			assert.Contains(t, line, ": note: ", name)
		}
	}
	assert.ElementsMatch(t, []string{"house", "process", "batch"}, slices.Collect(maps.Keys(texts)), "each snippet is tried")
}

// Each line that check writes for programs is read by one of the two patterns, whole.
func TestProblemMatchersReadEveryLine(t *testing.T) {
	var manifest struct {
		Contributes struct {
			ProblemPatterns []struct {
				Name, Regexp string
				Severity     int
			}
		}
	}
	readExtension(t, "package.json", &manifest)
	out, _, _ := run("check", "--format", "lines", "--all", "../../examples/broken", "../../examples/pale.malt")
	severities := map[string]int{}
	for line := range strings.Lines(out) {
		read := 0
		for _, p := range manifest.Contributes.ProblemPatterns {
			if m := regexp.MustCompile(p.Regexp).FindStringSubmatch(strings.TrimSuffix(line, "\n")); m != nil {
				read++
				severities[p.Name]++
				assert.Regexp(t, `\.malt$`, m[1], line)
				assert.NotEmpty(t, m[len(m)-1], line)
			}
		}
		assert.Equal(t, 1, read, line)
	}
	assert.Greater(t, severities["maltwright"], 50)
	assert.Greater(t, severities["maltwright-cautions"], 50)
}
