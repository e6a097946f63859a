package outside

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/sim/ensemble"
	"maltwright/sim/outside/figure"
	"maltwright/sim/steep"
)

// Lots differ in how fast they drink and in what husk and film hold. This file asks which
// weighings tell both: the posterior of the two on a grid, from their spreads and weights
// that are known to 1.2 %, as a drained weight is taken to be.

const (
	gridSide   = 21
	gridReach  = 3.0   // standard deviations to either side
	drainedOff = 0.012 // of a drained weight
)

// plan is a steep at 15 °C: soak, rest, soak ... of so many hours.
type plan []float64

// course is what a lot of 880 kg of dry matter weighs at some hours and at the last, kg, and
// its moisture then, wet basis.
type course struct {
	weight    []float64
	last, end float64
}

// of is the course of the lot that lies so many standard deviations off in its uptake and in
// its husk water.
func (p plan) of(t testing.TB, uptake, husk float64, hours []float64) course {
	l := lot(t, "barley", 880, 0.12)
	l.UptakeFactor = math.Exp(spreadOf(t, ensemble.Uptake) * uptake)
	l.HoldLoose(math.Exp(spreadOf(t, ensemble.HuskWater) * husk))
	s, err := steep.New(l)
	require.NoError(t, err)
	var c course
	now, due := 0.0, 0
	for i, h := range p {
		for end := now + h; now < end; {
			next := end
			if due < len(hours) && hours[due] < end {
				next = hours[due]
			}
			if i%2 == 0 {
				require.NoError(t, s.Soak((next-now)*hour, steep.Water{T: 15}))
			} else {
				require.NoError(t, s.Rest((next-now)*hour, steep.Air{T: 15, RH: 0.95}))
			}
			if now = next; due < len(hours) && hours[due] == now {
				c.weight = append(c.weight, s.DrainedMass())
				due++
			}
		}
	}
	c.last, c.end = s.DrainedMass(), s.Moisture()
	return c
}

// spreadOf is the spread that is taken for a factor, of the logarithm.
func spreadOf(t testing.TB, which ensemble.Factor) float64 {
	for _, u := range ensemble.UnknownsOf(&model.Process{}) {
		if u.Factor == which {
			return u.Scatter.SD
		}
	}
	t.Fatalf("%s is no unknown", which)
	return 0
}

// grid is the courses of lots over both unknowns.
func (p plan) grid(t testing.TB, hours []float64) [gridSide][gridSide]course {
	var g [gridSide][gridSide]course
	for i := range g {
		for k := range g[i] {
			g[i][k] = p.of(t, at(i), at(k), hours)
		}
	}
	return g
}

func at(i int) float64 { return gridReach * (2*float64(i)/(gridSide-1) - 1) }

// posterior is the mean and the standard deviation of the moisture at the end, from the
// weights on the scale.
func posterior(g *[gridSide][gridSide]course, weights []float64) (mean, sd float64) {
	var all, first, second float64
	for i := range g {
		for k, c := range g[i] {
			log := -(at(i)*at(i) + at(k)*at(k)) / 2
			for n, w := range weights {
				off := (c.weight[n] - w) / (drainedOff * w)
				log -= off * off / 2
			}
			share := math.Exp(log)
			all, first, second = all+share, first+share*c.end, second+share*c.end*c.end
		}
	}
	mean = first / all
	return mean, math.Sqrt(math.Max(0, second/all-mean*mean))
}

// leftOf is the root mean square of the standard deviation that weighings leave in the
// moisture at the end of a steep, points, over lots drawn from the spread.
func leftOf(t testing.TB, p plan, hours []float64) float64 {
	g, r, sum := p.grid(t, hours), rand.New(rand.NewPCG(1, 2)), 0.0
	const lots = 60
	for range lots {
		truth := p.of(t, r.NormFloat64(), r.NormFloat64(), hours)
		for n := range truth.weight {
			truth.weight[n] *= 1 + drainedOff*r.NormFloat64()
		}
		_, sd := posterior(&g, truth.weight)
		sum += sd * sd
	}
	return 100 * math.Sqrt(sum/lots)
}

// leftRow is a line of the document's table of what weighings leave open.
var leftRow = regexp.MustCompile(`(?m)^\| ([^|]+) \| ([^|]+) \| ([0-9.]+) points \|$`)

// What the document says of each pair of weighings is what comes of the model.
func TestWhatTheSecondWeighingSettlesIsAsTheDocumentSays(t *testing.T) {
	const limits = "../../docs/limits.md"
	text, err := os.ReadFile(limits)
	require.NoError(t, err)
	plans := map[string]plan{
		"35 h in water":                           {35},
		"8 h wet, 10 h air, 8 wet, 7 air, 3 wet":  {8, 10, 8, 7, 3},
		"5 h wet, 19 h air, 4 wet, 20 air, 6 wet": {5, 19, 4, 20, 6},
	}
	said := leftRow.FindAllStringSubmatch(string(text), -1)
	require.Len(t, said, 11)
	for _, m := range said {
		p, ok := plans[m[1]]
		require.True(t, ok, m[1])
		points, err := strconv.ParseFloat(m[3], 64)
		require.NoError(t, err)
		left := leftOf(t, p, hoursOf(t, p, m[2]))
		t.Logf("%s, weighed %s: %.2f points", m[1], m[2], left)
		assert.InDelta(t, left, points, 0.1, "%s, weighed %s", m[1], m[2])
	}
}

// hoursOf reads when it was weighed: "never", "at 5 and 20 h", "after soaks 1 and 2".
func hoursOf(t testing.TB, p plan, text string) []float64 {
	var hours []float64
	for _, word := range strings.Fields(text) {
		n, err := strconv.Atoi(word)
		switch {
		case err != nil:
		case strings.HasPrefix(text, "at "):
			hours = append(hours, float64(n))
		default:
			end := 0.0
			for _, h := range p[:2*n-1] {
				end += h
			}
			hours = append(hours, end)
		}
	}
	if text != "never" {
		require.NotEmpty(t, hours, text)
	}
	return hours
}

// foretold are the weights of two lots at 35 h, from those on the scale before.
func foretold() []row {
	var list []row
	for _, series := range figure.MolinaCano() {
		for _, c := range []struct {
			known []int   // of figure.WeighedAt
			by    float64 // g: two standard deviations of what such weighings leave open
		}{{[]int{0}, 3.2}, {[]int{0, 3}, 1.6}} {
			var hours []string
			for _, i := range c.known {
				hours = append(hours, fmt.Sprintf("%g", figure.WeighedAt()[i]))
			}
			last := series.Grams[len(series.Grams)-1]
			list = append(list, row{what: fmt.Sprintf("lot %s, weighed at %s h: foretold for 35 h", series.Lot, strings.Join(hours, " and ")), unit: "g of 50", digits: 1,
				source: last, accepted: about(last, c.by),
				key: "molina-cano-1995", standing: "seen; the bound is ours", model: foretell(series.Grams, c.known)}.fitted("barleyHuskWater", "barleyFilmWater").untried())
		}
	}
	return list
}

// foretell gives the mean of the posterior of the weight at 35 h, g of 50 g, from some of
// the weights before.
func foretell(grams []float64, known []int) func(testing.TB) float64 {
	return func(t testing.TB) float64 {
		const scale = 880 / 44.0 // 50 g of 12 % hold 44 g
		var hours, weights []float64
		for _, i := range known {
			hours, weights = append(hours, figure.WeighedAt()[i]), append(weights, scale*grams[i])
		}
		g := plan{35}.grid(t, hours)
		for i := range g {
			for k := range g[i] {
				g[i][k].end = g[i][k].last / scale
			}
		}
		mean, _ := posterior(&g, weights)
		return mean
	}
}
