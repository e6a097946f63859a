package outside

import (
	"cmp"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"maltwright/lang/source/golden"
	"maltwright/sim/forecast"
	"maltwright/sim/outside/figure"
)

// published is a figure that a source gives: its own, or the middle of its band. A bound
// is none.
func (r row) published() (v float64, ok bool) {
	b := r.accepted
	switch {
	case r.proves() == sumOnly || r.idle:
		return 0, false
	case r.says == "":
		v = r.source
	case b.low > 0 && !math.IsInf(b.high, 0):
		v = (b.low + b.high) / 2
	}
	return v, v > 0
}

// stageOf is what of the process a row is of, by its section and its unit.
func stageOf(section string, r row) string {
	switch {
	case r.stage != "":
		return r.stage
	case r.unit == "EBC" || strings.Contains(r.what, "diastatic"):
		return heatStage
	case section == "Steeping":
		return "steep"
	case section == "Growth" || section == "Germinating with air blown through":
		return "growth"
	case section == "Sorption and thin layers":
		return "thin layer"
	}
	return "kiln and bin"
}

// stages are in the order of the document.
var stages = []string{"steep", "growth", "withering", "thin layer", "kiln and bin", heatStage}

const heatStage = "what heat does to malt"

// tried is a published figure beside what lots and houses make of it.
type tried struct {
	row
	stage     string
	value     float64
	own, wide spread
}

// spread is the 10, 50 and 90 % points of a figure over the members.
type spread struct{ low, middle, high float64 }

func (s spread) holds(v float64) bool { return s.low <= v && v <= s.high }

// width is that of the interval, as a share of the figure.
func (s spread) width() float64 { return (s.high - s.low) / math.Abs(s.middle) }

// over is the spread of a row's figure over members.
func (r row) over(t testing.TB, list []forecast.Options) spread {
	values := make([]float64, len(list))
	for i, o := range list {
		values[i] = r.model(member{t, o})
	}
	slices.Sort(values)
	at := func(p float64) float64 { return stat.Quantile(p, stat.Empirical, values, nil) }
	return spread{at(0.1), at(0.5), at(0.9)}
}

// lots is how many lots and houses a figure is tried with.
const lots = 40

// tries is every published figure of some stages on which an unknown acts.
func tries(t testing.TB, stages []string) []tried {
	own, wide := members(lots, false), members(lots, true)
	var list []tried
	for _, s := range append(table(), section{"Steeping", curves()}) {
		for _, r := range s.rows {
			stage := stageOf(s.title, r)
			v, ok := r.published()
			if !ok || !slices.Contains(stages, stage) || r.model(member{t, own[0]}) == r.model(member{t, own[1]}) {
				continue
			}
			list = append(list, tried{r, stage, v, r.over(t, own), r.over(t, wide)})
		}
	}
	return list
}

// curves are the weighings of a source one by one: the table has the worst miss of each
// lot alone.
func curves() []row {
	var list []row
	for _, series := range figure.MolinaCano() {
		for i, g := range series.Grams {
			list = append(list, row{what: fmt.Sprintf("lot %s after %g h", series.Lot, figure.WeighedAt()[i]), unit: "g of 50", digits: 2, source: g, lot: series.Lot,
				key: "molina-cano-1995", standing: "seen", model: func(t testing.TB) float64 {
					return 1000 * lot50(t, figure.WeighedAt()[i])
				}}.fitted("barleyHuskWater", "barleyFilmWater"))
		}
	}
	return list
}

const (
	calibrationBegin = "<!-- calibration: begin (made by go test ./sim/outside with MALTWRIGHT_UPDATE=1) -->\n"
	calibrationEnd   = "<!-- calibration: end -->\n"
	limits           = "../../docs/limits.md"
)

// cheap are the stages whose models are asked by every test; those of whole forecasts
// and beds cost ten times as much.
var cheap = []string{"steep", "thin layer"}

// The document says how often the spread of the program holds what others published, as
// it was found here.
func TestHowOftenTheSpreadHoldsStandsInTheDocument(t *testing.T) {
	if !golden.Whole() {
		text, err := os.ReadFile(limits)
		require.NoError(t, err)
		for _, line := range shares(t, tries(t, cheap), cheap) {
			assert.Contains(t, string(text), line, "%s has another share", limits)
		}
		return
	}
	list := tries(t, stages)
	lines := shares(t, list, append(slices.Clone(stages), ""))
	var outside []string
	for _, x := range list {
		if x.proves() == heldOut && !x.wide.holds(x.value) {
			outside = append(outside, fmt.Sprintf("%s (%.3g %s, in %.3g to %.3g)", x.what, x.value, x.unit, x.wide.low, x.wide.high))
		}
	}
	golden.Between(t, limits, calibrationBegin, calibrationEnd,
		"\n| of | figures | inside, lot and house alone | width | inside, with what the equations miss | width |\n|---|---|---|---|---|---|\n"+strings.Join(lines, "")+"\nHeld, and outside of the wider interval: "+strings.Join(outside, "; ")+".\n\n")
}

// shares are the lines of some stages, "" for all of them together: first of the figures
// by which nothing of the model was set.
func shares(t testing.TB, list []tried, stages []string) []string {
	var lines []string
	for _, held := range []bool{true, false} {
		name := map[bool]string{true: "held", false: "fitted or calibrated"}[held]
		for _, stage := range stages {
			part := slices.DeleteFunc(slices.Clone(list), func(x tried) bool {
				return (x.proves() == heldOut) != held || stage != "" && x.stage != stage
			})
			if len(part) > 0 {
				lines = append(lines, sharesOf(t, cmp.Or(stage, "all")+", "+name, part))
			}
		}
	}
	for _, x := range list {
		t.Logf("%s, %s: %.3g lies in %.3g to %.3g: %v; in %.3g to %.3g: %v", x.stage, x.what, x.value,
			x.own.low, x.own.high, x.own.holds(x.value), x.wide.low, x.wide.high, x.wide.holds(x.value))
	}
	return lines
}

// sharesOf is the line of some figures: how many are inside, with the 95 % interval of
// such a share, and the median width.
func sharesOf(t testing.TB, name string, list []tried) string {
	cells := func(of func(tried) spread) string {
		var widths []float64
		inside := 0
		for _, x := range list {
			if of(x).holds(x.value) {
				inside++
			}
			widths = append(widths, of(x).width())
		}
		slices.Sort(widths)
		k, n := strconv.Itoa(inside), strconv.Itoa(len(list))
		return fmt.Sprintf(" %d, %.0f–%.0f %% | %.0f %% |", inside, germinated(k, n, lowEnd)(t), germinated(k, n, highEnd)(t),
			100*stat.Quantile(0.5, stat.Empirical, widths, nil))
	}
	return fmt.Sprintf("| %s | %d |%s%s\n", name, len(list), cells(func(x tried) spread { return x.own }), cells(func(x tried) spread { return x.wide }))
}
