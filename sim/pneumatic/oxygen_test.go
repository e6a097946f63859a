package pneumatic

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The lowest layers of a box dry first. Those too dry to breathe lie below others that take
// all the oxygen there is.
func TestALayerThatWantsNoOxygenHasAllOfItWhateverLiesAbove(t *testing.T) {
	b := Bed{count: 3}
	b.vessel.Area = 1
	var share [3]float64
	b.reached([]moment{{burn: 0}, {burn: 1e-3}, {burn: 1e-3}}, 1, share[:])
	assert.Equal(t, 1.0, share[0])
	for _, above := range share[1:] {
		assert.Less(t, above, 1.0)
		assert.GreaterOrEqual(t, above, 0.0)
	}
	assert.Positive(t, share[2])
}
