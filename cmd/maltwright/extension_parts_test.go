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

// Snippets are whole files that fit one another: a house, a process in it and a record of that. They have no prefix, so
// that they do not stand beside what the server offers while one types.
func TestSnippetsOfTheExtensionCheckClean(t *testing.T) {
	var snippets map[string]struct {
		Prefix         string
		IsFileTemplate bool
		Body           []string
	}
	readExtension(t, "snippets/malt.json", &snippets)
	files, folder := map[string]string{"House": "house.malt", "Process": "pale.malt", "Record of a batch": "26-01.malt"}, t.TempDir()
	require.ElementsMatch(t, slices.Collect(maps.Keys(files)), slices.Collect(maps.Keys(snippets)))
	for name, s := range snippets {
		assert.Empty(t, s.Prefix, name)
		assert.True(t, s.IsFileTemplate, name)
		require.NoError(t, os.WriteFile(filepath.Join(folder, files[name]), []byte(plainSnippet(s.Body)), 0o644))
	}
	out, errs, code := run("check", "--format", "lines", folder)
	assert.Zero(t, code, "%s%s", out, errs)
	for line := range strings.Lines(out) {
		assert.Contains(t, line, ": note: ")
	}
}

// Each line that check writes for programs is read by one of the patterns, whole.
func TestProblemMatchersReadEveryLine(t *testing.T) {
	var manifest struct {
		Contributes struct {
			ProblemPatterns []struct {
				Name, Regexp string
			}
		}
	}
	readExtension(t, "package.json", &manifest)
	out, _, _ := run("check", "--format", "lines", "--all", "../../examples/broken", "../../examples/pale.malt")
	by := map[string]int{}
	for line := range strings.Lines(out) {
		read := 0
		for _, p := range manifest.Contributes.ProblemPatterns {
			if m := regexp.MustCompile(p.Regexp).FindStringSubmatch(strings.TrimSuffix(line, "\n")); m != nil {
				read++
				by[p.Name]++
				assert.Regexp(t, `\.malt$`, m[1], line)
				assert.NotEmpty(t, m[len(m)-1], line)
			}
		}
		assert.Equal(t, 1, read, line)
	}
	assert.Greater(t, by["maltwright"], 50)
	assert.Greater(t, by["maltwright-cautions"], 50)
	assert.Positive(t, by["maltwright-dangers"])
}
