package main

import (
	"html"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Nothing of a record is hidden: every line that says what was seen stands in its report as it is written.
func TestEveryLineOfARecordStandsInItsReport(t *testing.T) {
	longSums(t)
	folder, lines := screenFolder(t), 0
	for _, name := range []string{"batches/26-05.malt", "home/26-03.malt"} {
		code, out, errs := runIn(folder, "report", name, "--members", "20", "--no-cache")
		require.Equal(t, ExitClean, code, errs)
		said := html.UnescapeString(out)
		text, err := os.ReadFile(filepath.Join(folder, name))
		require.NoError(t, err)
		for line := range strings.Lines(string(text)) {
			line, _, _ = strings.Cut(line, "#")
			words := strings.Fields(line)
			if len(words) == 0 {
				continue
			}
			switch words[0] {
			case "weighed", "read", "counted", "felt", "turned":
				assert.Contains(t, said, ">"+strings.Join(words, " ")+"<", name)
				lines++
			}
		}
	}
	assert.Greater(t, lines, 80)
}
