package main

import (
	"go/format"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// folder is an empty folder of rules with two families.
func folder(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(dir, "testdata"), 0o755))
	for _, f := range []string{"family_kiln.go", "family_lot.go"} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, f), []byte("package rules\n"), 0o644))
	}
	return dir
}

func TestSkeletonIsGoAndCases(t *testing.T) {
	dir := folder(t)
	left, err := write(dir, "kiln", "bed-of-ash")
	require.NoError(t, err)
	assert.Contains(t, left, "add bedOfAsh to the list in "+filepath.Join(dir, "family_kiln.go"))

	path := filepath.Join(dir, "bed-of-ash.go")
	code, err := os.ReadFile(path)
	require.NoError(t, err)
	file, err := parser.ParseFile(token.NewFileSet(), path, code, 0)
	require.NoError(t, err)
	assert.NotNil(t, file.Scope.Lookup("bedOfAsh"))
	assert.Contains(t, string(code), `Name: "bed-of-ash"`)
	tidy, err := format.Source(code)
	require.NoError(t, err)
	assert.Equal(t, string(tidy), string(code))

	archive, err := txtar.ParseFile(filepath.Join(dir, "testdata", "bed-of-ash.txtar"))
	require.NoError(t, err)
	require.Len(t, archive.Files, 2)
}

func TestNothingIsOverwritten(t *testing.T) {
	for _, there := range []string{"bed-of-ash.go", "testdata/bed-of-ash.txtar"} {
		dir := folder(t)
		require.NoError(t, os.WriteFile(filepath.Join(dir, there), []byte("mine"), 0o644))
		_, err := write(dir, "kiln", "bed-of-ash")
		require.ErrorContains(t, err, "is there already")
		text, err := os.ReadFile(filepath.Join(dir, there))
		require.NoError(t, err)
		assert.Equal(t, "mine", string(text))
		files, err := filepath.Glob(filepath.Join(dir, "*", "bed-of-ash*"))
		require.NoError(t, err)
		more, err := filepath.Glob(filepath.Join(dir, "bed-of-ash*"))
		require.NoError(t, err)
		assert.Len(t, append(files, more...), 1, "both files or neither")
	}
}

func TestWhatIsNoRuleIsRefused(t *testing.T) {
	dir := folder(t)
	for _, name := range []string{"", "Bed", "bed_of_ash", "-bed", "bed-", "bed--ash", "../bed", "bed.go", "9-lives", "bed of"} {
		_, err := write(dir, "kiln", name)
		assert.ErrorContains(t, err, "is no name of a rule", name)
	}
	_, err := write(dir, "barn", "bed")
	assert.EqualError(t, err, `there is no family "barn"; there are kiln, lot`)
}

func TestVariablesAreGo(t *testing.T) {
	assert.Equal(t, "soakTooLong", variable("soak-too-long"))
	assert.Equal(t, "co2Room", variable("co2-room"))
	assert.Equal(t, "dust", variable("dust"))
	assert.Equal(t, "rangeRule", variable("range"))
}
