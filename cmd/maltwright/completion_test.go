package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// run runs a command line and gives what it wrote and its exit code.
func run(args ...string) (out, errs string, code int) {
	var o, e bytes.Buffer
	world := World{In: strings.NewReader(""), Out: &o, Err: &e, Folder: "", Env: func(string) string { return "" }}
	code = Main(world, args)
	return o.String(), e.String(), code
}

// completions are lines as far as they are typed, and what must be offered. The
// folder holds pale ale.malt, notes.txt and the folder houses.
var completions = []struct {
	typed string
	offer []string
}{
	{"maltwright ", commandWords},
	{"maltwright chart --of ", []string{"moisture", "weight", "heat", "growth", "bed", "drivers", "lengths", "all"}},
	{"maltwright fo", []string{"follow", "forecast"}},
	{"maltwright zz", nil},
	{"maltwright reckon ", []string{"basis", "germination", "moisture", "target", "weight", "yield"}},
	{"maltwright reckon ta", []string{"target"}},
	{"maltwright reckon target ", nil},
	{"maltwright reckon target 6kg 12.4% --l", []string{"--lost"}},
	{"maltwright reckon --format json mo", []string{"moisture"}},
	{"maltwright reckon target --format ", []string{"json", "text"}},
	{"maltwright reckon target --lost ", nil},
	{"maltwright check --fail-on d", []string{"danger"}},
	{"maltwright check ", []string{"houses", "pale ale.malt"}},
	{"maltwright check pa", []string{"pale ale.malt"}},
	{"maltwright check forecast ", []string{"houses", "pale ale.malt"}},
	{"maltwright check --root ", []string{"houses"}},
	{"maltwright forecast --format j", []string{"json"}},
	{"maltwright explain air-of", []string{"air-off"}},
	{"maltwright man fo", []string{"follow", "forecast"}},
	{"maltwright man lan", []string{"language"}},
	{"maltwright new --like home", []string{"home-dehydrator", "home-oven"}},
	{"maltwright completion ", []string{"bash", "fish", "zsh"}},
}

func completionScript(t *testing.T, shell string) string {
	out, errs, code := run("completion", shell)
	require.Zero(t, code, errs)
	require.Empty(t, errs)
	return out
}

// installed finds a shell, or skips aloud.
func installed(t *testing.T, name string) string {
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skipf("%s is not installed: its completion script was not tried", name)
	}
	return path
}

// completed makes the folder in which names are completed, with the script beside it.
func completed(t *testing.T, script string) (dir, file string) {
	root := t.TempDir()
	dir, file = filepath.Join(root, "here"), filepath.Join(root, "script")
	require.NoError(t, os.MkdirAll(filepath.Join(dir, "houses"), 0o755))
	for _, name := range []string{"pale ale.malt", "notes.txt"} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), nil, 0o644))
	}
	require.NoError(t, os.WriteFile(file, []byte(script), 0o644))
	return dir, file
}

// offered runs a shell and gives the lines it writes, in order, without the stroke
// behind a folder and without what stands behind a tab.
func offered(t *testing.T, dir, shell string, args ...string) []string {
	c := exec.Command(shell, args...)
	c.Dir = dir
	home := t.TempDir() // whoever runs the tests may have completions of their own
	c.Env = append(os.Environ(), "LC_ALL=C.UTF-8", "HOME="+home, "XDG_CONFIG_HOME="+home, "XDG_DATA_HOME="+home)
	var errs bytes.Buffer
	c.Stderr = &errs
	out, err := c.Output()
	require.NoError(t, err, errs.String())
	require.Empty(t, errs.String())
	var list []string
	for line := range strings.Lines(string(out)) {
		word, _, _ := strings.Cut(strings.TrimSpace(line), "\t")
		if word != "" {
			list = append(list, strings.TrimSuffix(word, "/"))
		}
	}
	return list
}

func TestBashCompletes(t *testing.T) {
	bash := installed(t, "bash")
	dir, file := completed(t, completionScript(t, "bash"))
	offered(t, dir, bash, "--norc", "-n", file)
	const ask = `source "$1"; shift; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _maltwright; printf '%s\n' "${COMPREPLY[@]}"`
	for _, c := range completions {
		typed := strings.Split(c.typed, " ")
		assert.ElementsMatch(t, c.offer, offered(t, dir, bash, append([]string{"--norc", "-c", ask, "bash", file}, typed...)...), c.typed)
	}
	// Bash parts a flag from its value at the sign.
	typed := []string{"maltwright", "check", "--format", "=", "li"}
	assert.Equal(t, []string{"lines"}, offered(t, dir, bash, append([]string{"--norc", "-c", ask, "bash", file}, typed...)...))
	typed = []string{"maltwright", "check", "--format", "="}
	assert.ElementsMatch(t, []string{"text", "lines", "json", "sarif"}, offered(t, dir, bash, append([]string{"--norc", "-c", ask, "bash", file}, typed...)...))
}

func TestFishCompletes(t *testing.T) {
	fish := installed(t, "fish")
	dir, file := completed(t, completionScript(t, "fish"))
	offered(t, dir, fish, "--no-config", "-n", file)
	for _, c := range completions {
		got := offered(t, dir, fish, "--no-config", "-c", `source $argv[1]; complete -C $argv[2]`, file, c.typed)
		for i := range got { // fish writes a space in a name as one would type it
			got[i] = strings.ReplaceAll(got[i], `\ `, " ")
		}
		assert.ElementsMatch(t, c.offer, got, c.typed)
	}
}

func TestZshTakesItsScript(t *testing.T) {
	zsh := installed(t, "zsh")
	dir, file := completed(t, completionScript(t, "zsh"))
	offered(t, dir, zsh, "-f", "-n", file)
	got := offered(t, dir, zsh, "-f", "-c", `autoload -U compinit; compinit -D -u; source $1; print ${_comps[maltwright]}`, "zsh", file)
	assert.Equal(t, []string{"_maltwright"}, got)
}

func TestScriptsNameNoPathOfTheMachine(t *testing.T) {
	absolute := regexp.MustCompile(`(?m)(^|[\s'"=(])(/\w|[A-Za-z]:\\|~/)`)
	for _, shell := range []string{"bash", "zsh", "fish"} {
		assert.Empty(t, absolute.FindString(completionScript(t, shell)), shell)
	}
}

func TestOtherShellsAreRefused(t *testing.T) {
	out, errs, code := run("completion", "tcsh")
	assert.Equal(t, ExitUsage, code)
	assert.Empty(t, out)
	assert.Contains(t, errs, "tcsh")
}
