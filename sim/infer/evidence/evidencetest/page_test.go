package evidencetest

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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

// Beside the model's, the rate is seven tenths in green malt and 2.8 times at 10 %.
func TestPageIsOfTheModelsSize(t *testing.T) {
	share := func(x float64) float64 {
		own, _, _ := drying.Malt{}.Rate(x, 60)
		page, _, _ := Page{}.Rate(x, 60)
		return page / own
	}
	t.Logf("of the model's rate at 60 °C: %.2f in green malt, %.2f at 10 %%", share(0.55), share(0.111))
	assert.InDelta(t, 0.7, share(0.55), 0.05)
	assert.InDelta(t, 2.8, share(0.111), 0.1)
}

// On the kiln malt of the other law dries slower while it is wet and faster to the end.
func TestPageIsOtherOnTheKilnAndNotFarOff(t *testing.T) {
	p, _ := pale(t, "  began 2026-03-06 07:00\n")
	steps := func(o forecast.Options) (h, w []float64) {
		f, err := forecast.Run(p, o)
		require.NoError(t, err)
		for _, s := range f.Stages[3].Steps {
			h, w = append(h, (s.End-s.Start)/3600), append(w, 100*s.MoistureEnd)
		}
		return h, w
	}
	forms := OtherForms()
	forms.Growth, forms.Uptake = nil, nil
	own, ownW := steps(forecast.Options{})
	page, pageW := steps(forecast.Options{Forms: forms})
	assert.Greater(t, pageW[0], ownW[0]+1, "wetter when both have dried for as long")
	assert.Less(t, page[1], own[1], "sooner at the next gate")
	assert.Less(t, pageW[2], ownW[2]-1, "drier from the cure")
	t.Logf("hours on the kiln: %.2f of the model, %.2f by Page; %% of moisture then: %.2f and %.2f", own, page, ownW, pageW)
}
