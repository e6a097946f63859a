package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rivo/uniseg"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// atScale is somebody at a terminal of so many columns, with what is answered to questions.
func atScale(folder, answers string, width int, args ...string) (code int, out, errs string) {
	var o, e strings.Builder
	w := World{In: strings.NewReader(answers), Out: &o, Err: &e, Folder: folder, Cache: filepath.Join(folder, "cache"), Env: func(string) string { return "" }}
	if width > 0 {
		w.Terminal, w.ErrTerm, w.InTerm, w.Width = true, true, true, width
	}
	code = Main(w, args)
	return code, o.String(), e.String()
}

func content(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(text)
}

// What may be wrong is asked about at a terminal before it is written, with what it may have
// been meant for.
func TestWhatMayBeWrongIsAskedAbout(t *testing.T) {
	slip := []string{"note", "batch.malt", "8.4", "kg", "after", "soak", "1", "--at", "2026-03-06 14:00"}
	for answer, want := range map[string]string{"y\n": "  weighed 8.4 kg at 2026-03-06 14:00 after soak 1\n", "f\n": "  weighed 8.4 kg in \"blue tub\" at 2026-03-06 14:00 after soak 1\n", "n\n": "", "": "", "what?\n": ""} {
		folder, file := newRecord(t)
		before := content(t, file)
		code, out, errs := atScale(folder, answer, 80, slip...)
		assert.Contains(t, strings.Join(strings.Fields(errs), " "), `it fits as gross weight in "blue tub", which weighs 990 g: 7.41 kg of grain`, answer)
		assert.Contains(t, errs, "write it as it is (y), as it fits (f), or not (n)? ", answer)
		if want == "" {
			assert.Equal(t, ExitFindings, code, answer)
			assert.Equal(t, before, content(t, file), answer)
			continue
		}
		assert.Zero(t, code, answer)
		assert.Contains(t, content(t, file), want, answer)
		assert.Contains(t, out, "moisture ", answer)
	}
	folder, _ := newRecord(t)
	code, _, errs := atScale(folder, "n\n", 80, "note", "batch.malt", "counted", "chit", "97", "of", "100", "--at", "2026-03-06 14:00")
	assert.Equal(t, ExitFindings, code)
	assert.Contains(t, errs, "write it as it is? y or n: ")
}

// The answer fits on a phone.
func TestTheAnswerFitsInFortyColumns(t *testing.T) {
	folder, file := newRecord(t)
	for _, args := range [][]string{
		{"7.38", "kg", "after", "soak", "1", "--at", "2026-03-06 14:00"}, {"weighed 9.55 kg in \"blue tub\" after soak 2", "--at", "2026-03-07 06:00"}, {"bed 15 °C", "--at", "2026-03-08 12:00"},
		{"turned", "--at", "2026-03-08 14:30"}, {"2 34 62 2 0 0", "--at", "2026-03-10 08:00"}, {"weighed 8.9 kg after germinate", "--at", "2026-03-12 18:00"}, {"--undo"},
	} {
		code, out, errs := atScale(folder, "y\n", 40, append([]string{"note", "batch.malt"}, args...)...)
		require.Zero(t, code, errs)
		for _, line := range strings.Split(out, "\n") {
			if strings.HasPrefix(line, "  maltwright note ") {
				continue // what is to be copied is not parted
			}
			assert.LessOrEqual(t, uniseg.StringWidth(line), 40, line)
		}
	}
	_, out, errs := atScale(folder, "n\n", 40, "note", "batch.malt", "12.9 kg", "--at", "2026-03-08 14:00")
	for _, line := range strings.Split(out+errs, "\n") {
		if !strings.HasPrefix(line, "maltwright: ") && !strings.HasPrefix(line, "write it as it is? y or n: ") {
			assert.LessOrEqual(t, uniseg.StringWidth(line), 40, line)
		}
	}
	assert.Contains(t, content(t, file), "turned")
}

// Taking back follows what was noted last, wherever in the record that went, step by step.
func TestUndoTakesBackWhatWasNotedLast(t *testing.T) {
	folder, file := newRecord(t)
	texts := []string{content(t, file)}
	for _, args := range [][]string{
		{"7.38 kg after soak 1", "--at", "2026-03-06 14:00"}, {"8.58 kg after soak 2", "--at", "2026-03-07 06:00"},
		{"water 13.4 °C", "--at", "2026-03-06 23:10"}, {"--fix", "6", "weighed", "7.36", "kg", "after", "soak", "1"},
	} {
		code, _, errs := atScale(folder, "", 0, append([]string{"note", "batch.malt"}, args...)...)
		require.Zero(t, code, errs)
		require.NotContains(t, texts, content(t, file))
		texts = append(texts, content(t, file))
	}
	for i := len(texts) - 1; i > 0; i-- {
		code, out, errs := atScale(folder, "", 0, "note", "batch.malt", "--undo")
		require.Zero(t, code, errs)
		assert.Equal(t, texts[i-1], content(t, file))
		assert.Contains(t, out, "taken back: ")
		assert.Equal(t, i == len(texts)-1, strings.Contains(out, "as it was: weighed 7.38 kg at 2026-03-06 14:00 after soak 1\nput it in again with:\n  maltwright note batch.malt --fix 6 'weighed 7.36 kg at 2026-03-06 14:00 after soak 1'"), out)
	}
	code, _, errs := atScale(folder, "", 0, "note", "batch.malt", "--undo")
	assert.Equal(t, ExitFindings, code)
	assert.Contains(t, errs, "nothing is noted yet")
}
