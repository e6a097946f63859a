package chart_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/lucasb-eyer/go-colorful"
	"github.com/stretchr/testify/assert"

	"maltwright/cmd/chart"
)

// eyes are what an eye sees that lacks one kind of cone, as a matrix on linear RGB: severity 1.0 of the table of [machado-2009].
var eyes = []struct {
	name string
	m    [9]float64
}{
	{"all colours", [9]float64{1, 0, 0, 0, 1, 0, 0, 0, 1}},
	{"no red", [9]float64{0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998}},
	{"no green", [9]float64{0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881}},
	{"no blue", [9]float64{1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900}},
}

func seen(c colorful.Color, m [9]float64) colorful.Color {
	r, g, b := c.LinearRgb()
	row := func(i int) float64 { return math.Min(math.Max(m[i]*r+m[i+1]*g+m[i+2]*b, 0), 1) }
	return colorful.LinearRgb(row(0), row(3), row(6))
}

func of(s *chart.Scheme, i chart.Ink) colorful.Color {
	c, _ := colorful.MakeColor(s.Of(i))
	return c
}

// luminance and contrast are those of [wcag-2023].
func luminance(c colorful.Color) float64 {
	r, g, b := c.LinearRgb()
	return 0.2126*r + 0.7152*g + 0.0722*b
}

func contrast(a, b colorful.Color) float64 {
	x, y := luminance(a), luminance(b)
	return (math.Max(x, y) + 0.05) / (math.Min(x, y) + 0.05)
}

var schemes = map[string]*chart.Scheme{"light": chart.Light, "dark": chart.Dark, "print": chart.Print}

// roles are those that have a colour of their own.
var roles = []chart.Role{chart.First, chart.Second, chart.Third, chart.Fourth, chart.Fifth, chart.Sixth, chart.Quiet}

func TestAWhiteIsWhiteToEveryEye(t *testing.T) {
	white := colorful.Color{R: 1, G: 1, B: 1}
	for _, e := range eyes {
		assert.InDelta(t, 0, 100*seen(white, e.m).DistanceCIEDE2000(white), 0.01, e.name)
	}
}

// The library is held to pairs of the table of [sharma-2005] that lie within what a screen shows or near it.
func TestTheDifferenceOfColoursIsThePublishedOne(t *testing.T) {
	for _, p := range []struct{ l1, a1, b1, l2, a2, b2, want float64 }{
		{50, 2.5, 0, 73, 25, -18, 27.1492},
		{50, 2.5, 0, 61, -5, 29, 22.8977},
		{60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644},
		{2.0776, 0.0795, -1.1350, 0.9033, -0.0636, -0.5514, 0.9082},
	} {
		a, b := colorful.Lab(p.l1/100, p.a1/100, p.b1/100), colorful.Lab(p.l2/100, p.a2/100, p.b2/100)
		assert.InDelta(t, p.want, 100*a.DistanceCIEDE2000(b), 5e-5)
	}
}

// Two colours of a difference of 1 can just be told apart side by side; lines stand apart, and are thin.
func TestAnyTwoRolesDifferForEveryEyeOnEveryPaper(t *testing.T) {
	for name, s := range schemes {
		for _, e := range eyes {
			for i, a := range roles {
				for _, b := range roles[:i] {
					d := 100 * seen(of(s, a.Ink()), e.m).DistanceCIEDE2000(seen(of(s, b.Ink()), e.m))
					assert.GreaterOrEqual(t, d, 12.0, "%s, %s: roles %d and %d", name, e.name, a, b)
				}
				paper := 100 * seen(of(s, a.Ink()), e.m).DistanceCIEDE2000(seen(of(s, chart.Paper), e.m))
				assert.GreaterOrEqual(t, paper, 25.0, "%s, %s: role %d on paper", name, e.name, a)
			}
		}
	}
}

func TestTextAndLinesStandOutFromPaperAndNight(t *testing.T) {
	for name, s := range schemes {
		for _, under := range []chart.Ink{chart.Paper, chart.Night} {
			for _, ink := range []chart.Ink{chart.Letters, chart.Pale} {
				assert.GreaterOrEqual(t, contrast(of(s, ink), of(s, under)), 4.5, "%s: text %d on %d", name, ink, under)
			}
			for _, ink := range []chart.Ink{chart.Frame, chart.Level, chart.Today} {
				assert.GreaterOrEqual(t, contrast(of(s, ink), of(s, under)), 3.0, "%s: line %d on %d", name, ink, under)
			}
			for _, r := range roles {
				assert.GreaterOrEqual(t, contrast(of(s, r.Ink()), of(s, under)), 3.0, "%s: role %d on %d", name, r, under)
			}
		}
	}
}

// A line lies on the band of its own role and of others, and on both papers.
func TestALineStandsOutFromItsBand(t *testing.T) {
	for name, s := range schemes {
		for _, r := range roles {
			band := of(s, chart.Paper).BlendRgb(of(s, r.Ink()), 0.2)
			assert.GreaterOrEqual(t, contrast(of(s, r.Ink()), band), 2.2, "%s: role %d", name, r)
			assert.GreaterOrEqual(t, contrast(of(s, chart.Letters), band), 4.5, "%s: text on the band of %d", name, r)
		}
	}
}

// The steps of a field go from the paper away, each as far from the last for every eye, and in lightness all one way.
func TestTheStepsOfAFieldAreInOrderForEveryEye(t *testing.T) {
	for name, s := range schemes {
		for _, e := range eyes {
			var far []float64
			for i := 1; i < chart.Steps; i++ {
				a, b := seen(of(s, chart.Step(i-1)), e.m), seen(of(s, chart.Step(i)), e.m)
				far = append(far, 100*a.DistanceCIEDE2000(b))
				la, _, _ := a.Lab()
				lb, _, _ := b.Lab()
				if name == "dark" {
					la, lb = lb, la
				}
				assert.Greater(t, la-lb, 0.03, "%s, %s: step %d", name, e.name, i)
			}
			least, most := math.Inf(1), 0.0
			for _, d := range far {
				least, most = math.Min(least, d), math.Max(most, d)
			}
			assert.Greater(t, least, 4.0, "%s, %s: %v", name, e.name, far)
			assert.Less(t, most/least, 2.5, "%s, %s: %v", name, e.name, far)
		}
	}
}

func TestRolesDifferInDashAndMarkToo(t *testing.T) {
	dash, look := map[string]chart.Role{}, map[string]chart.Role{}
	for r := chart.First; r < 12; r++ {
		if r < 6 {
			d := fmt.Sprint(r.Dash())
			assert.NotContains(t, dash, d, "dash of %d", r)
			dash[d] = r
		}
		all := fmt.Sprint(r.Ink(), r.Dash(), r.Shape())
		assert.NotContains(t, look, all, "look of %d", r)
		look[all] = r
		assert.NotEqual(t, chart.Cross, r.Shape())
	}
	assert.Equal(t, chart.Step(0), chart.Step(-3))
	assert.Equal(t, chart.Step(chart.Steps-1), chart.Step(99))
}
