package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
)

// The slips of testdata/slips are what beginners type. A slip is put right where it reads as
// it was meant, or does so after one round of what its findings say to write. It is harmful
// where it reads as something else in silence, or where something that a finding says to
// write, put in word for word, makes something else of it or loses what was written.

// What is asked of the slips.
const (
	leastRight  = 95 // of a hundred
	mostHarmful = 0
	mostBare    = 9
)

// slip is one row of a table.
type slip struct {
	kind        string
	base, where string   // the base, and the line of it, where it is of one
	typed       string   // what was typed
	meant       []string // what was meant: the readings that it has
	also        []string // the same as the first of them, in other words
	ask         string   // what must be asked, where nobody can know what was meant
}

func (s slip) name() string { return s.base + "." + s.where + ": " + s.typed }

// verdict is what came of a slip.
type verdict struct {
	right   bool
	harm    string   // how it does harm; "" where it does none
	because string   // why it is not right
	bare    []string // hints that say what to write, with no edit that does it
}

// slipKinds are the tables, and how the slips of each are judged.
var slipKinds = []struct {
	name  string
	judge func(t *testing.T, bases map[string]base, s slip) verdict
}{
	{"units", judgeLine}, {"words", judgeLine}, {"order", judgeLine}, {"marks", judgeLine}, {"dates", judgeLine},
	{"names", judgeLine}, {"records", judgeLine}, {"encodings", judgeFile}, {"commands", judgeCommand},
}

// keptSlips holds how many slips of each kind are put right, and those that are not.
const keptSlips = "testdata/slips/golden.txt"

// TestSlipsArePutRightAndNoHintMakesThemWorse holds each slip to keptSlips with -long, and else
// some of each kind. What is asked of all of them together is asked of that file.
func TestSlipsArePutRightAndNoHintMakesThemWorse(t *testing.T) {
	bases, share := slipBases(t), 1
	if !golden.Whole() {
		share = 8
	}
	kept, err := os.ReadFile(keptSlips)
	require.NoError(t, err)
	counts, misses, all := "", "", 0
	for _, kind := range slipKinds {
		slips, lines := slipsOf(t, kind.name), ""
		for i := 0; i < len(slips); i += share {
			v := kind.judge(t, bases, slips[i])
			missed, harmful := missedLine(slips[i]), harmfulLine(slips[i])
			if !v.right {
				lines += missed
				t.Logf("%s: %s", strings.TrimSpace(missed), v.because)
			}
			if v.harm != "" {
				lines += harmful
				t.Logf("%s: %s", strings.TrimSpace(harmful), v.harm)
			}
			if len(v.bare) > 0 {
				lines += bareLine(slips[i])
				t.Logf("%s: %q", strings.TrimSpace(bareLine(slips[i])), v.bare)
			}
			if share > 1 {
				assert.Equal(t, strings.Contains(string(kept), bareLine(slips[i])), len(v.bare) > 0, bareLine(slips[i]))
				assert.Equal(t, strings.Contains(string(kept), missed), !v.right, missed)
				assert.Equal(t, strings.Contains(string(kept), harmful), v.harm != "", harmful)
			}
		}
		all += len(slips)
		counts += countLine(kind.name, len(slips), lines)
		misses += lines
	}
	counts += countLine("all", all, misses) + "\n"
	if share == 1 {
		golden.File(t, keptSlips, counts+misses)
	} else {
		misses = string(kept)
	}
	right := all - strings.Count(misses, missedMark)
	assert.GreaterOrEqual(t, all, 300)
	assert.GreaterOrEqual(t, 100*right, leastRight*all, "%d of %d slips are put right", right, all)
	assert.LessOrEqual(t, strings.Count(misses, harmfulMark), mostHarmful, "slips are made worse")
	assert.LessOrEqual(t, strings.Count(misses, bareMark), mostBare, "hints say what to write, with no edit that does it")
}

const missedMark, harmfulMark, bareMark = ": missed: ", ": harmful: ", ": no edit: "

func missedLine(s slip) string  { return s.kind + missedMark + s.name() + "\n" }
func harmfulLine(s slip) string { return s.kind + harmfulMark + s.name() + "\n" }
func bareLine(s slip) string    { return s.kind + bareMark + s.name() + "\n" }

func countLine(name string, n int, lines string) string {
	return fmt.Sprintf("%-10s %4d of %4d right, %3d harmful, %3d without an edit\n", name, n-strings.Count(lines, missedMark), n, strings.Count(lines, harmfulMark), strings.Count(lines, bareMark))
}

// base is a file in which slips are made, with the lines that have a name.
type base struct {
	text  string
	lines []string
	named map[string]int
}

var lineName = regexp.MustCompile(` *#:(\w+)$`)

func slipBases(t *testing.T) map[string]base {
	archive, err := txtar.ParseFile("testdata/slips/bases.txtar")
	require.NoError(t, err)
	out := map[string]base{}
	yesterday := strings.NewReplacer("{yesterday}", time.Now().AddDate(0, 0, -1).Format(time.DateOnly))
	for _, f := range archive.Files {
		b := base{named: map[string]int{}}
		for i, line := range strings.Split(strings.TrimSuffix(yesterday.Replace(string(f.Data)), "\n"), "\n") {
			if m := lineName.FindStringSubmatch(line); m != nil {
				b.named[m[1]] = i
				line = strings.TrimSuffix(line, m[0])
			}
			b.lines = append(b.lines, line)
		}
		b.text = strings.Join(b.lines, "\n") + "\n"
		out[strings.TrimSuffix(f.Name, ".malt")] = b
	}
	return out
}

// with is the base with another text in the place of a line.
func (b base) with(t *testing.T, where, text string) string {
	i, ok := b.named[where]
	require.True(t, ok, "no line is called %s", where)
	lines := slices.Clone(b.lines)
	indent := lines[i][:len(lines[i])-len(strings.TrimLeft(lines[i], " "))]
	if text == "=" {
		return b.text
	}
	lines[i] = indent + strings.ReplaceAll(text, "⏎", "\n"+indent)
	return strings.Join(lines, "\n") + "\n"
}

// slipsOf reads the table of a kind.
func slipsOf(t *testing.T, kind string) (list []slip) {
	text, err := os.ReadFile(filepath.Join("testdata", "slips", kind+".txt"))
	require.NoError(t, err)
	seen := map[string]bool{}
	for line := range strings.Lines(string(text)) {
		if strings.HasPrefix(line, "# ") && len(list) == 0 {
			continue
		}
		cells := strings.Split(strings.TrimSuffix(line, "\n"), " | ")
		require.GreaterOrEqual(t, len(cells), 3, line)
		s := slip{kind: kind, base: strings.TrimSpace(cells[0]), typed: cells[1], meant: cells[2:]}
		if kind != "commands" && kind != "encodings" {
			s.base, s.where, _ = strings.Cut(s.base, ".")
		}
		if ask, ok := strings.CutPrefix(cells[2], "ask "); ok {
			s.meant, s.ask = nil, ask
		}
		s.meant = slices.DeleteFunc(s.meant, func(text string) bool {
			other, ok := strings.CutPrefix(text, "also ")
			if ok {
				s.also = append(s.also, other)
			}
			return ok
		})
		require.False(t, seen[s.name()], "twice: %s", line)
		seen[s.name()] = true
		list = append(list, s)
	}
	return list
}
