package read

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestBlanksAreNoReason(t *testing.T) {
	for reason, silences := range map[string]bool{"": false, "   ": false, "the neighbour turns it": true} {
		h, found := load(`vessel "blue tub" { holds 25 l; accept out-of-proportion because "` + reason + `" }` + "\n")
		if silences {
			assert.Empty(t, found)
			require.Len(t, h.Accepts, 1)
			continue
		}
		require.Len(t, found, 1, "%q", reason)
		assert.Equal(t, "accept-without-reason", found[0].Rule)
		assert.Contains(t, found[0].Message, "out-of-proportion is accepted without a reason")
		assert.Empty(t, h.Accepts, "%q", reason)
	}
}
