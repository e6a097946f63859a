package outside

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/drying"
	"maltwright/sim/grain"
	"maltwright/sim/kiln"
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
	says("air-on stands at asked + I + %g·max(0, e), at most %g K above what is asked", of("kiln/drive.go", "offGain"), of("kiln/drive.go", "Lead"))
	says("dI/dt = e/(2·L), e counted as ±%g K at the most", of("kiln/hand.go", "handStep"))
	says("no less than %g min", of("kiln/hand.go", "handLooks")/60)
	says("until air-off falls %g K below", of("kiln/drive.go", "Lead")/of("kiln/drive.go", "offGain"))
	says("free convection %g and radiation %g W/(m² K) on each", of("kiln/cooling.go", "openConvection"), of("kiln/cooling.go", "openRadiation"))
	says("λ = %g W/(m K) of malt in bulk", of("kiln/cooling.go", "bedConductivity"))
	says("takes more than %g times as much", of("kiln/cooling.go", "outlasts"))
	says("the first %g·√(a·1 h), each next one %g times as thick", of("kiln/wall.go", "firstCell"), of("kiln/wall.go", "cellGrowth"))
	says("%g times as high as wide and %g m at the most", of("kiln/fabric.go", "wallSides"), of("kiln/fabric.go", "wallHighest"))
	says("H the height of the door, %g m (common practice, listed as assumed), C = %g of a sharp edge", of("kiln/door.go", "OvenDoor"), of("kiln/door.go", "orifice"))
	says("%g + D/%g, rounded up", of("kiln/layers.go", "layersLeast"), 1/of("kiln/layers.go", "layersEach"))
	says("one kernel deep: %g mm", 1000*of("forecast/stage_grow.go", "oneKernel"))
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

// What the document says of walls is what they let through and hold.
func TestTheTableOfWallsIsTheCode(t *testing.T) {
	says, _ := pageAndCode(t)
	for f, holds := range map[kiln.Fabric]string{kiln.Brick: "385", kiln.Stone: "1040", kiln.Wood: "20", kiln.Metal: "3.5"} {
		w := kiln.Walls{Of: f, Area: 1}
		thick, _ := w.Thickness()
		if f == kiln.Metal {
			says("| metal | %g mm |", 1000*thick)
		} else {
			says("| %v | %g cm |", f, 100*thick)
		}
		says("| %.2f | %s |", w.Passes(), holds)
		want, err := strconv.ParseFloat(holds, 64)
		require.NoError(t, err)
		assert.InEpsilon(t, want, w.Holds()/1000, 0.01)
	}
}
