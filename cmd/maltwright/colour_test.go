package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

const escape = "\x1b["

// onScreen runs a command line over a terminal or none, in an environment.
func onScreen(terminal bool, env map[string]string, in string, args ...string) (code int, out, errs string) {
	var o, e bytes.Buffer
	w := World{In: strings.NewReader(in), Out: &o, Err: &e, Folder: "/", Terminal: terminal, ErrTerm: terminal, Env: func(k string) string { return env[k] }}
	if terminal {
		w.Width = 80
	}
	code = Main(w, args)
	return code, o.String(), e.String()
}

func TestColourIsForTerminalsThatTakeIt(t *testing.T) {
	const slip = "vessel \"blue tub\" { holds 25 buckets }\n"
	for _, c := range []struct {
		what     string
		terminal bool
		env      map[string]string
		coloured bool
	}{
		{"a terminal", true, map[string]string{"TERM": "xterm"}, true},
		{"no terminal", false, map[string]string{"TERM": "xterm"}, false},
		{"somebody said NO_COLOR", true, map[string]string{"NO_COLOR": "1"}, false},
		{"NO_COLOR that is empty says nothing", true, map[string]string{"NO_COLOR": ""}, true},
		{"a dumb terminal", true, map[string]string{"TERM": "dumb"}, false},
	} {
		t.Run(c.what, func(t *testing.T) {
			code, out, errs := onScreen(c.terminal, c.env, slip, "check", "-")
			assert.Equal(t, ExitFindings, code)
			assert.Empty(t, errs)
			assert.Equal(t, c.coloured, strings.Contains(out, escape))
			assert.Contains(t, out, "fault", "the severity is a word, whatever its colour")
			_, explained, _ := onScreen(c.terminal, c.env, "", "explain", "soak")
			assert.Equal(t, c.coloured, strings.Contains(explained, escape))
			_, lines, _ := onScreen(c.terminal, c.env, slip, "check", "-", "--format", "lines")
			assert.NotContains(t, lines, escape, "lines are for programs")
			_, object, _ := onScreen(c.terminal, c.env, slip, "check", "-", "--format", "json")
			assert.NotContains(t, object, escape)
		})
	}
}

func TestNothingOfAFileReachesATerminalAsItIs(t *testing.T) {
	const text = "vessel \"blue\x1b]0;x\x07 tub\" { holds 25 l }\nsite \"Lo\u202eft\" { watter 9 °C }\n"
	for _, format := range []string{"text", "lines", "json"} {
		_, out, _ := onScreen(true, map[string]string{"NO_COLOR": "1"}, text, "check", "-", "--format", format)
		assert.NotContains(t, out, "\x1b", format)
		assert.NotContains(t, out, "\x07", format)
		assert.NotContains(t, out, "\u202e", format)
	}
}

func TestNothingOfTheCommandLineReachesATerminalAsItIs(t *testing.T) {
	for _, args := range [][]string{{"check", "a\x1b[31m.malt"}, {"explain", "a\x1b[31m"}, {"check", "--a\x1b[31m"}, {"a\x1b[31m"}, {"forecast", "a\x1b[31m.malt"}} {
		code, out, errs := onScreen(true, nil, "", args...)
		assert.NotEqual(t, ExitClean, code)
		assert.NotContains(t, out+errs, "\x1b[31m", args)
		assert.NotEmpty(t, errs)
	}
}

func TestNarrowTerminalsGetNarrowLines(t *testing.T) {
	var out bytes.Buffer
	w := World{In: strings.NewReader("vessel \"blue tub\" { holds 25 buckets }\n"), Out: &out, Err: &out, Folder: "/", Width: 50, Env: func(string) string { return "" }}
	Main(w, []string{"check", "-"})
	for i, line := range strings.Split(out.String(), "\n") {
		if i > 0 { // the first line is one, for those who search
			assert.LessOrEqual(t, len([]rune(line)), 50, line)
		}
	}
}
