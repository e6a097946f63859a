package editors

import (
	"context"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
)

const root = "../../.."

func TestMain(m *testing.M) {
	code := m.Run()
	if folder != "" {
		os.RemoveAll(folder)
	}
	os.Exit(code)
}

var (
	build  sync.Once
	folder string // with the program, built once for all tests
	failed error
)

// program gives the folder in which maltwright stands, as it is built of the sources.
func program(t *testing.T) string {
	t.Helper()
	build.Do(func() {
		if folder, failed = os.MkdirTemp("", "maltwright"); failed != nil {
			return
		}
		var out []byte
		if out, failed = exec.Command("go", "build", "-o", filepath.Join(folder, "maltwright"), "maltwright/cmd/maltwright").CombinedOutput(); failed != nil {
			failed = &buildError{failed, string(out)}
		}
	})
	require.NoError(t, failed)
	return folder
}

type buildError struct {
	error
	out string
}

func (e *buildError) Error() string { return e.error.Error() + "\n" + e.out }

// lookUp gives the path of a program, or skips the test.
func lookUp(t *testing.T, name string) string {
	t.Helper()
	if golden.Raced || golden.Updating() {
		t.Skip("the program that an editor starts is the same again")
	}
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skipf("%s is not here: what docs/editors says of it is NOT TESTED; .ci/run installs it", name)
	}
	return path
}

// page reads a page of docs/editors.
func page(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(root, "docs", "editors", name))
	require.NoError(t, err)
	return string(text)
}

// fenced gives the parts of a page in a language, as they are to be typed: without the indent of
// the list that they stand in.
func fenced(t *testing.T, name, language string) []string {
	t.Helper()
	var list []string
	for _, m := range regexp.MustCompile("(?ms)^( *)```"+language+"\n(.*?)^ *```$").FindAllStringSubmatch(page(t, name), -1) {
		list = append(list, strings.ReplaceAll("\n"+m[2], "\n"+m[1], "\n")[1:])
	}
	require.NotEmpty(t, list, "%s has nothing in %s", name, language)
	return list
}

// home makes a home for somebody who follows a page from the start: its lines for the shell have been
// typed at the root of the project, and the part in the language stands in the file.
func home(t *testing.T, name, language, file string) string {
	t.Helper()
	home := t.TempDir()
	for _, script := range fenced(t, name, "sh") {
		typed := exec.Command("sh", "-e", "-c", script)
		typed.Dir, typed.Env = root, environment(t, home)
		out, err := typed.CombinedOutput()
		require.NoError(t, err, "%s\n%s", script, out)
	}
	path := filepath.Join(home, filepath.FromSlash(file))
	require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
	require.NoError(t, os.WriteFile(path, []byte(strings.Join(fenced(t, name, language), "\n")), 0o644))
	return home
}

// environment is that of a person with this home and the program on the path.
func environment(t *testing.T, home string) []string {
	t.Helper()
	plain := slices.DeleteFunc(os.Environ(), func(v string) bool { return strings.HasPrefix(v, "XDG_") || strings.HasPrefix(v, "LC_") })
	return append(plain, "HOME="+home, "PATH="+program(t)+string(os.PathListSeparator)+os.Getenv("PATH"), "LC_ALL=C.UTF-8")
}

// copied puts examples into a folder of their own.
func copied(t *testing.T, names ...string) string {
	t.Helper()
	to := t.TempDir()
	for _, name := range names {
		text, err := os.ReadFile(filepath.Join(root, "examples", name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(to, name), text, 0o644))
	}
	return to
}

// patience is the longest that an editor may take, on a machine that has much else to do.
const patience = 3 * time.Minute

// answers are what an editor wrote down of its session, by what was asked of it.
type answers map[string]json.RawMessage

// text gives an answer that is a text.
func (a answers) text(t *testing.T, name string) string {
	t.Helper()
	var s string
	require.NoError(t, json.Unmarshal(a[name], &s), "%s: %s", name, a[name])
	return s
}

// texts gives an answer that is a list of texts.
func (a answers) texts(t *testing.T, name string) []string {
	t.Helper()
	var s []string
	require.NoError(t, json.Unmarshal(a[name], &s), "%s: %s", name, a[name])
	return s
}

// session lets an editor run a script in a folder. What it was asked stands in the file that
// $MALTWRIGHT_ANSWERS names, once it is through.
func session(t *testing.T, home, dir string, args ...string) answers {
	t.Helper()
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	told := filepath.Join(t.TempDir(), "answers.json")
	editor := exec.CommandContext(ctx, args[0], args[1:]...)
	editor.Dir, editor.Env = dir, append(environment(t, home), "MALTWRIGHT_ANSWERS="+told)
	out, err := editor.CombinedOutput()
	require.NoError(t, err, "%s", out)
	text, err := os.ReadFile(told)
	require.NoError(t, err, "%s", out)
	var a answers
	require.NoError(t, json.Unmarshal(text, &a), "%s\n%s", text, out)
	if failed := a["failed"]; failed != nil {
		t.Fatalf("%s\nup to there: %s\n%s", failed, text, out)
	}
	return a
}
