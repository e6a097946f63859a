package outside

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
	"maltwright/sim/grain"
)

const (
	speciesBegin = "<!-- species: begin (made by go test ./sim/outside with MALTWRIGHT_UPDATE=1) -->\n"
	speciesEnd   = "<!-- species: end -->\n"
)

// Whoever writes the model anew from the document needs every figure of every species.
func TestTheDocumentHasTheFiguresOfEverySpecies(t *testing.T) {
	var wet, grows strings.Builder
	wet.WriteString("\n| grain | poured, kg/m³ | 1000 kernels, g | uptake, of barley's | its energy, kJ/mol | core, kg/kg | husk | film | washes out, % | rootlets, % | equilibrium of its malt higher by, kg/kg |\n|---|---|---|---|---|---|---|---|---|---|---|\n")
	grows.WriteString("\n| grain | base, best, ceiling, °C | φ from, to, % | earlier, points | half chitted, °C·h | acrospire 1/4, 1/2, 3/4, 1, °C·h | respiration | final germination, % at °C |\n|---|---|---|---|---|---|---|---|\n")
	barley, err := grain.Of("barley")
	require.NoError(t, err)
	for _, name := range grain.Names() {
		p, err := grain.Of(name)
		require.NoError(t, err)
		require.Equal(t, barley.ChitSpread, p.ChitSpread, "the document has one spread of chit")
		require.Equal(t, barley.MarkSpread, p.MarkSpread, "the document has one spread of growth")
		fmt.Fprintf(&wet, "| %s | %.0f | %.0f | %.3g | %.3g | %.3g | %.3g | %.3g | %.3g | %.3g | %s |\n", name, p.BulkDensity, 1000*p.KernelWeight, p.Uptake, p.UptakeEnergy/1000,
			p.CoreWater, p.HuskWater, p.FilmWater, 100*p.LeachPool, 100*p.RootletShare, minus(p.Malt.Shift))
		var marks, final []string
		for _, m := range p.Marks {
			marks = append(marks, fmt.Sprintf("%.0f", m))
		}
		for _, g := range p.Germinates {
			final = append(final, fmt.Sprintf("%.0f at %g", 100*g.Share, g.T))
		}
		fmt.Fprintf(&grows, "| %s | %g, %g, %g | %.0f, %.0f | %.3g | %.1f | %s | %.3g at %g °C | %s |\n", name, p.BaseT, p.BestT, p.CeilingT, 100*p.DryStop, 100*p.MoistFull,
			100*p.WakeEarly, p.Chit, strings.Join(marks, ", "), breathOfBarley(t, &p, &barley), p.RespirationT, strings.Join(final, ", "))
	}
	golden.Between(t, document, speciesBegin, speciesEnd, wet.String()+grows.String()+"\n")
}

// breathOfBarley is the factor by which a species' table of respiration is that of barley.
func breathOfBarley(t *testing.T, p, barley *grain.Profile) float64 {
	t.Helper()
	factor := p.Respiration[0] / barley.Respiration[0]
	for i, r := range p.Respiration {
		require.InEpsilon(t, factor*barley.Respiration[i], r, 1e-9, "the document has one factor for the whole table")
	}
	return factor
}

// minus writes a number with a minus sign.
func minus(v float64) string { return strings.Replace(fmt.Sprintf("%.3g", v), "-", "−", 1) }
