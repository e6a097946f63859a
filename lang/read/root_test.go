package read

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// house makes a folder with a house file in it, beside one that must not be read.
func house(t *testing.T) (folder string) {
	outer := t.TempDir()
	folder = filepath.Join(outer, "house")
	require.NoError(t, os.MkdirAll(filepath.Join(folder, "rooms"), 0o755))
	write(t, filepath.Join(outer, "secret.malt"), `vessel "secret" { holds 1 l }`)
	write(t, filepath.Join(folder, "loft.malt"), `vessel "blue tub" { holds 25 l }`)
	return folder
}

func write(t *testing.T, path, text string) {
	require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
}

// using loads a text that uses one path below the folder and tells what was found.
func using(t *testing.T, folder, path string) (vessels int, rules []string) {
	root, err := OpenRoot(folder)
	require.NoError(t, err)
	defer root.Close()
	h, found := Load("main.malt", []byte(`use "`+path+`"`), ".", root)
	for _, f := range found {
		rules = append(rules, f.Rule+": "+f.Message)
	}
	return len(h.Vessels), rules
}

func TestUsedFileBelowTheFolderIsRead(t *testing.T) {
	folder := house(t)
	n, found := using(t, folder, "loft.malt")
	assert.Empty(t, found)
	assert.Equal(t, 1, n)
	n, found = using(t, folder, "rooms/../loft.malt")
	assert.Empty(t, found)
	assert.Equal(t, 1, n)
}

func TestNothingOutsideTheFolderIsRead(t *testing.T) {
	folder := house(t)
	link(t, "../secret.malt", filepath.Join(folder, "link.malt"))
	link(t, filepath.Dir(folder), filepath.Join(folder, "up"))
	for path, want := range map[string]string{
		"../secret.malt":          `use-outside: "../secret.malt" leads out of the folder of the process`,
		"rooms/../../secret.malt": `use-outside: "rooms/../../secret.malt" leads out of the folder of the process`,
		"/etc/passwd":             `use-outside: "/etc/passwd" is an absolute path`,
		`..\\secret.malt`:         `use-outside: "..\secret.malt" is no plain path: write folders with /`,
		`..\secret.malt`:          `use-outside: "..\secret.malt" is no plain path: write folders with /`,
		`rooms\loft.malt`:         `use-outside: "rooms\loft.malt" is no plain path: write folders with /`,
		"C:/secret.malt":          `use-outside: "C:/secret.malt" is no plain path: write folders with /`,
		"":                        `use-outside: "" names no file`,
		"link.malt":               `use-missing: "link.malt" leads out of the folder of the process`,
		"up/secret.malt":          `use-missing: "up/secret.malt" leads out of the folder of the process`,
		"rooms":                   `use-missing: "rooms" is a folder`,
		"none.malt":               `use-missing: "none.malt" is not there`,
		"loft.malt/x":             `use-missing: "loft.malt/x" is not there`,
	} {
		n, found := using(t, folder, path)
		assert.Zero(t, n, path)
		assert.Equal(t, []string{want}, found, path)
	}
}

func TestLinkInsideTheFolderIsFollowed(t *testing.T) {
	folder := house(t)
	link(t, "loft.malt", filepath.Join(folder, "same.malt"))
	n, found := using(t, folder, "same.malt")
	assert.Empty(t, found)
	assert.Equal(t, 1, n)
}

func link(t *testing.T, to, at string) {
	if err := os.Symlink(to, at); err != nil {
		t.Skip("no links here:", err)
	}
}

func TestUsedFileOfTooManyBytesIsRefused(t *testing.T) {
	folder := house(t)
	f, err := os.Create(filepath.Join(folder, "big.malt"))
	require.NoError(t, err)
	require.NoError(t, f.Truncate(1<<30))
	require.NoError(t, f.Close())
	_, found := using(t, folder, "big.malt")
	require.Len(t, found, 1)
	assert.Contains(t, found[0], "file-too-large")
}
