package invent

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/layout"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

type nowhere struct{}

func (nowhere) Read(string) ([]byte, error) { return nil, os.ErrNotExist }

func TestTheSameSeedWritesTheSameFile(t *testing.T) {
	assert.Equal(t, File(7), File(7))
	assert.NotEqual(t, File(7), File(8))
}

// However it is written, a file says the same, and is laid out in the same way: but for
// numbers, which keep the form that they were given.
func TestHoweverItIsWrittenItSaysTheSame(t *testing.T) {
	other := 0
	for seed := range uint64(20) {
		typed, plain := File(seed), file(seed, nil)
		if max(len(typed), len(plain)) > MostBytes*3/4 {
			continue // the longer of the two may have lost a process
		}
		if typed != plain {
			other++
		}
		assert.Equal(t, said(t, plain), said(t, typed), "seed %d", seed)
		assert.Equal(t, said(t, typed), said(t, string(layout.Write(tree(t, typed)))), "seed %d, laid out", seed)
	}
	assert.Greater(t, other, 8, "too few are written otherwise for this to ask anything")
}

func tree(t *testing.T, text string) *syntax.Tree {
	parsed, found := syntax.Parse(source.New("x.malt", []byte(text)))
	require.Empty(t, found)
	return parsed
}

func said(t *testing.T, text string) string { return string(layout.Plain(tree(t, text))) }

// What does not read is told before anything is forecast, and shows little: most files
// must come through.
func TestMostFilesReadAndNoneIsTooLong(t *testing.T) {
	const files = 60
	sound := 0
	for seed := range uint64(files) {
		text := File(seed)
		assert.LessOrEqual(t, len(text), MostBytes)
		_, found := read.Load("x.malt", []byte(text), ".", nowhere{})
		if worst, any := finding.Worst(found); !any || worst < finding.Fault {
			sound++
		}
	}
	assert.Greater(t, sound, files*2/3)
}
