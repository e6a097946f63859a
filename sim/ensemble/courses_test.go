package ensemble

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/forecast"
)

// What is seen of the members long after the malt is ready is the malt, and at the beginning the charge: the courses
// spread there as the totals do. Looking changes those by no more than the moment of a gate is found to.
func TestCoursesBeginWithTheChargeAndEndWithTheTotals(t *testing.T) {
	plain := run(t, Options{Members: 30})
	looked := run(t, Options{Members: 30, Looks: []float64{0, 5 * 86400, 60 * 86400}})
	require.Len(t, looked.Courses.Members, 30)
	moisture := looked.Courses.Over(func(l *Look) float64 { return l.Moisture })
	weight := looked.Courses.Over(func(l *Look) float64 { return l.Weight })
	acrospire := looked.Courses.Over(func(l *Look) float64 { return l.Acrospire })
	require.Len(t, moisture, 3)
	charge := looked.Process.Charge.SI
	assert.InDelta(t, charge, weight[0].P10, 1e-9)
	assert.InDelta(t, charge, weight[0].P90, 1e-9)
	final, malt := plain.Total(finalMoisture), plain.Total(func(x *forecast.Totals) float64 { return x.Malt })
	assert.InDelta(t, final.P10, moisture[2].P10, 2e-4)
	assert.InDelta(t, final.P90, moisture[2].P90, 2e-4)
	assert.InEpsilon(t, malt.P50, weight[2].P50, 1e-3)
	assert.Less(t, acrospire[1].P10, acrospire[1].P90)
	assert.Zero(t, acrospire[2].Share, "nothing grows in store")
	assert.True(t, math.IsNaN(acrospire[2].P50))
}
