package main

import (
	"path/filepath"
	"testing"

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
