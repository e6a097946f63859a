package evidencetest

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/forecast"
)

// The other forms change what a forecast says, and keep it near what is usual: of a steep
// and a growth that lasts until it is done.
func TestOtherFormsAreOtherAndNotFarOff(t *testing.T) {
	p, _ := pale(t, "  began 2026-03-06 07:00\n")
	own, err := forecast.Run(p, forecast.Options{})
	require.NoError(t, err)
	other, err := forecast.Run(p, forecast.Options{Forms: OtherForms()})
	require.NoError(t, err)
	soaks := func(f *forecast.Forecast) (w []float64) {
		for _, s := range f.Stages[0].Steps {
			w = append(w, s.MoistureEnd)
		}
		return w
	}
	a, b := soaks(own), soaks(other)
	assert.Greater(t, b[0], a[0]+0.005, "it drinks faster at first")
	assert.Less(t, b[len(b)-1]-b[0], a[len(a)-1]-a[0]-0.005, "and slower then")
	assert.InDelta(t, a[len(a)-1], b[len(b)-1], 0.02)
	assert.InEpsilon(t, own.Totals.Total, other.Totals.Total, 0.25)
	assert.NotEqual(t, own.Totals.Total, other.Totals.Total)
	t.Logf("steep-out %.1f and %.1f %%, in all %v and %v", 100*a[len(a)-1], 100*b[len(b)-1],
		time.Duration(own.Totals.Total)*time.Second, time.Duration(other.Totals.Total)*time.Second)
}
