package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
)

// drawn are the pictures of the pages, each made by the command.
var drawn = []struct{ file, args string }{
	{"moisture.svg", "chart batches/26-05.malt --at '2026-04-14 12:00' --no-cache --format svg"},
}

func TestThePicturesOfThePagesAreThoseThatAreDrawn(t *testing.T) {
	longSums(t)
	for _, d := range drawn {
		code, out, errs := runIn(screenFolder(t), parted(d.args)...)
		require.Equal(t, ExitClean, code, errs)
		golden.File(t, filepath.Join("../../docs/charts", d.file), out)
	}
}

func TestThePageOfChartsShowsWhatIsDrawn(t *testing.T) {
	longSums(t)
	text := screen{args: "chart pale.malt"}.shown(screenFolder(t), 80)
	golden.Between(t, "../../docs/charts.md", "```sh\nmaltwright chart pale.malt\n```\n\n```text\n", "```\n", text)
}

var typedBlock = regexp.MustCompile("(?s)```sh\n(.*?)```")

// What the pages say to type runs, and says something.
func TestWhatThePagesOfChartsAndReportsSayToTypeRuns(t *testing.T) {
	longSums(t)
	folder, typed := screenFolder(t), 0
	for _, page := range []string{"charts.md", "report.md"} {
		text, err := os.ReadFile(filepath.Join("../../docs", page))
		require.NoError(t, err)
		for _, block := range typedBlock.FindAllStringSubmatch(string(text), -1) {
			for line := range strings.Lines(block[1]) {
				command, _, _ := strings.Cut(strings.TrimSpace(line), " > ")
				args := parted(command)
				require.Equal(t, "maltwright", args[0], line)
				code, out, errs := runIn(folder, append(args[1:], "--no-cache", "--members", "20")...)
				assert.Equal(t, ExitClean, code, line+errs)
				assert.NotEmpty(t, out, line)
				typed++
			}
		}
	}
	assert.Equal(t, 5, typed)
}
