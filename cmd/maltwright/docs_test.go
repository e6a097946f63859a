package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The examples in docs/json.md must have the keys that the program
// writes, no more and no fewer.
func TestTheDocumentedJSONHasTheKeysOfTheRealOne(t *testing.T) {
	longSums(t)
	page, err := os.ReadFile("../../docs/json.md")
	require.NoError(t, err)
	examples, err := filepath.Abs("../../examples")
	require.NoError(t, err)
	ran := func(args ...string) string {
		code, out, errs := runIn(examples, append(args, "--format", "json")...)
		require.Equal(t, ExitClean, code, errs)
		return out
	}
	for _, c := range []struct{ heading, real string }{
		{"## Forecast", ran("forecast", "pale.malt", "--start", "2026-03-06T07:00")},
		{"## Timetable", ran("visits", "pale.malt", "--start", "2026-03-06T07:00")},
		{"## Seasons", shownSeasons(t, 0, nil, "json")},
		{"## What a house learns", learnFrom(t, "json")},
	} {
		_, rest, ok := strings.Cut(string(page), c.heading)
		require.True(t, ok)
		_, rest, _ = strings.Cut(rest, "```json")
		_, rest, _ = strings.Cut(rest, "\n")
		example, _, _ := strings.Cut(rest, "```")
		assert.Equal(t, keysOf(t, example), keysOf(t, c.real), c.heading)
	}
}

// keysOf lists the paths of all keys, the elements of a list as one.
func keysOf(t *testing.T, text string) []string {
	t.Helper()
	var v any
	require.NoError(t, json.Unmarshal([]byte(text), &v))
	seen := map[string]bool{}
	var walk func(string, any)
	walk = func(path string, v any) {
		switch v := v.(type) {
		case map[string]any:
			for k, x := range v {
				seen[path+"."+k] = true
				walk(path+"."+k, x)
			}
		case []any:
			for _, x := range v {
				walk(path+"[]", x)
			}
		}
	}
	walk("", v)
	var list []string
	for k := range seen {
		list = append(list, k)
	}
	slices.Sort(list)
	return list
}
