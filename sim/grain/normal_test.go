package grain

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestTheTableOfTheNormalIntegralStaysWithinItsStatedError(t *testing.T) {
	worst, before := 0.0, 0.0
	for z := -9.0; z < 9; z += 0.00137 {
		p := normal(z)
		worst = max(worst, math.Abs(p-exactNormal(z)))
		assert.GreaterOrEqual(t, p, before, "it never falls")
		before = p
	}
	assert.Less(t, worst, normalError)
	t.Logf("largest error: %.2g", worst)
	assert.True(t, math.IsNaN(normal(math.NaN())))
}
