package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/rivo/uniseg"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
)

// screenLines is how many lines of an answer a terminal of 24 shows: the last one has the prompt.
const screenLines = 23

// screen is a command as it is seen on a terminal.
type screen struct {
	name  string // of its golden
	args  string // apart by blanks, 'in quotes' where a word has some
	whole bool   // all of it stands on a terminal of 80 columns and 24 lines
	last  string // what stands in the last lines, whatever the width; "" is not looked at
	block bool   // it holds a block to be copied, whose lines are not folded
	own   bool   // it writes, into a copy of the folder that is its own
	fresh bool   // it writes, into a folder that is empty
	raw   bool   // lines of a file or for a shell, which are not folded
}

// screens are all that are looked at. They are run over a copy of the examples.
var screens = []screen{
	{name: "help", args: "--help"},
	{name: "help-forecast", args: "forecast --help"},
	{name: "help-reckon", args: "reckon --help"},
	{name: "help-note", args: "note --help"},
	{name: "help-serve", args: "serve --help"},
	{name: "help-sheet", args: "sheet --help"},
	{name: "check-clean", args: "check pale.malt", whole: true},
	{name: "check-home", args: "check home", whole: true},
	{name: "check-one", args: "check broken/bed-too-warm.malt", whole: true},
	{name: "check-not-judged", args: "check pale.malt --not-judged"},
	{name: "check-many", args: "check slips.malt"},
	{name: "check-all", args: "check slips.malt --all"},
	{name: "forecast", args: "forecast pale.malt", last: "Loft pale: "},
	{name: "forecast-start", args: "forecast pale.malt --start 2026-03-06T07:00", last: "first soak "},
	{name: "forecast-pounds", args: "forecast mill/craft.malt"},
	{name: "forecast-oven", args: "forecast oven.malt", last: "Loft oven: "},
	{name: "forecast-box", args: "forecast box.malt"},
	{name: "forecast-assumed", args: "forecast pale.malt --assumed --cautions"},
	{name: "forecast-spread", args: "forecast pale.malt --spread --worst --members 20"},
	{name: "forecast-broken", args: "forecast broken/gate-not-reached.malt"},
	{name: "forecast-change", args: "forecast pale.malt --change 'soak 1 to 6 h' --change 'site air to 41 °F'"},
	{name: "visits", args: "visits pale.malt --start 2026-03-06T07:00"},
	{name: "visits-home", args: "visits home/porch.malt --start 2026-03-06T07:00"},
	{name: "follow", args: "follow batches/26-05.malt --at 2026-04-14T12:00 --members 40"},
	{name: "follow-over", args: "follow batches/26-03.malt --members 40"},
	{name: "chart", args: "chart pale.malt", whole: true, last: "deculm"},
	{name: "chart-weight", args: "chart batches/26-05.malt --of weight --at 2026-04-14T12:00 --members 40"},
	{name: "chart-heat", args: "chart pale.malt --of heat --start 2026-03-06T07:00"},
	{name: "chart-bed", args: "chart deep-bed.malt --of bed"},
	{name: "chart-growth", args: "chart home/porch.malt --of growth"},
	{name: "chart-drivers", args: "chart pale.malt --of drivers --members 20", whole: true},
	{name: "chart-seasons", args: "chart batches --of all"},
	{name: "help-chart", args: "chart --help"},
	{name: "seasons", args: "seasons batches"},
	{name: "seasons-lot", args: "seasons batches --trace 'Far field 2026'"},
	{name: "seasons-home", args: "seasons home"},
	{name: "learn", args: "learn batches", block: true},
	{name: "follow-home", args: "follow home/26-03.malt --at '2026-10-30 12:00' --members 40"},
	{name: "contrast", args: "contrast pale.malt wheat.malt"},
	{name: "contrast-brief", args: "contrast --brief pale.malt wheat.malt"},
	{name: "contrast-moved", args: "contrast broken/warmer.malt broken/bed-too-warm.malt"},
	{name: "explain-soak", args: "explain soak", whole: true},
	{name: "explain-rule", args: "explain gate-not-reached"},
	{name: "explain-rules", args: "explain rules"},
	{name: "explain-words", args: "explain words"},
	{name: "explain-units", args: "explain units"},
	{name: "reckon-target", args: "reckon target 6kg 12.4% 44%", whole: true},
	{name: "reckon-moisture", args: "reckon moisture 20.00g 17.54g", whole: true},
	{name: "reckon-basis", args: "reckon basis 44%", whole: true},
	{name: "reckon-yield", args: "reckon yield 6kg 12.4% 4.9kg 4.5%", whole: true},
	{name: "reckon-germination", args: "reckon germination 194 200", whole: true},
	{name: "note", args: "note batches/26-05.malt --dry-run --at '2026-04-14 12:00' read bed 16 °C", whole: true},
	{name: "note-unread", args: "note batches/26-05.malt --dry-run wheighed 8 kg", whole: true},
	{name: "git", args: "git", raw: true},
	{name: "tidy", args: "tidy --verify pale.malt", whole: true},
	{name: "begin", args: "begin pale.malt --name 26-09 --at '2026-11-20 07:00'", own: true, whole: true, raw: true},
	{name: "note-turned", args: "note batches/26-05.malt --dry-run --at '2026-04-14 12:00' turned", whole: true},
	{name: "note-weighed", args: "note batches/26-05.malt --dry-run --at '2026-04-14 12:00' weighed 9 kg", whole: true},
	{name: "card", args: "card", raw: true},
	{name: "new-home", args: "new --like home-oven --units lb", fresh: true, raw: true},
	{name: "begin-unread", args: "begin nothing.malt", whole: true},
	{name: "unknown", args: "forcast pale.malt", whole: true},
}

// sizes are the terminals they are looked at on.
var sizes = []int{80, 40}

func TestEveryScreenFits(t *testing.T) {
	longSums(t)
	folder := screenFolder(t)
	for _, s := range screens {
		for _, width := range sizes {
			name := fmt.Sprintf("%s-%d", s.name, width)
			t.Run(name, func(t *testing.T) {
				t.Parallel()
				in := folder
				switch {
				case s.own:
					in = screenFolder(t)
				case s.fresh:
					in = t.TempDir()
				}
				text := s.shown(in, width)
				s.fits(t, text, width)
				golden.File(t, filepath.Join("testdata/screens", name+".txt"), "$ maltwright "+s.args+"\n"+text)
			})
		}
	}
}

// shown runs the command as on a terminal so wide. What it says goes to the same screen.
func (s screen) shown(folder string, width int) string {
	var out strings.Builder
	w := World{In: strings.NewReader(""), Out: &out, Err: &out, Folder: folder, Terminal: true, ErrTerm: true, Width: width,
		Env: func(name string) string { return map[string]string{"NO_COLOR": "1", "LANG": "C.UTF-8"}[name] }}
	Main(w, parted(s.args))
	return progressLine.ReplaceAllString(strings.ReplaceAll(out.String(), folder, "FOLDER"), "")
}

// progressLine is what says how far a command is, until it is wiped away.
var progressLine = regexp.MustCompile(`\r[^\n]*\r\x1b\[K`)

// blockLine is a line of a house block.
var blockLine = regexp.MustCompile(`^  [a-z-]+ +[0-9.]+ .*error `)

// fits asks that no line is wider than the terminal, and for what is promised of the last lines.
func (s screen) fits(t *testing.T, text string, width int) {
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	for i, line := range lines {
		if !s.raw && !(s.block && blockLine.MatchString(line)) {
			assert.LessOrEqual(t, uniseg.StringWidth(line), width, "line %d of %s: %s", i+1, s.args, line)
		}
	}
	if s.whole && width >= 80 {
		assert.LessOrEqual(t, len(lines), screenLines, "%s does not stand whole on a terminal", s.args)
	}
	if s.last != "" {
		shown := strings.Join(lines[max(0, len(lines)-screenLines):], "\n")
		assert.Contains(t, shown, s.last, "the answer of %s does not stand whole on a terminal", s.args)
	}
}

// parted parts a command line as a shell does.
func parted(line string) []string {
	var args []string
	for i, part := range strings.Split(line, "'") {
		if i%2 == 1 {
			args = append(args, part)
			continue
		}
		args = append(args, strings.Fields(part)...)
	}
	return args
}

// slipped is a process with more findings than a screen holds.
const slipped = `process "Slips" {
  make  pale malt
  from  6 kg of "Nowhere"
  steep in "no tub" {
    soak 7 h in water at 13 C
    soak 30 weeks in water at 99 °C
    rest 9 buckets in air
    soaak 3 h
  }
  germinate on "no tray" {
    hold bed at 14 to 17 °C
    turn every 8 kg
    until acrospire at leest 3/4
  }
  kiln in "no kiln" {
    dry at air-on 50 °C until moisture at most 200 %
    cure at air-on 9000 °C for 5 h
  }
}
`

// screenFolder holds a copy of the examples, and what else the screens are run over.
func screenFolder(t *testing.T) string {
	folder := t.TempDir()
	require.NoError(t, os.CopyFS(folder, os.DirFS("../../examples")))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "slips.malt"), []byte(slipped), 0o644))
	text, err := os.ReadFile(filepath.Join(folder, "broken/bed-too-warm.malt"))
	require.NoError(t, err)
	warmer := strings.Replace(string(text), "20 to 24 °C", "20 to 25 °C", 1)
	require.NotEqual(t, string(text), warmer)
	require.NoError(t, os.WriteFile(filepath.Join(folder, "broken/warmer.malt"), []byte(warmer), 0o644))
	return folder
}
