package main

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The examples in docs/json.md must have the keys that the program
// writes, no more and no fewer.
func TestTheDocumentedJSONHasTheKeysOfTheRealOne(t *testing.T) {
	page, err := os.ReadFile("../../docs/json.md")
	require.NoError(t, err)
	for _, c := range []struct{ heading, line string }{
		{"## Forecast", "forecast pale.malt --start 2026-03-06T07:00"},
		{"## Timetable", "visits pale.malt --start 2026-03-06T07:00"},
		{"## Seasons", "seasons batches/26-05.malt"},
		{"## What a house learns", "learn batches/26-03.malt batches/26-04.malt"},
	} {
		_, rest, ok := strings.Cut(string(page), c.heading)
		require.True(t, ok)
		_, rest, _ = strings.Cut(rest, "```json")
		_, rest, _ = strings.Cut(rest, "\n")
		example, _, _ := strings.Cut(rest, "```")

		var out strings.Builder
		w := World{In: strings.NewReader(""), Out: &out, Err: os.Stderr, Folder: "../../examples", Env: os.Getenv}
		require.Equal(t, ExitClean, Main(w, append(strings.Fields(c.line), "--format", "json")))
		assert.Equal(t, keysOf(t, example), keysOf(t, out.String()), c.heading)
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
