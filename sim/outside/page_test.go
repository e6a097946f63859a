package outside

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/grain"
)

// The rules of growth and of the bed are written in the document with their figures, so that
// whoever goes by it alone comes to the same forecast. Each phrase is made of the figures
// that the code has.
func TestTheDocumentSaysTheRulesOfGrowthWithTheFiguresOfTheCode(t *testing.T) {
	says, of := pageAndCode(t)
	p, err := grain.Of("barley")
	require.NoError(t, err)

	says("lack · awake · (%g − debt)/%g h − (1 − lack) · debt/%g h",
		of("grain/debt.go", "debtMost"), of("grain/debt.go", "debtBuilds")/hour, of("grain/debt.go", "debtPaid")/hour)
	says("%g points · (1 − clock/C)² lower", 100*p.WakeEarly)
	says("C·e^(%gz) + M·e^(%gz)", p.ChitSpread, p.MarkSpread)
	says("1 + %.1f·(X − X₀)/(X₄₅ − X₀)", of("grain/bed.go", "swelling")-1)
	says("%.3f kg/kg of 45 %%", of("grain/bed.go", "swollenX"))
	says("a layer of %g kg of dry matter on the m², or all there is where that is less", of("drying/barley.go", "faceDry"))
	says("what the pores held when the air stopped or the bed was turned, 0.4 · %g kg/m³", grain.AirOxygen)
	says("ρ = %g kg/m³", grain.AirOxygen)
	assert.InDelta(t, 0.4*grain.AirOxygen, grain.PoreOxygen, 1e-12)
	assert.InEpsilon(t, 2e-5*0.2530*grain.AirOxygen, grain.PoreSupply, 1e-12) // 0.4^1.5
	says("k = %g an hour in %g l for each kg", of("steep/blown.go", "airTransfer"), of("steep/soak.go", "DefaultWaterPerKg"))
	says("wanted = %.2f kg/kg · table(clock)", grain.StarchO2)
	says("clock has not moved burns %g of the first", of("grain/respiration.go", "sleepShare"))
	says("%g °C·h", p.Chit)
	says("at %.0f, %.0f, %.0f and %.0f °C·h", p.Marks[0], p.Marks[1], p.Marks[2], p.Marks[3])
	r := p.Respiration
	says("The table gives %.2f, %.2f, %.2f, %.2f, %.2f and %.2f %% a day", 100*r[0], 100*r[1], 100*r[2], 100*r[3], 100*r[4], 100*r[5])
	assert.Equal(t, 0.2, of("germinate/work.go", "turnShare"), "the document says a fifth")
}

// pageAndCode gives what asks the document for a phrase with figures, and what gives the
// value of a constant of the code, by its file under sim and its name.
func pageAndCode(t *testing.T) (says func(format string, figures ...any), of func(file, name string) float64) {
	t.Helper()
	text, err := os.ReadFile(document)
	require.NoError(t, err)
	page := strings.Join(strings.Fields(string(text)), " ")
	code := constants(t)
	says = func(format string, figures ...any) {
		t.Helper()
		assert.Contains(t, page, fmt.Sprintf(format, figures...))
	}
	return says, func(file, name string) float64 {
		t.Helper()
		c, ok := code["sim/"+file+" "+name]
		require.True(t, ok, "%s %s", file, name)
		return c.value
	}
}
