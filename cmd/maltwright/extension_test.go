package main

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// extensionModules names a folder in which npm installed what the package.json of the extension asks for.
const extensionModules = "MALTWRIGHT_VSCODE"

const extensionFolder = "../../docs/editors/vscode"

// mostOfExtension is the most that the packed extension may weigh, in bytes.
const mostOfExtension = 160 << 10

// packExtension packs the extension into a new folder, and gives the file.
func packExtension(t *testing.T, args ...string) string {
	t.Helper()
	if os.Getenv(extensionModules) == "" {
		t.Skip(extensionModules + " names no folder with the modules of the extension: it is NOT TESTED; .ci/run installs them")
	}
	out := filepath.Join(t.TempDir(), "maltwright.vsix")
	pack := exec.Command(installed(t, "node"), append([]string{filepath.Join(extensionFolder, "package.js"), out}, args...)...)
	said, err := pack.CombinedOutput()
	require.NoError(t, err, "%s", said)
	return out
}

func TestExtensionIsPackedToTheSameBytes(t *testing.T) {
	first, again := packExtension(t, "1.2.3"), packExtension(t, "1.2.3")
	a, err := os.ReadFile(first)
	require.NoError(t, err)
	b, err := os.ReadFile(again)
	require.NoError(t, err)
	assert.True(t, bytes.Equal(a, b), "the same sources give other bytes")
	assert.LessOrEqual(t, len(a), mostOfExtension)
	t.Logf("%d bytes", len(a))

	files := unpack(t, first)
	manifest, err := os.ReadFile(filepath.Join(files, "package.json"))
	require.NoError(t, err)
	assert.Contains(t, string(manifest), `"version": "1.2.3"`)
	assert.Contains(t, string(manifest), ` Of maltwright 1.2.3."`)
	terms, err := os.ReadFile(filepath.Join(files, "third-party.txt"))
	require.NoError(t, err)
	for _, name := range []string{"vscode-languageclient 11.0.0 (MIT)", "semver ", "minimatch "} {
		assert.Contains(t, string(terms), name)
	}
}

// Of a commit without a version the three numbers, which is all that an editor takes, grow with its time, and the whole is named.
func TestExtensionOfACommitTellsWhichItIs(t *testing.T) {
	const whole = "0.0.0-20260306070809.g104b3ffdcc11"
	files := unpack(t, packExtension(t, whole))
	text, err := os.ReadFile(filepath.Join(files, "package.json"))
	require.NoError(t, err)
	var manifest struct{ Version, Description string }
	require.NoError(t, json.Unmarshal(text, &manifest))
	assert.Equal(t, "0.0.20260306070809", manifest.Version)
	assert.Contains(t, manifest.Description, "Of maltwright "+whole+".")
	changes, err := os.ReadFile(filepath.Join(files, "CHANGELOG.md"))
	if errors.Is(err, os.ErrNotExist) { // the packer of the editor writes it small
		changes, err = os.ReadFile(filepath.Join(files, "changelog.md"))
	}
	require.NoError(t, err)
	assert.Contains(t, string(changes), "\n## 0.0.20260306070809, of maltwright "+whole+"\n")
}

// unpack gives the folder of the extension as an editor has it.
func unpack(t *testing.T, vsix string) string {
	t.Helper()
	archive, err := zip.OpenReader(vsix)
	require.NoError(t, err)
	defer archive.Close()
	dir := t.TempDir()
	for _, f := range archive.File {
		name, ok := strings.CutPrefix(f.Name, "extension/")
		if !ok {
			continue
		}
		r, err := f.Open()
		require.NoError(t, err)
		text, err := io.ReadAll(r)
		require.NoError(t, err)
		to := filepath.Join(dir, filepath.FromSlash(name))
		require.NoError(t, os.MkdirAll(filepath.Dir(to), 0o755))
		require.NoError(t, os.WriteFile(to, text, 0o644))
	}
	return dir
}

// TestExtension runs what is shipped in a stand-in of an editor, with this program as its server. What it asks stands in
// docs/editors/vscode/test.
func TestExtension(t *testing.T) {
	shipped := unpack(t, packExtension(t))
	self, err := os.Executable()
	require.NoError(t, err)
	program := filepath.Join(t.TempDir(), "maltwright")
	require.NoError(t, os.Symlink(self, program))
	tests, err := filepath.Glob(filepath.Join(extensionFolder, "test", "*.test.js"))
	require.NoError(t, err)
	require.NotEmpty(t, tests)
	run := exec.Command(installed(t, "node"), append([]string{"--test", "--test-reporter=spec"}, tests...)...)
	run.Env = append(os.Environ(), "TZ=UTC", "XDG_CACHE_HOME="+t.TempDir(), "MALTWRIGHT="+program, "MALTWRIGHT_EXTENSION="+shipped,
		"NODE_PATH="+filepath.Join(os.Getenv(extensionModules), "node_modules"))
	said, err := run.CombinedOutput()
	require.NoError(t, err, "%s", said)
	assert.Contains(t, string(said), "pass ")
	t.Logf("%s", said)
}
