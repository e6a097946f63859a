//go:build unix

package read

import (
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Opening a pipe that nobody writes to would wait for ever.
func TestPipeIsRefusedWithoutWaiting(t *testing.T) {
	folder := house(t)
	require.NoError(t, syscall.Mkfifo(filepath.Join(folder, "pipe.malt"), 0o644))
	_, found := using(t, folder, "pipe.malt")
	assert.Equal(t, []string{`use-missing: "pipe.malt" is no regular file`}, found)
}
