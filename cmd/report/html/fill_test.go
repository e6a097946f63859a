package html

import (
	"testing"

	"pgregory.net/rapid"

	charthtml "maltwright/cmd/chart/html"
	"maltwright/cmd/write/fill/filltest"
)

func TestThePageIsFilledAsTheStandardLibraryFillsIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		like := filltest.Any(t, whole{Style: charthtml.Style()})
		for _, p := range like.Parts {
			for i := range p.Blocks {
				p.Blocks[i].Figure = "<svg></svg>"
			}
		}
		filltest.Same(t, written, "", like)
	})
}
