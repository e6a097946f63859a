package rewrite

import (
	"os"
	"path/filepath"
	"strconv"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Each adds one to what it reads: without the lock some would be lost.
func TestOneHolderAtATime(t *testing.T) {
	path := write(t, 0o644)
	require.NoError(t, os.WriteFile(path, []byte("0"), 0o644))
	const holders, each = 8, 25
	var wait sync.WaitGroup
	for range holders {
		wait.Go(func() {
			for range each {
				release, err := Lock(path)
				if !assert.NoError(t, err) {
					return
				}
				text, _ := os.ReadFile(path)
				n, _ := strconv.Atoi(string(text))
				assert.NoError(t, File(path, text, []byte(strconv.Itoa(n+1))))
				release()
			}
		})
	}
	wait.Wait()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, strconv.Itoa(holders*each), string(text))
	alone(t, path)
}

func TestALockLeftBehindHoldsUpNobody(t *testing.T) {
	path := write(t, 0o644)
	left := filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".lock")
	require.NoError(t, os.WriteFile(left, nil, 0o600))
	release, err := Lock(path)
	require.NoError(t, err)
	release()
	alone(t, path)
}

func TestAFolderThatIsNotThereCannotBeLocked(t *testing.T) {
	_, err := Lock(filepath.Join(t.TempDir(), "none", "x.malt"))
	assert.ErrorIs(t, err, os.ErrNotExist)
}
