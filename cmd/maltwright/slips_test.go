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
	leastRight  = 98 // of a hundred
	leastHeld   = 80
	mostHarmful = 0
	mostBare    = 0
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

// slipKind is a table, and how its slips are judged.
type slipKind struct {
	name  string
	judge func(t *testing.T, bases map[string]base, s slip) verdict
}

// slipKinds are the tables, and how the slips of each are judged.
var slipKinds = []slipKind{
	{"units", judgeLine}, {"words", judgeLine}, {"order", judgeLine}, {"marks", judgeLine}, {"dates", judgeLine},
	{"names", judgeLine}, {"records", judgeLine}, {"encodings", judgeFile}, {"commands", judgeCommand},
}

// heldKinds are slips that nothing was mended for when they were written. They are counted apart.
var heldKinds = []slipKind{{"held-lines", judgeLine}, {"held-commands", judgeCommand}}

// keptSlips holds how many slips of each kind are put right, and those that are not.
const keptSlips = "testdata/slips/golden.txt"

// TestSlipsArePutRightAndNoHintMakesThemWorse holds each slip to keptSlips with -long, and else
// some of each kind. What is asked of all of them together is asked of that file.
func TestSlipsArePutRightAndNoHintMakesThemWorse(t *testing.T) {
	j := newJudge(t)
	table, held := j.all("all", slipKinds), j.all("held out", heldKinds)
	if golden.Whole() {
		golden.File(t, keptSlips, table.counts+held.counts+"\n"+table.misses+held.misses)
	} else {
		table.misses, held.misses = j.kept, onlyOf(j.kept, heldKinds)
	}
	heldMissed := strings.Count(held.misses, missedMark)
	right := table.n - strings.Count(onlyOf(table.misses, slipKinds), missedMark)
	assert.GreaterOrEqual(t, table.n, 300)
	assert.GreaterOrEqual(t, held.n, 80)
	assert.GreaterOrEqual(t, 100*right, leastRight*table.n, "%d of %d slips are put right", right, table.n)
	assert.GreaterOrEqual(t, 100*(held.n-heldMissed), leastHeld*held.n, "%d of %d slips held out are missed", heldMissed, held.n)
	for _, misses := range []string{table.misses, held.misses} {
		assert.LessOrEqual(t, strings.Count(misses, harmfulMark), mostHarmful, "slips are made worse")
		assert.LessOrEqual(t, strings.Count(misses, bareMark), mostBare, "hints say what to write, with no edit that does it")
	}
}

// slipJudge judges every slip of a kind, or some.
type slipJudge struct {
	t     *testing.T
	bases map[string]base
	share int    // one of so many is judged
	kept  string // what keptSlips holds
}

func newJudge(t *testing.T) *slipJudge {
	kept, err := os.ReadFile(keptSlips)
	require.NoError(t, err)
	j := &slipJudge{t: t, bases: slipBases(t), share: 8, kept: string(kept)}
	if golden.Whole() {
		j.share = 1
	}
	return j
}

// judged is what came of slips: how many there are, a line of counts for each kind, and one for each
// that is not put right.
type judged struct {
	n              int
	counts, misses string
}

func (j *slipJudge) all(name string, kinds []slipKind) (out judged) {
	for _, kind := range kinds {
		slips, lines := slipsOf(j.t, kind.name), ""
		for i := 0; i < len(slips); i += j.share {
			lines += j.one(slips[i], kind.judge(j.t, j.bases, slips[i]))
		}
		out.n += len(slips)
		out.counts += countLine(kind.name, len(slips), lines)
		out.misses += lines
	}
	out.counts += countLine(name, out.n, out.misses)
	return out
}

// one gives the lines that are kept of a slip, and where only some are judged holds them to those kept.
func (j *slipJudge) one(s slip, v verdict) (lines string) {
	for _, about := range []struct {
		line string
		is   bool
		why  string
	}{{missedLine(s), !v.right, v.because}, {harmfulLine(s), v.harm != "", v.harm}, {bareLine(s), len(v.bare) > 0, fmt.Sprintf("%q", v.bare)}} {
		if about.is {
			lines += about.line
			j.t.Logf("%s: %s", strings.TrimSpace(about.line), about.why)
		}
		if j.share > 1 {
			assert.Equal(j.t, strings.Contains(j.kept, about.line), about.is, about.line)
		}
	}
	return lines
}

// onlyOf is the lines that tell of slips of some kinds.
func onlyOf(lines string, kinds []slipKind) string {
	var b strings.Builder
	for line := range strings.Lines(lines) {
		if slices.ContainsFunc(kinds, func(k slipKind) bool { return strings.HasPrefix(line, k.name+":") }) {
			b.WriteString(line)
		}
	}
	return b.String()
}

const missedMark, harmfulMark, bareMark = ": missed: ", ": harmful: ", ": no edit: "

func missedLine(s slip) string  { return s.kind + missedMark + s.name() + "\n" }
func harmfulLine(s slip) string { return s.kind + harmfulMark + s.name() + "\n" }
func bareLine(s slip) string    { return s.kind + bareMark + s.name() + "\n" }

func countLine(name string, n int, lines string) string {
	return fmt.Sprintf("%-13s %4d of %4d right, %3d harmful, %3d without an edit\n", name, n-strings.Count(lines, missedMark), n, strings.Count(lines, harmfulMark), strings.Count(lines, bareMark))
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
		if !strings.HasSuffix(kind, "commands") && kind != "encodings" {
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
