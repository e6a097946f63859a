package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAFileThatAnEditorNamedOtherwiseIsTold(t *testing.T) {
	for name, want := range map[string]string{
		"pale.txt":      "; if pale.txt is one, save it as plain text (UTF-8) and name it pale.malt",
		"pale.malt.txt": "; if pale.malt.txt is one, save it as plain text (UTF-8) and name it pale.malt",
		"Pale.RTF":      "; if Pale.RTF is one, save it as plain text (UTF-8) and name it Pale.malt",
		"scan.png":      "below this folder",
	} {
		dir := t.TempDir()
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte("soak 8 h\n"), 0o600))
		err := World{Folder: dir}.none(".")
		require.Error(t, err)
		assert.Regexp(t, "below this folder", err.Error())
		assert.Contains(t, err.Error(), want)
		if name == "scan.png" {
			assert.NotContains(t, err.Error(), name)
		}
	}
}
