package grain_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/grain"
)

// What is called the mean acrospire is that of the middle kernel. The mean over kernels that
// lie z standard deviations behind, in chitting and in growing alike, is all but that.
func TestTheMiddleKernelStandsForTheMean(t *testing.T) {
	for _, name := range grain.Names() {
		p, err := grain.Of(name)
		require.NoError(t, err)
		for length := 0.0; length <= 1; length += 0.05 {
			clock := p.GrownTo(length)
			sum, weight := 0.0, 0.0
			for z := -5.0; z <= 5; z += 0.01 {
				kernel, w := p, math.Exp(-z*z/2)
				kernel.Chit *= math.Exp(p.ChitSpread * z)
				for i := range kernel.Marks {
					kernel.Marks[i] *= math.Exp(p.MarkSpread * z)
				}
				sum, weight = sum+w*kernel.Acrospire(clock), weight+w
			}
			assert.InDelta(t, length, sum/weight, 0.01, "%s, middle kernel at %.2f", name, length)
		}
	}
}

// A kernel that has yet to chit wakes on up to six points less, which fade as (1 − clock/C)².
func TestTheGraceOfSleepingKernelsFades(t *testing.T) {
	p, err := grain.Of("barley")
	require.NoError(t, err)
	for clock := 0.0; clock < 1.5*p.Chit; clock += 7 {
		asleep := math.Max(0, 1-clock/p.Chit)
		assert.InDelta(t, p.MoistFactor(0.36, p.Chit), p.MoistFactor(0.36-0.06*asleep*asleep, clock), 1e-12)
	}
}
