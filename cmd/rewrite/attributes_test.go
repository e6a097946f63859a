//go:build linux || darwin

package rewrite

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"
)

func TestExtendedAttributesAreKept(t *testing.T) {
	path := write(t, 0o644)
	want := map[string]string{"user.house": "loft", "user.empty": "", "user.bytes": "\x00\xff"}
	for name, value := range want {
		if err := unix.Setxattr(path, name, []byte(value), 0); err != nil {
			t.Skipf("no extended attributes here: %v", err)
		}
	}
	require.NoError(t, Edit(path, Options{}, to("new")))
	holds(t, path, "new")
	for name, value := range want {
		to := make([]byte, 100)
		n, err := unix.Getxattr(path, name, to)
		require.NoError(t, err, name)
		assert.Equal(t, value, string(to[:n]), name)
	}
}

func TestAnAttributeThatCannotBeKeptIsToldBeforeWriting(t *testing.T) {
	f, err := os.CreateTemp(t.TempDir(), "x")
	require.NoError(t, err)
	defer f.Close()
	err = giveAttributes(f, []attribute{{"nowhere.house", []byte("loft")}})
	assert.EqualError(t, err, "its extended attribute nowhere.house would be lost, since you may not set it; ask its owner, or work on a copy")
}
