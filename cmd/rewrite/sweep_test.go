package rewrite

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWhatKilledRunsLeftIsSwept(t *testing.T) {
	for name, run := range map[string]func(path string) error{
		"by who writes":   func(path string) error { return Edit(path, Options{}, to("new")) },
		"by who need not": func(path string) error { Sweep(path); return nil },
		"by who gives up": func(path string) error { return Edit(path, Options{}, to("old")) },
		"by who is refused": func(path string) error {
			_ = Edit(path, Options{}, func([]byte) ([]byte, error) { return nil, ErrLink })
			return nil
		},
	} {
		t.Run(name, func(t *testing.T) {
			path := write(t, 0o644)
			for _, left := range []string{".pale.malt.lock", ".pale.malt.new-123"} {
				require.NoError(t, os.WriteFile(filepath.Join(filepath.Dir(path), left), nil, 0o600))
			}
			require.NoError(t, run(path))
			alone(t, path)
		})
	}
}

func TestWhatMayBeInUseIsNotSwept(t *testing.T) {
	path := write(t, 0o644)
	others := []string{".pale.malt.new-", ".pale.malt.new-x", ".pale.malt.new-1.lock", ".other.malt.new-1", "pale.malt.new-1"}
	for _, name := range others {
		require.NoError(t, os.WriteFile(filepath.Join(filepath.Dir(path), name), nil, 0o600))
	}
	require.NoError(t, Edit(path, Options{Sync: func(f *os.File) error {
		Sweep(path) // somebody is writing
		return nil
	}}, to("new")))
	holds(t, path, "new")
	for _, name := range others {
		assert.FileExists(t, filepath.Join(filepath.Dir(path), name))
	}
}
