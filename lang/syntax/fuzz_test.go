package syntax

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/source"
	"maltwright/lang/source/spoil"
)

// FuzzParse reads any text at all: it must not fail, every node and every finding
// must stand in the text, and what is read must be the same when read again.
//
// Texts are short, and so are the seeds: whatever covers something new is minimised, in
// as many tries as the square of its length, and those tries are no runs. With whole
// files the hunt stands still for a minute after each find.
func FuzzParse(f *testing.F) {
	for _, text := range corpus(f) {
		for _, piece := range spoil.Pieces(text, longestFuzzed) {
			f.Add([]byte(piece))
		}
	}
	for _, text := range []string{"\ufeff", "a {\r} # b\rc", "at - 8 – 9 °C", "8 in 9 in x", "\"a\\\"", "1h30min2026-01-01T07:00", "((((", "{{{{", "}}}}", "0{A\";", "awake 7 to 10 pm\nat 7:30", "a 62 degrees\nb 60 ° F", "a -.5-½ x", "awake noon to midnight", "a 8 sq in", "turn 00at 0 0000-0-0"} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		if len(text) > longestFuzzed {
			return // long texts are the business of the benchmarks
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

// longestFuzzed is enough for every form of statement, for too many findings and for
// too many blocks inside each other.
const longestFuzzed = 160 // bytes
