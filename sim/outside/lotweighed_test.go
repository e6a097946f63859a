package outside

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"

	"maltwright/lang/model"
	"maltwright/sim/ensemble"
	"maltwright/sim/outside/figure"
	"maltwright/sim/steep"
)

// Lots differ in how fast they drink and in what husk and film hold, and the equation of the
// core may miss what it comes to in the end. This file asks which weighings tell of a lot: the
// posterior of the three, from their spreads and weights that are known to 1.2 %, as a
// drained weight is taken to be.

const (
	drainedOff = 0.012 // of a drained weight
	ofLot      = 3     // unknowns
	lotStride  = 0.25  // of the slopes, standard deviations
)

// lotAt is where a lot lies: in its uptake, its husk water and what its core comes to, in
// standard deviations of what is usual.
type lotAt [ofLot]float64

// plan is a steep at 15 °C: soak, rest, soak ... of so many hours.
type plan []float64

// course is what a lot of 880 kg of dry matter weighs at some hours and at the last, kg, and
// its moisture then, wet basis.
type course struct {
	weight    []float64
	last, end float64
}

// of is the course of a lot.
func (p plan) of(t testing.TB, z lotAt, hours []float64) course {
	l := lot(t, "barley", 880, 0.12)
	factor := func(i int, open ensemble.Open) float64 { return math.Exp(spreadOf(t, open) * z[i]) }
	l.UptakeFactor = factor(0, ensemble.LotUptake)
	l.HoldLoose(factor(1, ensemble.LotHuskWater))
	l.HoldCore(factor(2, ensemble.LateUptake))
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
func spreadOf(t testing.TB, open ensemble.Open) float64 {
	for _, u := range ensemble.UnknownsOf(&model.Process{}) {
		if u.Open == open {
			return u.Scatter.SD
		}
	}
	t.Fatalf("%v is no unknown", open)
	return 0
}

// slopes are those of the weights, in their errors, and of the moisture at the end, by each
// unknown.
func (p plan) slopes(t testing.TB, z lotAt, hours []float64) (here course, weights *mat.Dense, end *mat.VecDense) {
	here = p.of(t, z, hours)
	weights, end = mat.NewDense(len(hours)+1, ofLot, nil), mat.NewVecDense(ofLot, nil) // a row more, so that there is one
	for k := range ofLot {
		moved := z
		moved[k] += lotStride
		there := p.of(t, moved, hours)
		for n, w := range here.weight {
			weights.Set(n, k, (there.weight[n]-w)/lotStride/(drainedOff*w))
		}
		end.SetVec(k, (there.end-here.end)/lotStride)
	}
	return here, weights, end
}

// curvature is that of the posterior: of the prior, and of the weights.
func curvature(weights *mat.Dense) *mat.Dense {
	h := mat.NewDense(ofLot, ofLot, nil)
	h.Mul(weights.T(), weights)
	for k := range ofLot {
		h.Set(k, k, h.At(k, k)+1)
	}
	return h
}

// leftOf is the standard deviation that weighings leave in the moisture at the end of a
// steep, points, by the slopes at the usual lot.
func leftOf(t testing.TB, p plan, hours []float64) float64 {
	_, weights, end := p.slopes(t, lotAt{}, hours)
	var by mat.VecDense
	require.NoError(t, by.SolveVec(curvature(weights), end))
	return 100 * math.Sqrt(mat.Dot(end, &by))
}

// likeliest is the lot that agrees best with weights and with what is usual.
func (p plan) likeliest(t testing.TB, hours, weighed []float64) lotAt {
	var z lotAt
	for range 8 {
		here, weights, _ := p.slopes(t, z, hours)
		off := mat.NewVecDense(len(hours)+1, nil)
		for n, w := range here.weight {
			off.SetVec(n, (weighed[n]-w)/(drainedOff*w))
		}
		var toward, step mat.VecDense
		toward.MulVec(weights.T(), off)
		toward.SubVec(&toward, mat.NewVecDense(ofLot, z[:]))
		require.NoError(t, step.SolveVec(curvature(weights), &toward))
		for k := range z {
			z[k] += step.AtVec(k)
		}
	}
	return z
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
		}{{[]int{0}, 3.5}, {[]int{0, 3}, 1.8}} {
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

// foretell gives the weight at 35 h of the lot that agrees best with some of the weights
// before, g of 50 g.
func foretell(grams []float64, known []int) func(testing.TB) float64 {
	return func(t testing.TB) float64 {
		const scale = 880 / 44.0 // 50 g of 12 % hold 44 g
		var hours, weighed []float64
		for _, i := range known {
			hours, weighed = append(hours, figure.WeighedAt()[i]), append(weighed, scale*grams[i])
		}
		p := plan{35}
		return p.of(t, p.likeliest(t, hours, weighed), nil).last / scale
	}
}
