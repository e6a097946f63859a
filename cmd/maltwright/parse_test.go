package main

import (
	"bytes"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The library parses a line by itself too, and looks up methods for it. Both must say the same of every line.

// byLibrary parses a line as the library does.
func byLibrary(t require.TestingT, args []string) (cli Line, said, help string) {
	var out bytes.Buffer
	parser, err := newParser(World{Out: &out, Err: &out}, &cli)
	require.NoError(t, err)
	defer func() {
		if r := recover(); r != nil {
			require.Equal(t, "left", r)
			help = out.String()
		}
	}()
	parser.Exit = func(code int) { require.Zero(t, code); panic("left") }
	if _, err := parser.Parse(args); err != nil {
		said = err.Error()
	}
	return cli, said, out.String()
}

func byOurs(t require.TestingT, args []string) (cli Line, said, help string) {
	var out bytes.Buffer
	parser, err := newParser(World{Out: &out, Err: &out}, &cli)
	require.NoError(t, err)
	line, err := parse(parser, args)
	switch {
	case err != nil:
		said = err.Error()
	case asksHelp(line):
		require.NoError(t, line.PrintUsage(false))
	default:
		assert.NotNil(t, runs(line.Selected()), "%q", args)
	}
	return cli, said, out.String()
}

func parsesAlike(t require.TestingT, args []string) (said string) {
	was, wasSaid, wasHelp := byLibrary(t, args)
	is, isSaid, isHelp := byOurs(t, args)
	require.Equal(t, wasSaid, isSaid, "%q", args)
	require.Equal(t, wasHelp, isHelp, "%q", args)
	if isSaid == "" {
		require.True(t, reflect.DeepEqual(was, is), "%q", args)
	}
	return isSaid
}

// TestLinesParseAsTheLibraryParsesThem: each kind of fault that a line can have, and lines that have none.
func TestLinesParseAsTheLibraryParsesThem(t *testing.T) {
	for _, c := range []struct{ line, said string }{
		{"check pale.malt", ""},
		{"check", ""},
		{"check --format", `--format: expected string value but got "EOL"`},
		{"check --format xml", `--format must be one of "text","lines","json","sarif" but got "xml"`},
		{"check --odds --no-forecast", "can't be used together"},
		{"chart a.malt --of tea", `--of must be one of`},
		{"chart a.malt --of all", ""},
		{"new --units stone", `--units must be one of "kg","lb",""`},
		{"completion", `expected "<shell>"`},
		{"completion tcsh", `<shell> must be one of "bash","zsh","fish" but got "tcsh"`},
		{"completion fish", ""},
		{"forecast", ""},
		{"forecast pale.malt --change a --change b,c", ""},
		{"git --write --hook", "--write and --hook can't be used together"},
		{"reckon", `expected one of "`},
		{"reckon weight 45%", "missing flags: --from=WEIGHT MOISTURE"},
		{"reckon weight 45% --from 6 kg 12.4 %", ""},
		{"reckon target 6kg 12.4% 44%", ""},
		{"contrast a.malt", `expected "<new>"`},
		{"merge a b", `expected "<`},
		{"tea", "unexpected argument tea"},
		{"check --tea", "unknown flag --tea"},
		{"--help", ""},
		{"reckon --help", ""},
		{"reckon target --help", ""},
		{"check --format xml --help", ""},
		{"--", `expected one of "new", "check", "forecast", "visits", "sheet", ...`},
	} {
		said := parsesAlike(t, strings.Fields(c.line))
		if c.said == "" {
			assert.Empty(t, said, c.line)
		} else {
			assert.Contains(t, said, c.said, c.line)
		}
	}
}

// TestAnyLineParsesAsTheLibraryParsesIt: words of lines in any order.
func TestAnyLineParsesAsTheLibraryParsesIt(t *testing.T) {
	var cli Line
	parser, err := newParser(World{}, &cli)
	require.NoError(t, err)
	word := map[string]*rapid.Generator[string]{}
	for _, command := range commandWords {
		words := []string{"a.malt", "7:00", "6kg", "--", "-x", "--help", "json", "pdf", "html", "term", "all", "kg", "text", "target", "bash"}
		for _, f := range flagsOf(parser, command) {
			words = append(words, "--"+f, "--"+f, "--"+f+"=json")
		}
		word[command] = rapid.SampledFrom(words)
	}
	rapid.Check(t, func(t *rapid.T) {
		command := rapid.SampledFrom(commandWords).Draw(t, "command")
		args := append([]string{command}, rapid.SliceOfN(word[command], 0, 6).Draw(t, "words")...)
		parsesAlike(t, args)
	})
}
