package main

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// installedFiles are the sample and what else an archive has, as a package of this kind installs them.
func installedFiles(t *testing.T, k kind) map[string]entry {
	t.Helper()
	list := append(sampleEntries[:len(sampleEntries):len(sampleEntries)],
		entry{"NOTICE", 0o644, []byte("terms of others")}, entry{"README.md", 0o644, nil}, entry{"examples/pale.malt", 0o644, nil}, entry{"docs/install.md", 0o644, nil},
		entry{"completions/maltwright.bash", 0o644, nil}, entry{"completions/_maltwright", 0o644, nil}, entry{"completions/maltwright.fish", 0o644, nil})
	files, err := k.installed(list, changes(sampleCommit, "somebody"))
	require.NoError(t, err)
	byName := map[string]entry{}
	for _, f := range files {
		byName[f.name] = f
	}
	return byName
}

func TestAPackageOfDebianPutsFilesWhereDebianLooks(t *testing.T) {
	files := installedFiles(t, kinds[0])
	for _, name := range []string{
		"/usr/share/doc/maltwright/README.md", "/usr/share/doc/maltwright/examples/pale.malt", "/usr/share/doc/maltwright/docs/install.md",
		"/usr/share/bash-completion/completions/maltwright", "/usr/share/zsh/vendor-completions/_maltwright", "/usr/share/fish/vendor_completions.d/maltwright.fish",
	} {
		assert.Contains(t, files, name)
	}
	assert.Equal(t, 0o755, int(files["/usr/bin/maltwright"].mode))
	assert.Equal(t, "terms\nterms of others\n", string(files["/usr/share/doc/maltwright/copyright"].data))
	assert.Equal(t, "page", unpacked(t, files["/usr/share/man/man1/maltwright.1.gz"].data))
	assert.Equal(t, "maltwright (0.0.0~20260306070809.g104b3ffdcc11) unstable; urgency=medium\n\n  * See docs/changelog.md.\n\n -- somebody <maltwright>  Fri, 06 Mar 2026 07:08:09 +0000\n",
		unpacked(t, files["/usr/share/doc/maltwright/changelog.gz"].data))
	assert.Len(t, files, 10)
}

func TestAPackageOfRPMKeepsLicencesApart(t *testing.T) {
	files := installedFiles(t, kinds[1])
	assert.Contains(t, files, "/usr/share/licenses/maltwright/LICENSE")
	assert.Contains(t, files, "/usr/share/licenses/maltwright/NOTICE")
	assert.Contains(t, files, "/usr/share/zsh/site-functions/_maltwright")
	assert.NotContains(t, files, "/usr/share/doc/maltwright/copyright")
}

func TestWhatChangedIsReadByDebian(t *testing.T) {
	reader, err := exec.LookPath("dpkg-parsechangelog")
	if err != nil {
		t.Skip("dpkg-parsechangelog is not installed: the list of changes was not given to it")
	}
	file := filepath.Join(t.TempDir(), "changelog")
	require.NoError(t, os.WriteFile(file, []byte(changes(sampleCommit, "the maltwright authors")), 0o644))
	c := exec.Command(reader, "-l", file)
	c.Env = append(os.Environ(), "LC_ALL=C.UTF-8")
	out, err := c.CombinedOutput()
	require.NoError(t, err, "%s", out)
	assert.NotContains(t, string(out), "warning")
	assert.Contains(t, string(out), "Maintainer: the maltwright authors <maltwright>\n")
}

func unpacked(t *testing.T, data []byte) string {
	t.Helper()
	r, err := gzip.NewReader(bytes.NewReader(data))
	require.NoError(t, err)
	assert.True(t, r.ModTime.IsZero())
	text, err := io.ReadAll(r)
	require.NoError(t, err)
	return string(text)
}

func TestWhatThePackagerIsToldHasTheTimeOfTheCommitThroughout(t *testing.T) {
	r := release{commit: sampleCommit, maintainer: "Somebody <somebody@example.org>"}
	for _, k := range kinds {
		files, err := k.installed(sampleEntries, "")
		require.NoError(t, err)
		dir := t.TempDir()
		text, err := r.sheet(target{"linux", "arm", "6"}, k, files, dir)
		require.NoError(t, err)
		var s sheet
		require.NoError(t, json.Unmarshal(text, &s))
		assert.Equal(t, []string{"arm6", "linux", sampleCommit.version, "semver", "Somebody <somebody@example.org>", "2026-03-06T07:08:09Z"},
			[]string{s.Arch, s.Platform, s.Version, s.VersionSchema, s.Maintainer, s.Time})
		n := 0
		for _, c := range s.Contents {
			assert.Equal(t, []string{"2026-03-06T07:08:09Z", "root", "root"}, []string{c.FileInfo.Time, c.FileInfo.Owner, c.FileInfo.Group}, c.To)
			if c.Type == "dir" {
				assert.Contains(t, c.To, "/maltwright")
				continue
			}
			n++
			_, err := os.Stat(c.Source)
			assert.NoError(t, err, c.To)
		}
		assert.Equal(t, len(files), n)
	}
}
