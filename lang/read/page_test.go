package read

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/source/golden"
)

func TestExamplesOfTheReferenceMakeSense(t *testing.T) {
	page, err := os.ReadFile("../../docs/language.md")
	require.NoError(t, err)
	parts := strings.Split(string(page), "```malt\n")
	require.Greater(t, len(parts), 3)
	for _, part := range parts[1:] {
		text, _, closed := strings.Cut(part, "```")
		require.True(t, closed)
		_, found := Load("language.malt", []byte(text), ".", files{})
		worst, _ := finding.Worst(found)
		assert.Less(t, worst, finding.Caution, "%s\n%s", text, golden.Findings(found))
	}
}
