package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The lines of the page of the sheet do what it says, in a folder with the examples.
func TestTheLinesOfThePageOfTheSheetRun(t *testing.T) {
	longSums(t)
	page, err := os.ReadFile("../../docs/sheet.md")
	require.NoError(t, err)
	folder := t.TempDir()
	require.NoError(t, os.CopyFS(folder, os.DirFS("../../examples")))
	under := "use \"pale.malt\"\n\nbatch \"26-09\" of \"Loft pale\" {\n  began 2026-04-13 07:00\n  weighed 7.41 kg at 14:00 after soak 1\n}\n"
	require.NoError(t, os.WriteFile(filepath.Join(folder, "26-09.malt"), []byte(under), 0o644))
	lines := 0
	for _, block := range regexp.MustCompile("(?s)```sh\n(.*?)```").FindAllStringSubmatch(string(page), -1) {
		for line := range strings.Lines(block[1]) {
			lines++
			command, into, piped := strings.Cut(strings.TrimSpace(line), " > ")
			words := shellWords.FindAllString(command, -1)
			for i, w := range words {
				words[i] = strings.Trim(w, `"`)
			}
			require.Equal(t, "maltwright", words[0])
			var out, errs bytes.Buffer
			w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: folder, Env: func(string) string { return "" },
				clock: func() time.Time { return time.Date(2026, 4, 14, 12, 0, 0, 0, time.UTC) }}
			require.Equal(t, ExitClean, Main(w, words[1:]), "%s: %s", line, errs.String())
			if piped {
				require.NoError(t, os.WriteFile(filepath.Join(folder, into), out.Bytes(), 0o644))
			} else {
				into = words[len(words)-1]
			}
			made, err := os.ReadFile(filepath.Join(folder, into))
			require.NoError(t, err, line)
			assert.True(t, isSheet(made) && len(made) > 0, line)
		}
	}
	assert.Equal(t, 6, lines)
}

// A PDF is not poured on a terminal; what is told instead does what was meant.
func TestAPDFOnATerminalIsAnsweredWithTheLineToType(t *testing.T) {
	var out, errs bytes.Buffer
	w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: "../../examples", Terminal: true, Env: func(string) string { return "" }}
	assert.Equal(t, ExitUsage, Main(w, []string{"sheet", "pale.malt", "--start", "2026-03-06T07:00", "--size", "letter"}))
	assert.Empty(t, out.String())
	assert.Equal(t, "maltwright: a PDF is no text for a terminal; type: maltwright sheet pale.malt --start 2026-03-06T07:00 --size letter > pale.pdf\n", errs.String())
	errs.Reset()
	assert.Equal(t, ExitUsage, Main(w, []string{"sheet", "--blank"}))
	assert.Contains(t, errs.String(), "type: maltwright sheet --blank > sheet.pdf\n")
	errs.Reset()
	assert.Equal(t, ExitUsage, Main(w, []string{"sheet", "pale.malt", "--format", "html"}))
	assert.Empty(t, out.String())
	assert.Equal(t, "maltwright: a page for a browser is no text for a terminal; type: maltwright sheet pale.malt --format html > pale.html\n", errs.String())
	for _, args := range [][]string{{"report", "pale.malt"}, {"chart", "pale.malt", "--format", "html"}, {"seasons", "batches", "--format", "html"}, {"chart", "pale.malt", "--format", "pdf"}} {
		errs.Reset()
		assert.Equal(t, ExitUsage, Main(w, args), args)
		assert.Empty(t, out.String(), args)
		assert.Contains(t, errs.String(), "is no text for a terminal; write it into a file", args)
	}
}

// A folder that is not there is said to be, before anything is forecast.
func TestASheetIntoAFolderThatIsNotThere(t *testing.T) {
	folder := screenFolder(t)
	for out, want := range map[string]string{"none/x.pdf": "none/x.pdf cannot be written: there is no folder none", "batches": "batches is a folder; name a file in it"} {
		code, _, errs := runIn(folder, "sheet", "pale.malt", "--out", out)
		assert.NotEqual(t, ExitClean, code)
		assert.Contains(t, errs, want)
	}
}

// That nothing is left to do of a batch is seen without a forecast, which takes seconds.
func TestABatchThatIsOverIsAnsweredWithoutAForecast(t *testing.T) {
	folder := screenFolder(t)
	for _, command := range []string{"sheet", "visits"} {
		code, _, errs := runIn(folder, command, "home/26-02.malt")
		assert.Equal(t, ExitUsage, code)
		assert.Contains(t, errs, `batch "26-02" is over; nothing is left to do`)
	}
	w := World{Folder: folder, Env: func(string) string { return "" }}
	in, err := w.file("home/26-02.malt", "")
	require.NoError(t, err)
	house, _, err := in.load()
	require.NoError(t, err)
	r, err := w.goingOn(isRecord{in, house.Batches}, "sheet")
	require.Error(t, err)
	assert.Nil(t, r, "what was forecast comes with an error too")
}
