package main

import (
	"bytes"
	"errors"
	"io"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/alecthomas/kong"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestATargetIsNamedAsPeopleDo(t *testing.T) {
	var names []string
	for _, t := range targets {
		names = append(names, t.named())
	}
	assert.Equal(t, []string{"linux-amd64", "linux-arm64", "linux-armv6", "macos-amd64", "macos-arm64", "windows-amd64", "windows-arm64"}, names)
}

func TestAnUnknownTargetIsToldWithThoseThereAre(t *testing.T) {
	_, err := chosen([]string{"linux/amd64", "plan9/mips"})
	assert.EqualError(t, err, "plan9/mips is no target of a release; they are linux/amd64, linux/arm64, linux/arm, darwin/amd64, darwin/arm64, windows/amd64, windows/arm64")
	_, err = chosen([]string{"linux/amd46"})
	assert.EqualError(t, err, "linux/amd46 is no target of a release; did you mean linux/amd64?")
	list, err := chosen([]string{"windows/arm64", "linux/arm", "linux/arm"})
	require.NoError(t, err)
	assert.Equal(t, []target{targets[2], targets[6]}, list)
	list, err = chosen(nil)
	require.NoError(t, err)
	assert.Equal(t, targets, list)
}

// A target goes by the name of its files too: the program of another processor is never made for it.
func TestATargetGoesByTheNameOfItsFilesToo(t *testing.T) {
	for _, want := range targets {
		for _, name := range []string{want.named(), strings.Replace(want.named(), "-", "/", 1), want.String()} {
			list, err := chosen([]string{name})
			require.NoError(t, err)
			assert.Equal(t, []target{want}, list, name)
		}
	}
	_, err := chosen([]string{"linux/armv66"})
	assert.EqualError(t, err, "linux/armv66 is no target of a release; did you mean linux/armv6?")
}

func TestAnEmptyChoiceOfTargetsIsRefused(t *testing.T) {
	for _, names := range [][]string{{}, {""}, {" "}, {"linux/amd64", ""}} {
		_, err := chosen(names)
		assert.ErrorContains(t, err, "--only names no target; they are linux/amd64", "%q", names)
	}
}

// repository makes one with a commit in it.
func repository(t *testing.T) (dir string, git func(args ...string)) {
	t.Helper()
	if _, err := exec.LookPath("git"); err != nil {
		t.Skip("git is not installed: what it tells of a commit was not tried")
	}
	dir = t.TempDir()
	git = func(args ...string) {
		t.Helper()
		_, err := output(t.Context(), dir, []string{"GIT_COMMITTER_DATE=2026-03-06T08:08:09+01:00", "GIT_AUTHOR_DATE=2020-01-01T00:00:00Z"}, "git",
			append([]string{"-c", "user.name=n", "-c", "user.email=e@example.org", "-c", "commit.gpgsign=false"}, args...)...)
		require.NoError(t, err)
	}
	git("init", "--quiet")
	git("commit", "--quiet", "--allow-empty", "--message", "first")
	return dir, git
}

func TestTheVersionIsThatOfTheCommit(t *testing.T) {
	dir, git := repository(t)
	c, err := commitOf(t.Context(), dir, false)
	require.NoError(t, err)
	assert.Equal(t, "0.0.0-20260306070809.g"+c.hash[:12], c.version)
	assert.True(t, c.time.Equal(sampleTime), "the time of the commit, in UTC")
	assert.Equal(t, "0.0.0-20260306070809.g"+c.hash[:12]+" "+c.hash+" 1772780889", c.stamp())

	git("tag", "v1.2.3")
	c, err = commitOf(t.Context(), dir, false)
	require.NoError(t, err)
	assert.Equal(t, "1.2.3", c.version)

	require.NoError(t, os.WriteFile(filepath.Join(dir, "new file.go"), nil, 0o644))
	_, err = commitOf(t.Context(), dir, false)
	assert.EqualError(t, err, `1 of the files here are in no commit, such as "new file.go"; commit or remove them, or say --changed`)
	c, err = commitOf(t.Context(), dir, true)
	require.NoError(t, err)
	assert.Equal(t, "1.2.3+changed", c.version)
}

func TestATagThatIsNoVersionIsToldOf(t *testing.T) {
	dir, git := repository(t)
	git("tag", "v2-final")
	_, err := commitOf(t.Context(), dir, false)
	assert.EqualError(t, err, "the tag v2-final is no version; they look like v1.2.3")
}

func TestWithoutACommitThereIsNoRelease(t *testing.T) {
	_, err := commitOf(t.Context(), t.TempDir(), true)
	assert.ErrorContains(t, err, "a release is made of a commit")
}

// What did not become whole leaves nothing.
func TestAHalfFinishedReleaseLeavesNothing(t *testing.T) {
	parent := t.TempDir()
	out := filepath.Join(parent, "deep", "out")
	var during, scratch string
	err := staged(out, func(dir, s string) error {
		during, scratch = filepath.Base(dir), s
		require.NoError(t, os.WriteFile(filepath.Join(dir, "file"), nil, 0o644))
		return errors.New("broke off")
	})
	assert.EqualError(t, err, "broke off")
	assert.True(t, strings.HasPrefix(during, "out.unfinished-"), during)
	left, err := os.ReadDir(filepath.Dir(out))
	require.NoError(t, err)
	assert.Empty(t, left)
	assert.NoDirExists(t, scratch)

	require.NoError(t, staged(out, func(dir, _ string) error { return os.WriteFile(filepath.Join(dir, "file"), nil, 0o644) }))
	assert.FileExists(t, filepath.Join(out, "file"))
	assert.ErrorContains(t, staged(out, nil), "is there already; name another folder, or remove it")
	for _, below := range []string{"x", filepath.Join("x", "y")} {
		err = staged(filepath.Join(out, "file", below), nil)
		assert.ErrorContains(t, err, "a part of its path is a file; name another folder")
		assert.ErrorAs(t, err, &usage{})
	}
}

// An empty value of --only reaches the choice of targets as one, and is no word to make them all.
func TestAnEmptyOnlyIsNoReleaseOfAll(t *testing.T) {
	for _, only := range []string{"--only=", "--only=,"} {
		var line asked
		parser, err := kong.New(&line)
		require.NoError(t, err)
		_, err = parser.Parse([]string{"--out", filepath.Join(t.TempDir(), "out"), only})
		require.NoError(t, err)
		assert.ErrorAs(t, line.run(t.Context(), io.Discard), &usage{}, only)
	}
}

func TestOfTheRepositoryGoesAlongWhatReadersNeed(t *testing.T) {
	for name, goes := range map[string]bool{
		"docs/editors/vscode/README.md": true, "docs/editors/vscode/test/editor.js": false, "docs/editors/vscode/trial/serve.js": false, "examples/pale.malt": true,
	} {
		assert.Equal(t, goes, goesAlong(name), name)
	}
}

// No page that goes along leads to a file that does not.
func TestNoPageThatGoesAlongLeadsToWhatDoesNot(t *testing.T) {
	top := "../.."
	out, err := output(t.Context(), top, nil, "git", append([]string{"ls-files", "-z", "--"}, carried...)...)
	if err != nil {
		t.Skip("no repository of git is here: which pages go along is not known")
	}
	link := regexp.MustCompile(`\]\(([^)#:\s]+)(?:#[^)]*)?\)`)
	links := 0
	for name := range strings.SplitSeq(strings.TrimRight(out, "\x00"), "\x00") {
		if !goesAlong(name) || !strings.HasSuffix(name, ".md") {
			continue
		}
		text, err := os.ReadFile(filepath.Join(top, name))
		require.NoError(t, err)
		for _, m := range link.FindAllStringSubmatch(string(text), -1) {
			links++
			assert.True(t, goesAlong(path.Join(path.Dir(name), m[1])+"/"), "%s leads to %s", name, m[1])
		}
	}
	assert.Greater(t, links, 100)
}

func TestChecksumsAreReadByOthers(t *testing.T) {
	r := release{dir: t.TempDir(), say: io.Discard}
	require.NoError(t, os.WriteFile(filepath.Join(r.dir, "b.zip"), []byte("b"), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(r.dir, "a.deb"), []byte("abc"), 0o644))
	require.NoError(t, r.sums())
	text, err := os.ReadFile(filepath.Join(r.dir, sumsFile))
	require.NoError(t, err)
	// that of "abc" is the example of FIPS 180-4, from memory; sha256sum judges both below
	assert.Equal(t, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  a.deb\n3e23e8160039594a33894f6564e1b1348bbd7a0088d42c4acb73eeaed59c009d  b.zip\n", string(text))
	if _, err := exec.LookPath("sha256sum"); err != nil {
		t.Skip("sha256sum is not installed: the file was not given to it")
	}
	out, err := output(t.Context(), r.dir, nil, "sha256sum", "--check", "--strict", sumsFile)
	require.NoError(t, err)
	assert.Equal(t, "a.deb: OK\nb.zip: OK\n", out)
}

func TestAReleaseWithoutTheToolsOfAnExtensionSaysSo(t *testing.T) {
	var said bytes.Buffer
	r := release{root: t.TempDir(), say: &said}
	require.NoError(t, r.extension(t.Context()))
	assert.Equal(t, "the extension of VS Code is left out: docs/editors/vscode/package.js is not there\n", said.String())
}
