package golden

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Between compares the text with what stands in a document between two marks, or with
// MALTWRIGHT_UPDATE=1 puts it there.
func Between(t *testing.T, document, begin, end, text string) {
	t.Helper()
	file, err := os.ReadFile(document)
	require.NoError(t, err)
	before, rest, found := strings.Cut(strings.ReplaceAll(string(file), "\r\n", "\n"), begin)
	require.True(t, found, "%s has no mark where the part begins", document)
	kept, after, found := strings.Cut(rest, end)
	require.True(t, found, "%s has no mark where the part ends", document)
	if Updating() {
		require.NoError(t, os.WriteFile(document, []byte(before+begin+text+end+after), 0o644))
		return
	}
	assert.Equal(t, kept, text, "%s is not what the models give", document)
}
