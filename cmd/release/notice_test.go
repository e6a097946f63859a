package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// modulesOf are the modules of others in the program of a target, with their versions, asked in another way than notice does.
func modulesOf(t *testing.T, of target) []string {
	t.Helper()
	out, err := output(t.Context(), "../..", of.env(), "go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}{{end}}{{end}}", "./cmd/maltwright")
	require.NoError(t, err)
	list := slices.Sorted(strings.Lines(out))
	return slices.DeleteFunc(slices.Compact(list), func(line string) bool { return strings.TrimSpace(line) == "" })
}

func TestTheLicenceOfEachModuleInAProgramGoesWithIt(t *testing.T) {
	root, err := filepath.Abs("../..")
	require.NoError(t, err)
	for _, of := range []target{targets[0], targets[3], targets[5]} { // one of each system
		text, err := notice(t.Context(), root, of)
		require.NoError(t, err)
		modules := modulesOf(t, of)
		require.Greater(t, len(modules), 10)
		for _, m := range modules {
			_, below, found := strings.Cut(string(text), strings.Repeat("=", 78)+"\n"+m)
			if !assert.True(t, found, "%s: nothing of %s", of, m) {
				continue
			}
			below, _, _ = strings.Cut(below, strings.Repeat("=", 78))
			assert.Regexp(t, `(?i)permission is hereby granted|redistribution and use in source|apache license`, strings.Join(strings.Fields(below), " "), "%s: the terms of %s", of, m)
		}
		assert.Contains(t, string(text), "Go, its library, go")
		assert.Contains(t, string(text), "Bigelow & Holmes", "the terms of the fonts")
		assert.Contains(t, string(text), "--- THIRD_PARTY_LICENSES/Cephes-LICENSE", "the terms of what gonum took from others")
		assert.NotContains(t, string(text), "\r")
	}
}

func TestFilesOfTermsAreKnownByTheirNames(t *testing.T) {
	for _, name := range []string{"LICENSE", "LICENSE.txt", "licence.md", "LICENSE-MIT", "COPYING", "NOTICE", "PATENTS", "THIRD_PARTY_LICENSES", "LICENSE.color.org"} {
		assert.True(t, licensing.MatchString(name), name)
	}
	for _, name := range []string{"README.md", "noticed.txt", "copying2"} {
		assert.False(t, licensing.MatchString(name), name)
	}
}

func TestAModuleWithoutTermsIsToldOf(t *testing.T) {
	dir := t.TempDir()
	assert.Empty(t, terms(dir))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "license.go"), nil, 0o644))
	assert.Empty(t, terms(dir), "code is no terms")
	require.NoError(t, os.WriteFile(filepath.Join(dir, "LICENSE"), nil, 0o644))
	assert.Len(t, terms(dir), 1)
}
