package noted_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A bed above what is held, and above what barley grows well at, is told with the limits.
func TestABedThatIsTooWarmIsTold(t *testing.T) {
	const grown = "  weighed 9.29 kg at 2026-03-08 08:00 after soak 3\n"
	r := last(t, grown+"  read bed 26 °C at 2026-03-10 14:00\n", "2026-03-10 14:00")
	require.NotNil(t, r.Hot)
	assert.InDelta(t, 26, float64(r.Hot.Read), 1e-6)
	assert.Less(t, r.Hot.Warm, r.Hot.Read)
	assert.Greater(t, r.Hot.Lost, r.Hot.Read)
	assert.Nil(t, last(t, grown+"  read bed 17 °C at 2026-03-10 14:00\n", "2026-03-10 14:00").Hot)
	assert.Nil(t, last(t, "  read water 26 °C at 2026-03-06 08:00\n", "2026-03-06 08:00").Hot)
}
