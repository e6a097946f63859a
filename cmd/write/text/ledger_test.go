package text

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestLongNamesAreClippedBetweenCharacters(t *testing.T) {
	assert.Equal(t, "26-03", clipped("26-03"))
	assert.Equal(t, "exactly twel", clipped("exactly twel"))
	assert.Equal(t, "longer than…", clipped("longer than that"))
	assert.Equal(t, "a\u0308a\u0308a\u0308a\u0308a\u0308a\u0308a\u0308a\u0308a\u0308a\u0308a\u0308…", clipped(strings.Repeat("a\u0308", 20)))
}
