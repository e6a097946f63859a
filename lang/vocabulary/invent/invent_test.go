package invent

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/finding"
	"maltwright/lang/read"
)

type nowhere struct{}

func (nowhere) Read(string) ([]byte, error) { return nil, os.ErrNotExist }

func TestTheSameSeedWritesTheSameFile(t *testing.T) {
	assert.Equal(t, File(7), File(7))
	assert.NotEqual(t, File(7), File(8))
}

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
