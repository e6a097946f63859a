package outside

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/drying"
	"maltwright/sim/grain"
)

// What whoever writes the model anew from the document must know to the letter, with the
// figures of the code.
func TestTheDocumentSaysTheRulesThatAreEasilyReadOtherwise(t *testing.T) {
	says, of := pageAndCode(t)

	says("d(clock)/dt = warm(T) · φ(w) · access · (1 − debt) · pace")
	says("a share is %g °C·h of barley", of("grain/respiration.go", "dayClock"))
	says("T₁ = best + %g K", of("grain/respiration.go", "heatFade"))
	says("T₂ = ceiling + %g K", of("grain/respiration.go", "heatDeath"))
	says("c = (RH − %g %%)/%.0f %%", 100*of("forecast/hold.go", "openRH"), 100*(of("forecast/hold.go", "coverRH")-of("forecast/hold.go", "openRH")))
	says("air-on = asked + %g·(asked − air-off), at most %g K above", of("kiln/drive.go", "offGain"), of("kiln/drive.go", "Lead"))
	says("%g + D/%g, rounded up", of("kiln/layers.go", "layersLeast"), 1/of("kiln/layers.go", "layersEach"))
	says("one corn deep: %g mm", 1000*of("forecast/stage_grow.go", "oneCorn"))
	says("for more than %g h more than %g K above the warmth in which it grows best", of("forecast/box_adrift.go", "soonLost")/hour, of("forecast/box_adrift.go", "lostAbove"))
	says("X₆₀ what the curve of the grain has there, %.3f kg/kg of barley's", drying.Barley().Reference)
	says("%g kg/kg of barley (%.2f of wheat, %.2f of maize, %.2f of sorghum)",
		drying.Barley().WetFrom, drying.Wheat().WetFrom, drying.Maize().WetFrom, drying.Sorghum().WetFrom)
}

// The rules of the table of respiration, and of the marks, as the document puts them.
func TestTheTableOfRespirationIsReadAsTheDocumentSays(t *testing.T) {
	for _, name := range []string{"barley", "oats", "sorghum"} {
		p, err := grain.Of(name)
		require.NoError(t, err)
		l := grain.LotOf(p, 100, 0.14)
		const wet, day = 0.46, 86400.0
		rate := func(clock, warmth float64) float64 {
			return day * l.RespirationSpeed(clock, warmth, wet, 1) / l.RespirationFactor
		}
		share := 384 * p.Marks[3] / 2400
		for i, want := range p.Respiration {
			at := p.Chit + (float64(i)+0.5)*share
			assert.InEpsilon(t, want, rate(at, p.RespirationT), 1e-9, "%s, share %d", name, i+1)
			if i > 0 {
				assert.InEpsilon(t, (want+p.Respiration[i-1])/2, rate(at-share/2, p.RespirationT), 1e-9, "straight between")
			}
		}
		first, at := p.Respiration[0], p.Chit+share/2
		assert.InEpsilon(t, 0.4*first, rate(0, p.RespirationT), 1e-9)
		assert.InEpsilon(t, 0.7*first, rate(at/2, p.RespirationT), 1e-9)

		from, to := p.BestT+5, p.CeilingT+10
		for _, part := range []float64{0.25, 0.5, 0.9} {
			assert.InEpsilon(t, (1-part)*rate(at, from), rate(at, from+part*(to-from)), 1e-9, "straight down")
		}
		assert.Zero(t, rate(at, to))

		whole := p.Chit + p.Marks[3]
		assert.InEpsilon(t, 1.25, p.Acrospire(whole+p.Marks[3]-p.Marks[2]), 1e-9, "along the last line")
		assert.InEpsilon(t, p.RootletShare, p.Rootlets(whole+1000), 1e-12)
	}
}
