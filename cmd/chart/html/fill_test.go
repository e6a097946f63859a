package html

import (
	"testing"

	"pgregory.net/rapid"

	"maltwright/cmd/chart"
	"maltwright/cmd/write/fill"
	"maltwright/cmd/write/fill/filltest"
)

func TestThePageIsFilledAsTheStandardLibraryFillsIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const drawing fill.HTML = "<svg><title>a & b</title></svg>"
		filltest.Same(t, pages, "figure", map[string]any{"Wide": drawing, "Narrow": drawing, "Tables": filltest.Any(t, []chart.Table{})})
		filltest.Same(t, pages, "page", map[string]any{"Title": filltest.Hostile().Draw(t, "title"), "Style": Style(), "Figures": []fill.HTML{drawing, drawing}})
	})
}
