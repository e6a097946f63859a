package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"runtime/debug"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/cmd/write/pdf/pdftest"
	"maltwright/lang/read"
	"maltwright/lang/read/endless"
	"maltwright/lang/source/spoil"
)

// How it works: the examples are broken at random, from a seed, and whole commands are
// run over them, in this process. Whatever a file says, a command ends with one of its
// exit codes, and what it writes is of figures that are some.
//
// A file is left out that asks for more work than a test may wait for.

// hunt is a folder of broken files.
type hunt struct {
	t      *testing.T
	r      *rand.Rand
	seed   uint64
	folder string
	texts  map[string]string // by name, as they were written last
	words  []string
	in     string // standard input of the next commands
	cache  string // their cache folder; "" for none
	out    string // of the last command
}

// prey are the processes that are broken; each uses loft.malt.
var prey = []string{"pale", "munich", "crystal", "dryer", "floor-kiln", "oats", "oven", "wheat", "deep-bed", "box"}

// sound is a record that stands beside broken ones; what little was read of it takes no time.
const sound = `use "pale.malt"
batch "sound" of "Loft pale" {
  began 2026-03-20 07:00
  weighed 7.42 kg at 14:00 after soak 1
  counted chit 86 of 100 at 2026-03-22 07:00
}
`

func newHunt(t *testing.T) *hunt {
	t.Helper()
	h := &hunt{t: t, folder: t.TempDir(), texts: map[string]string{}}
	require.NoError(t, os.CopyFS(h.folder, os.DirFS("../../examples/batches")))
	require.NoError(t, os.WriteFile(filepath.Join(h.folder, "sound.malt"), []byte(sound), 0o644))
	for _, name := range append(prey, "loft") {
		h.words = append(h.words, spoil.Words(h.example(name+".malt"))...)
	}
	h.words = append(h.words, spoil.Words(h.example("batches/26-03.malt"))...)
	return h
}

func (h *hunt) example(name string) string {
	h.t.Helper()
	text, err := os.ReadFile(filepath.Join("../../examples", name))
	require.NoError(h.t, err)
	return string(text)
}

// from begins anew from a seed; what panics then tells it.
func (h *hunt) from(seed uint64, do func()) {
	h.seed, h.r, h.texts = seed, spoil.Random(seed), map[string]string{}
	defer func() {
		if r := recover(); r != nil {
			h.t.Errorf("panic: %v%s\n%s", r, h.story(), debug.Stack())
		}
	}()
	do()
}

// put writes a file, and tells whether it can be looked at in a test's time.
func (h *hunt) put(name, text string) bool {
	h.t.Helper()
	h.texts[name] = text
	require.NoError(h.t, os.WriteFile(filepath.Join(h.folder, name), []byte(text), 0o644))
	root, err := read.OpenRoot(h.folder)
	require.NoError(h.t, err)
	defer root.Close()
	house, _ := read.Load(name, []byte(text), ".", root)
	return !endless.Is(house)
}

// broken is an example, broken.
func (h *hunt) broken(name string) string { return spoil.Text(h.r, h.example(name), h.words) }

// run runs a command and looks at how it ended and at what it wrote.
func (h *hunt) run(args ...string) (code int) {
	h.t.Helper()
	var b, errs strings.Builder
	code = Main(*h.world(&b, &errs), args)
	if code < ExitClean || code > ExitFailed || strings.Contains(errs.String(), "unsupported value") {
		h.fail(args, "exit code %d: %s", code, errs.String())
	}
	h.said(strings.Join(args, " "), h.legible(b.String())+"\n"+errs.String())
	if h.out = b.String(); h.out != "" {
		h.reads(args, h.out)
	}
	return code
}

// legible is what a person reads of what a command wrote: of a PDF the texts of its pages.
func (h *hunt) legible(out string) string {
	h.t.Helper()
	if !strings.HasPrefix(out, "%PDF") {
		return out
	}
	var b strings.Builder
	for _, page := range pdftest.Read(h.t, []byte(out)).Pages {
		b.WriteString(page.All())
	}
	return b.String()
}

// said looks at the figures in what a command said.
func (h *hunt) said(command, said string) {
	h.t.Helper()
	said = uids.ReplaceAllString(said, "")
	for _, n := range noFigures {
		for _, m := range n.re.FindAllString(said, -1) {
			if !h.wrote(strings.TrimSpace(m)) {
				h.fail([]string{command}, "%s, %q in: %s", n.what, m, lineWith(said, m))
				return
			}
		}
	}
	for _, d := range lastingAges(said) {
		if !h.wrote(d) {
			h.fail([]string{command}, "an age of the universe, %q: %s", d, lineWith(said, d))
		}
	}
}

func (h *hunt) fail(args []string, format string, more ...any) {
	h.t.Helper()
	h.t.Errorf("%s: %s%s", strings.Join(args, " "), fmt.Sprintf(format, more...), h.story())
}

// story is what a finder needs to see it again.
func (h *hunt) story() string {
	s := fmt.Sprintf("\nseed %d", h.seed)
	if testing.Verbose() {
		for name, text := range h.texts {
			s += "\n-- " + name + " --\n" + text
		}
	}
	return s
}

// wrote tells whether words stand in one of the files.
func (h *hunt) wrote(words string) bool {
	for _, text := range h.texts {
		if strings.Contains(text, words) {
			return true
		}
	}
	return false
}

func lineWith(text, part string) string {
	for line := range strings.Lines(text) {
		if strings.Contains(line, strings.TrimSpace(part)) {
			return strings.TrimSpace(line)
		}
	}
	return text
}

// noFigures are what no command may write, unless a file says so.
var noFigures = []struct {
	what string
	re   *regexp.Regexp
}{
	{"no number", regexp.MustCompile(`NaN|\bInf\b|[+-]Inf|infinit`)},
	{"an exponent", regexp.MustCompile(`\b\d[\d.]*[eE][+-]?\d+\b`)},
	{"a minus before nothing", regexp.MustCompile(`(?m)(^|[\s(:\[,])[-−]0(\.0+)?($|[^\d.:-])`)},
}

// uids are no figures: what a calendar knows visits by, fingerprints, colours, and names within a page.
var uids = regexp.MustCompile(`(?m)^UID:.*$|fingerprint is\s+[0-9a-f]{12}|#[0-9a-f]{6}\b|\b(id|href|aria-labelledby)="[^"]*"`)

var lasts = regexp.MustCompile(`\b(\d{5,}) ?(years|weeks|days|d|h|min)\b`)

// lastingAges lists what lasts longer than a thousand years.
func lastingAges(text string) (list []string) {
	hours := map[string]float64{"years": 8766, "weeks": 168, "days": 24, "d": 24, "h": 1, "min": 1.0 / 60}
	for _, m := range lasts.FindAllStringSubmatch(text, -1) {
		if n, _ := strconv.ParseFloat(m[1], 64); n*hours[m[2]] > 1000*8766 {
			list = append(list, m[0])
		}
	}
	return list
}

// reads asks that what was written reads as what it is to be.
func (h *hunt) reads(args []string, out string) {
	h.t.Helper()
	var err error
	switch args[len(args)-1] {
	case "json":
		var any any
		err = json.Unmarshal([]byte(out), &any)
	case "csv":
		_, err = csv.NewReader(strings.NewReader(out)).ReadAll()
	}
	if err != nil {
		h.fail(args, "%v", err)
	}
}

func (h *hunt) world(out, errs *strings.Builder) *World {
	return &World{In: strings.NewReader(h.in), Out: out, Err: errs, Folder: h.folder, Cache: h.cache, Env: func(string) string { return "" }}
}

func (h *hunt) one(of ...string) string { return of[h.r.IntN(len(of))] }

// mostlyBroken breaks figures, or leaves out a stage, or anything.
func (h *hunt) mostlyBroken(name string) string {
	switch text := h.example(name); h.r.IntN(4) {
	case 0:
		return spoil.Text(h.r, text, h.words)
	case 1:
		return stageGone(h.r, text)
	default:
		return spoil.Numbers(h.r, text)
	}
}

// stage is a block of a process, with the blocks in it.
var stage = regexp.MustCompile(`(?ms)^  (steep|germinate|wither|kiln)\b[^\n]*\{\n.*?^  \}\n`)

func stageGone(r *rand.Rand, text string) string {
	all := stage.FindAllStringIndex(text, -1)
	at := all[r.IntN(len(all))]
	return text[:at[0]] + text[at[1]:]
}

// seasons sets a broken record beside a sound one.
func (h *hunt) seasons() {
	h.t.Helper()
	h.put("pale.malt", h.example("batches/pale.malt"))
	if h.put("26-03.malt", h.mostlyBrokenRecord()) {
		h.run("seasons", "26-03.malt", "sound.malt", "--format", h.one("text", "json", "csv"))
	}
}

func (h *hunt) mostlyBrokenRecord() string {
	text := h.example("batches/26-03.malt")
	if h.r.IntN(3) == 0 {
		return spoil.Text(h.r, text, h.words)
	}
	return spoil.Numbers(h.r, text)
}
