package main

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	_ "time/tzdata" // the zones of the scripts, on every machine

	"github.com/rogpeppe/go-internal/testscript"

	"maltwright/lang/source/golden"
)

// TestMain makes the real program known to the scripts.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"maltwright": func() { os.Exit(Main(Process(), os.Args[1:])) },
	})
}

// TestScripts runs the program as a person would. Each script begins in a folder
// that holds a copy of the examples.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		UpdateScripts:       golden.Updating(),
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(env *testscript.Env) error {
			env.Setenv("TZ", "UTC")
			env.Setenv("XDG_CACHE_HOME", "none") // is relative, and so no folder of a cache
			if err := copyExamples(env.WorkDir); err != nil {
				return err
			}
			return os.CopyFS(filepath.Join(env.WorkDir, "units"), os.DirFS("../../check/testdata/units"))
		},
		Condition: func(what string) (bool, error) {
			switch what {
			case "root": // may read everything
				return os.Geteuid() == 0, nil
			case "race":
				return golden.Raced, nil
			}
			return false, errors.New("unknown condition " + what)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits": exits, "large": large, "crlf": crlf, "mark": mark, "bytes": rawBytes, "plain": plainOutput, "keep": keep,
		},
	})
}

var brokenExample = regexp.MustCompile(`broken/[a-z-]+\.malt`)

// copyExamples copies the examples into the folder of a script; of the hundreds of broken
// ones those that it names, and what they use.
func copyExamples(folder string) error {
	script, err := os.ReadFile("testdata/script/" + strings.TrimPrefix(filepath.Base(folder), "script-") + ".txtar")
	if err != nil {
		return err
	}
	examples := os.DirFS("../../examples")
	names := append(brokenExample.FindAllString(string(script), -1), "broken/loft.malt", "broken/pale.malt")
	for _, pattern := range []string{"*.malt", "batches/*.malt", "home/*.malt", "mill/*.malt"} {
		found, err := fs.Glob(examples, pattern)
		if err != nil {
			return err
		}
		names = append(names, found...)
	}
	for _, name := range names {
		text, err := fs.ReadFile(examples, name)
		if err != nil {
			return err
		}
		to := filepath.Join(folder, "examples", name)
		if err := errors.Join(os.MkdirAll(filepath.Dir(to), 0o755), os.WriteFile(to, text, 0o644)); err != nil {
			return err
		}
	}
	return nil
}

// exits runs the program and asks for an exact exit code: exits 2 check --nope.
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE ARGUMENT...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	var exit *exec.ExitError
	if err := ts.Exec("maltwright", args[1:]...); errors.As(err, &exit) {
		got = exit.ExitCode()
	} else if err != nil {
		ts.Fatalf("%v", err)
	}
	if got != want {
		ts.Fatalf("exit code %d, not %d", got, want)
	}
}

// large writes a file of so many bytes of comment: large FILE BYTES.
func large(ts *testscript.TestScript, _ bool, args []string) {
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	line := "# page after page of notes\n"
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(strings.Repeat(line, n/len(line)+1)), 0o644))
}

// crlf writes a file anew with the line ends of Windows: crlf FROM TO.
func crlf(ts *testscript.TestScript, _ bool, args []string) {
	text := ts.ReadFile(args[0])
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(strings.ReplaceAll(text, "\n", "\r\n")), 0o644))
}

// mark puts a byte-order mark in front of a file: mark FROM TO.
func mark(ts *testscript.TestScript, _ bool, args []string) {
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte("\ufeff"+ts.ReadFile(args[0])), 0o644))
}

// rawBytes writes a file from a Go string: bytes FILE "\x00\x01".
func rawBytes(ts *testscript.TestScript, _ bool, args []string) {
	text, err := strconv.Unquote(`"` + args[1] + `"`)
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(text), fs.FileMode(0o644)))
}

// plainOutput asks that the last command sent nothing to the terminal that could
// act on it.
func plainOutput(ts *testscript.TestScript, _ bool, _ []string) {
	for _, name := range []string{"stdout", "stderr"} {
		if i := bytes.IndexAny([]byte(ts.ReadFile(name)), "\x00\x07\x08\x0b\x0c\r\x1b\u009b\u202e"); i >= 0 {
			ts.Fatalf("%s holds a control character at offset %d", name, i)
		}
	}
}

// keep sets a variable to what the last command printed in the brackets of a pattern, so that a
// figure of the model need not stand in the script: keep NAME PATTERN.
func keep(ts *testscript.TestScript, _ bool, args []string) {
	found := regexp.MustCompile(args[1]).FindStringSubmatch(ts.ReadFile("stdout"))
	if len(found) != 2 {
		ts.Fatalf("%s is not in what was printed", args[1])
	}
	ts.Setenv(args[0], found[1])
}
