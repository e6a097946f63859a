package evidencetest

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/sim/drying"
	"maltwright/sim/forecast"
)

func TestPageFallsAllTheWayAndItsDerivativesAreRight(t *testing.T) {
	p, last := Page{}, 0.0
	for _, x := range []float64{0.0005, 0.01, 0.05, 0.12, 0.3, 0.6, 0.85} {
		k, byX, byT := p.Rate(x, 60)
		assert.Greater(t, k, last, x)
		last = k
		const dx, dt = 1e-7, 1e-4
		up, _, _ := p.Rate(x+dx, 60)
		warmer, _, _ := p.Rate(x, 60+dt)
		assert.InDelta(t, (up-k)/dx, byX, 1e-4*k/x, x)
		assert.InEpsilon(t, (warmer-k)/dt, byT, 1e-4, x)
	}
	half, _, _ := Page{drying.Malt{Factor: new(0.5)}}.Rate(0.3, 60)
	whole, _, _ := p.Rate(0.3, 60)
	assert.InEpsilon(t, whole/2, half, 1e-12, "the factor of the house")
	wettest, _, _ := p.Rate(2, 60)
	assert.Greater(t, wettest, last)
}

// Beside the model's, the rate is seven tenths in green malt and twice at 10 %.
func TestPageIsOfTheModelsSize(t *testing.T) {
	share := func(x float64) float64 {
		own, _, _ := drying.Malt{}.Rate(x, 60)
		page, _, _ := Page{}.Rate(x, 60)
		return page / own
	}
	t.Logf("of the model's rate at 60 °C: %.2f in green malt, %.2f at 10 %%", share(0.55), share(0.111))
	assert.InDelta(t, 0.7, share(0.55), 0.05)
	assert.InDelta(t, 2, share(0.111), 0.1)
}

// On the kiln malt of the other law dries slower while it is wet and faster at the end.
func TestPageIsOtherOnTheKilnAndNotFarOff(t *testing.T) {
	p, _ := pale(t, "  began 2026-03-06 07:00\n")
	kilned := func(o forecast.Options) (wet, hours, cured float64) {
		f, err := forecast.Run(p, o)
		require.NoError(t, err)
		steps := f.Stages[3].Steps
		for _, s := range steps {
			if s.Kind == model.CureStep {
				return 100 * steps[0].MoistureEnd, (s.Start - steps[0].Start) / 3600, 100 * s.MoistureEnd
			}
		}
		require.Fail(t, "it is never cured")
		return
	}
	forms := OtherForms()
	forms.Growth, forms.Uptake = nil, nil
	own, ownHours, ownCured := kilned(forecast.Options{})
	page, pageHours, pageCured := kilned(forecast.Options{Forms: forms})
	assert.Greater(t, page, own+1, "wetter when both have dried for as long")
	assert.Greater(t, pageHours, ownHours+0.5, "later at the cure")
	assert.Less(t, pageCured, ownCured-0.4, "drier from it")
	t.Logf("%.1f and %.1f %% after the first drying, %.1f and %.1f h to the cure, %.2f and %.2f %% after it", own, page, ownHours, pageHours, ownCured, pageCured)
}
