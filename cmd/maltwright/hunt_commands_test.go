package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/source/spoil"
)

// Whole commands are run over broken files, records and merges of them.
func TestNoBrokenFileBreaksACommand(t *testing.T) {
	longSums(t)
	h := newHunt(t)
	for seed := range spoil.Seeds(5, 3_000) {
		h.from(seed, func() {
			h.commandsOnProcesses()
			h.commandsOnRecords()
			h.commandsThatBegin()
		})
	}
}

func (h *hunt) commandsOnProcesses() {
	h.t.Helper()
	name := prey[h.r.IntN(len(prey))] + ".malt"
	fit := h.put("loft.malt", spoil.Text(h.r, h.example("loft.malt"), h.words))
	for _, side := range []string{"base.malt", "ours.malt", "theirs.malt"} {
		fit = h.put(side, h.broken(name)) && fit
	}
	h.tidied("base.malt")
	if h.run("merge", "base.malt", "ours.malt", "theirs.malt", "--show") <= ExitFindings && h.out != "" {
		h.put("merged.malt", h.out)
		h.tidied("merged.malt")
	}
	if fit {
		h.placed("check", "ours.malt", "--format", "json")
		h.run("contrast", "base.malt", "theirs.malt", "--format", h.one("text", "json", "html"))
		h.run("forecast", "theirs.malt", "--format", h.one("text", "json", "csv"))
		h.run("forecast", "theirs.malt", "--change", spoil.Text(h.r, h.one("soak 1 to 6 h", "site air to 41 °F", "batch charge to 9 lb", "rest 2 to 90 min"), h.words), "--format", h.one("text", "json"))
		h.run("begin", "theirs.malt", "--at", "2026-03-06T07:00", "--dry-run")
		h.run("visits", "theirs.malt", "--ready", "2026-03-26T07:00", "--format", h.one("text", "json", "ics"))
		h.run("sheet", "theirs.malt", "--start", "2026-03-06T07:00", "--format", h.one("pdf", "html"))
		h.run("chart", "theirs.malt", "--of", h.one("moisture", "weight", "heat", "growth", "bed"), "--format", h.one("term", "svg", "html", "pdf"))
		h.run("report", "theirs.malt", "--format", h.one("html", "pdf"))
	}
}

func (h *hunt) commandsOnRecords() {
	h.t.Helper()
	h.put("pale.malt", h.example("batches/pale.malt"))
	h.put("loft.malt", h.example("batches/loft.malt"))
	if !h.put("26-03.malt", h.mostlyBrokenRecord()) {
		return
	}
	h.placed("check", "26-03.malt", "--format", "json")
	h.run("note", "26-03.malt", spoil.Text(h.r, "weighed 5.15 kg", h.words), "--at", "2026-03-13 16:15", "--dry-run")
	h.noted()
	switch h.r.IntN(5) { // these take the most work
	case 0:
		h.run("follow", "26-03.malt", "--members", "20", "--at", h.one("2026-03-07T07:00", "2026-03-10T12:00", "2026-03-13T10:00"), "--format", h.one("text", "json"))
	case 1:
		h.run("seasons", "26-03.malt", "sound.malt", "--format", h.one("text", "json", "csv"))
		h.run("seasons", "26-03.malt", "--trace", "Far field 2026", "--format", h.one("text", "json", "csv"))
	case 3:
		h.run("sheet", "26-03.malt", "--format", h.one("pdf", "html"))
		h.run("report", "26-03.malt", "--members", "20", "--format", h.one("html", "pdf"))
		h.run("chart", "26-03.malt", "--members", "20", "--at", h.one("2026-03-07T07:00", "2026-03-13T10:00"), "--of", h.one("moisture", "weight", "heat", "bed"), "--format", h.one("term", "svg", "html", "pdf"))
	case 2:
		if h.seed%10 == 9 { // seconds
			h.run("learn", "26-03.malt", "26-04.malt", "--format", h.one("text", "json", "malt"))
		}
	}
}

// noted puts a line right, writes lines from standard input, and takes them back: what was noted
// leaves no other text behind than there was.
func (h *hunt) noted() {
	h.t.Helper()
	const name = "26-03.malt"
	before := h.texts[name]
	h.run("note", name, "--fix", strconv.Itoa(1+h.r.IntN(1+strings.Count(before, "\n"))), spoil.Text(h.r, "weighed 5.15 kg at 2026-03-13 16:15", h.words), "--dry-run")
	h.cache = h.t.TempDir()
	h.in = spoil.Text(h.r, "remark smells of cucumber\n17.2 °C\n# what the book says\nweighed 5.15 kg at 2026-03-13 16:15\n", h.words)
	code := h.run("note", name, "--sure")
	h.in = ""
	noted, err := os.ReadFile(filepath.Join(h.folder, name))
	require.NoError(h.t, err)
	h.run("note", name, "--list")
	if code == ExitClean {
		h.run("note", name, "--undo")
	}
	h.cache = ""
	after, err := os.ReadFile(filepath.Join(h.folder, name))
	require.NoError(h.t, err)
	if string(after) != before {
		h.fail([]string{"note", name}, "exit code %d, noted:\n%s\nand taken back not as it was:\n%s", code, noted, after)
	}
}

// answered is a file of answers to the questions of new.
const answered = "units: lb\nhouse: Porch\ncharge: 9 lb\nmoisture: 12 %\ngermination: 97 of 100\ndryer 1: oven\nair: 15 to 18\n"

// commandsThatBegin asks that what new makes of answers reads.
func (h *hunt) commandsThatBegin() {
	h.t.Helper()
	if h.seed%10 != 9 { // seconds
		return
	}
	const folder = "begun"
	require.NoError(h.t, os.RemoveAll(filepath.Join(h.folder, folder)))
	h.texts["answers.txt"] = spoil.Text(h.r, answered, h.words)
	require.NoError(h.t, os.WriteFile(filepath.Join(h.folder, "answers.txt"), []byte(h.texts["answers.txt"]), 0o644))
	if h.run("new", folder, "--answers", "answers.txt") == ExitClean {
		if code := h.run("check", folder); code != ExitClean {
			h.fail([]string{"new", folder}, "what it made: exit code %d", code)
		}
	}
}

// tidied asks that what is laid out reads, and is the same when it is laid out again.
func (h *hunt) tidied(name string) {
	h.t.Helper()
	if h.run("tidy", name) != ExitClean {
		return
	}
	h.out = "" // it says nothing but what changed
	once, err := os.ReadFile(filepath.Join(h.folder, name))
	require.NoError(h.t, err)
	if code := h.run("tidy", name, "--verify"); code != ExitClean {
		h.fail([]string{"tidy", name}, "laid out once it is not tidy:\n%s", once)
	}
}

// placed asks that every finding has a place in a file and a rule.
func (h *hunt) placed(args ...string) {
	h.t.Helper()
	h.run(args...)
	var out struct {
		Findings []struct {
			Rule, Message, File string
			Line, Column        int
		}
	}
	if err := json.Unmarshal([]byte(h.out), &out); err != nil {
		h.fail(args, "%v", err)
	}
	for _, f := range out.Findings {
		if f.Rule == "" || f.Message == "" || f.File == "" || f.Line < 1 || f.Column < 1 {
			h.fail(args, "a finding without a place: %+v", f)
		}
	}
}
