package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
)

const firstBatchPage = "../../docs/first-batch.md"

var (
	// fence is a block of the page: what it is, and in which of the two houses it is of.
	fence = regexp.MustCompile("(?s)```(sh|text|malt) (lb|kg)\n(.*?)```")
	// clock is when a line is typed on the page, in 2026.
	clock = regexp.MustCompile(`\s+# (\w{3} \d{1,2} \w{3}, \d\d:\d\d)(, refused)?$`)
	// shellWords are the words of a line that is typed.
	shellWords = regexp.MustCompile(`"[^"]*"|\S+`)
)

// pageHouse is one of the two houses of the page.
type pageHouse struct {
	folder string
	last   string // what the last block has printed
}

// TestTheFirstBatchIsAsThePageHasIt types every line of the page, in both houses, and compares what
// is printed with what stands there.
func TestTheFirstBatchIsAsThePageHasIt(t *testing.T) {
	longSums(t)
	page, err := os.ReadFile(firstBatchPage)
	require.NoError(t, err)
	houses := map[string]*pageHouse{"lb": {folder: t.TempDir()}, "kg": {folder: t.TempDir()}}
	blocks := 0
	real := fence.ReplaceAllStringFunc(string(page), func(block string) string {
		blocks++
		part := fence.FindStringSubmatch(block)
		h := houses[part[2]]
		switch part[1] {
		case "sh":
			h.types(t, part[3])
		case "malt":
			text, err := os.ReadFile(filepath.Join(h.folder, "home-pale.malt"))
			require.NoError(t, err)
			assert.Contains(t, string(text), part[3])
		case "text":
			return "```text " + part[2] + "\n" + excerpt(part[3], h.last) + "```"
		}
		return block
	})
	assert.Greater(t, blocks, 30)
	golden.File(t, firstBatchPage, real)
}

// types runs the lines of a block in the folder of the house.
func (h *pageHouse) types(t *testing.T, lines string) {
	t.Helper()
	h.last = ""
	for line := range strings.Lines(lines) {
		line = strings.TrimSuffix(line, "\n")
		want, at := ExitClean, ""
		if when := clock.FindStringSubmatch(line); when != nil {
			moment, err := time.Parse("2006 Mon 2 Jan, 15:04", "2026 "+when[1])
			require.NoError(t, err, line)
			require.Equal(t, when[1][:3], moment.Format("Mon"), line)
			at = moment.Format("2006-01-02 15:04")
			if when[2] != "" {
				want = ExitFindings
			}
			line = strings.TrimSuffix(line, when[0])
		}
		words := shellWords.FindAllString(line, -1)
		for i, w := range words {
			words[i] = strings.Trim(w, `"`)
		}
		if words[0] == "cd" {
			h.folder = filepath.Join(h.folder, words[1])
			continue
		}
		require.Equal(t, "maltwright", words[0], line)
		args := words[1:]
		if at != "" {
			args = append(args, "--at", at)
		}
		code, out, errs := runIn(h.folder, args...)
		require.Equal(t, want, code, line+"\n"+out+errs)
		h.last += out + errs
	}
}

// excerpt is of what was printed what a block shows: all of it; behind a … from the line on that
// begins like the first, and before another … up to the one that begins like the last.
func excerpt(shown, printed string) string {
	shown, cut := strings.CutPrefix(shown, "…\n")
	if !cut {
		return printed
	}
	shown, ends := strings.CutSuffix(shown, "…\n")
	lines := strings.Split(strings.TrimSuffix(shown, "\n"), "\n")
	from, kept := false, "…\n"
	for line := range strings.Lines(printed) {
		from = from || sameWord(line, lines[0])
		if from {
			kept += line
		}
		if from && ends && sameWord(line, lines[len(lines)-1]) {
			return kept + "…\n"
		}
	}
	return kept
}

// sameWord tells whether two lines begin with the same word.
func sameWord(line, like string) bool {
	a, b := strings.Fields(line), strings.Fields(like)
	return len(a) > 0 && len(b) > 0 && a[0] == b[0]
}
