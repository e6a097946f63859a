package syntax

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/source"
)

// FuzzParse reads any text at all: it must not fail, every node and every finding
// must stand in the text, and what is read must be the same when read again.
func FuzzParse(f *testing.F) {
	for _, text := range corpus(f) {
		f.Add([]byte(text))
	}
	for _, text := range []string{"\ufeff", "a {\r} # b\rc", "at - 8 – 9 °C", "8 in 9 in x", "\"a\\\"", "1h30min2026-01-01T07:00", "((((", "{{{{", "}}}}", "0{A\";"} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		if len(text) > 1<<13 {
			t.Skip("long texts are the benchmarks' business")
		}
		file := source.New("x.malt", text)
		tree, found := Parse(file)
		checkTree(t, tree)
		assert.LessOrEqual(t, len(found), maxFindings+1+MaxNesting)
		for _, one := range found {
			assert.LessOrEqual(t, 0, one.Place.Start)
			assert.LessOrEqual(t, one.Place.Start, one.Place.End)
			assert.LessOrEqual(t, one.Place.End, len(text))
			assert.NotEmpty(t, one.Message)
		}
		again, same := Parse(file)
		assert.Equal(t, tree, again)
		assert.Equal(t, found, same)
	})
}
