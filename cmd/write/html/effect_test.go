package html

import (
	"testing"

	"pgregory.net/rapid"

	"maltwright/cmd/write/fill/filltest"
)

func TestThePageIsFilledAsTheStandardLibraryFillsIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { filltest.Same(t, effectTemplate, "", filltest.Any(t, whole{})) })
}
