package term_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode"

	"github.com/rivo/uniseg"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/cmd/chart"
	"maltwright/cmd/chart/term"
	"maltwright/lang/source/golden"
)

const (
	hour = 3600.0
	day  = 24 * hour
)

// course samples a function every so many s.
func course(from, to, every float64, f func(float64) float64) (at, value []float64) {
	for t := from; t <= to; t += every {
		at, value = append(at, t), append(value, f(t))
	}
	return at, value
}

// moist is the moisture of a made-up batch, %.
func moist(t float64) float64 {
	switch d := t / day; {
	case d < 1.5:
		return 12.4 + 31.4*math.Sqrt(d/1.5)
	case d < 6.5:
		return 43.8
	case d < 7.5:
		return 43.8 - 9*(d-6.5)
	default:
		return 4.4 + 30.4*math.Exp(-9*(d-7.5))
	}
}

var friday = time.Date(2026, 3, 6, 7, 0, 0, 0, time.UTC)

// underway is a batch that has run for four days and a half, with readings and what is foretold.
func underway() chart.Chart {
	now := 4.5 * day
	past, was := course(0, now, hour, moist)
	ahead, middle := course(now, 8.3*day, hour, moist)
	low, high := make([]float64, len(ahead)), make([]float64, len(ahead))
	for i, t := range ahead {
		off := 3 * (t - now) / (4 * day)
		low[i], high[i] = middle[i]-off, middle[i]+off
	}
	c := chart.Chart{Title: "Loft pale: moisture", Sub: "batch 26-05 as of Tuesday 10 March 2026, 19:00", Start: friday, To: 8.3 * day, Now: &now,
		Stages: []chart.Span{{From: 0, To: 1.6 * day, Name: "steep"}, {From: 1.6 * day, To: 6.5 * day, Name: "germinate"}, {From: 6.5 * day, To: 7.5 * day, Name: "wither"}, {From: 7.5 * day, To: 8.2 * day, Name: "kiln"}, {From: 8.2 * day, To: 8.3 * day, Name: "deculm"}},
		Panels: []chart.Panel{{Name: "moisture", Unit: "%", Places: 1, Lines: []chart.Line{{Name: "by the readings", At: past, Value: was}},
			Bands:  []chart.Band{{Name: "8 in 10 cases", At: ahead, Low: low, Middle: middle, High: high}},
			Points: []chart.Point{{At: 7 * hour, Value: 29, Error: 2}, {At: 23 * hour, Value: 38}, {At: 39 * hour, Value: 44}, {At: 60 * hour, Value: 30, Doubted: true}, {At: 70 * hour, Value: 400, Doubted: true}},
			Gates:  []chart.Gate{{Value: 43, From: 0, To: 1.6 * day, Name: "at least 43 %"}, {Value: 35, From: 6.5 * day, To: 7.5 * day, Name: "at most 35 %"}, {Value: 4.5, From: 7.5 * day, To: 8.3 * day, Name: "at most 4.5 %"}}}},
		Note: []string{"Made up."}}
	for n := range 9 {
		c.Nights = append(c.Nights, chart.Span{From: float64(n)*day + 15*hour, To: float64(n)*day + 23*hour})
	}
	return c
}

// heat has three lines, and its time from the first soak.
func heat() chart.Chart {
	bed, b := course(1.6*day, 6.5*day, hour, func(t float64) float64 { return 15.5 + 1.5*math.Sin(t/day*2*math.Pi) })
	room, r := course(0, 8.3*day, hour, func(t float64) float64 { return 11 + 3*math.Sin(t/day*2*math.Pi) })
	on, a := course(7.5*day, 8.3*day, hour, func(t float64) float64 { return 50 + 32*(t-7.5*day)/day })
	return chart.Chart{Title: "Loft pale: heat", Since: "the first soak", To: 8.3 * day,
		Stages: []chart.Span{{From: 0, To: 1.6 * day, Name: "steep"}, {From: 1.6 * day, To: 6.5 * day, Name: "germinate"}, {From: 6.5 * day, To: 8.3 * day, Name: "kiln"}},
		Panels: []chart.Panel{
			{Name: "the grain", Unit: "°C", Lines: []chart.Line{{Name: "bed", At: bed, Value: b}, {Name: "room", Role: chart.Second, At: room, Value: r}}},
			{Name: "the kiln", Unit: "°C", Lines: []chart.Line{{Name: "air-on", Role: chart.Third, At: on, Value: a, Step: true}}}}}
}

// bed is a field.
func bed() chart.Chart {
	f := chart.Field{Name: "moisture of the bed", Unit: "%", Low: 0, High: 45}
	for t := 0.0; t <= 20*hour; t += hour {
		f.At = append(f.At, t)
	}
	for d := 0; d < 10; d++ {
		f.Depth = append(f.Depth, float64(10*d))
		var row []float64
		for _, t := range f.At {
			row = append(row, 4+40/(1+math.Exp((t/hour-2-float64(d))/1.5)))
		}
		f.Value = append(f.Value, row)
	}
	return chart.Chart{Title: "Loft pale: the bed on the kiln", Since: "the first soak", To: 20 * hour, Panels: []chart.Panel{{Name: "depth", Unit: "cm", Field: &f}}}
}

var samples = []struct {
	name string
	of   func() chart.Chart
}{{"underway", underway}, {"heat", heat}, {"bed", bed}}

func written(t *testing.T, c chart.Chart, o term.Options) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, term.Write(&b, c, o))
	return b.String()
}

func TestCharts(t *testing.T) {
	for _, s := range samples {
		for _, width := range []int{100, 80, 40} {
			for _, plain := range []bool{false, true} {
				kind := "fine"
				if plain {
					kind = "plain"
				}
				t.Run(fmt.Sprintf("%s-%s-%d", s.name, kind, width), func(t *testing.T) {
					o := term.Options{Width: width, Plain: plain}
					out := written(t, s.of(), o)
					assert.Equal(t, out, written(t, s.of(), o), "the same each time")
					fits(t, out, width)
					golden.File(t, "testdata/"+s.name+"-"+kind+"-"+fmt.Sprint(width)+".txt", out)
				})
			}
		}
	}
}

// fits asks that no row is wider than the screen, and that all of it can be printed.
func fits(t *testing.T, out string, width int) {
	t.Helper()
	for _, line := range strings.Split(out, "\n") {
		assert.LessOrEqual(t, uniseg.StringWidth(line), width, line)
		for _, r := range line {
			assert.True(t, unicode.IsPrint(r), "%q of %q", r, line)
		}
	}
}

func TestAnyChartFitsAnyScreen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width := rapid.IntRange(20, 120).Draw(t, "width")
		value := rapid.OneOf(rapid.Float64Range(-1e4, 1e4), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), 0, 1e300, 1e-300}))
		text := rapid.SampledFrom([]string{"", "a", "\x1b[31mred\x1b[0m\n\t", "麦芽の水分", "a name that goes on and on, longer than any screen is wide: 4.5 %", "°½→"})
		at := rapid.SliceOfNDistinct(rapid.Float64Range(0, 1e6), 2, 20, rapid.ID).Draw(t, "at")
		slices.Sort(at)
		list := func(name string) []float64 { return rapid.SliceOfN(value, len(at), len(at)).Draw(t, name) }
		c := chart.Chart{Title: text.Draw(t, "title"), Sub: text.Draw(t, "sub"), From: at[0], To: at[len(at)-1], Note: []string{text.Draw(t, "note")}}
		if rapid.Bool().Draw(t, "clock") {
			c.Start = friday
		}
		c.Stages = []chart.Span{{From: at[0], To: at[1], Name: text.Draw(t, "stage")}, {From: at[1], To: at[len(at)-1], Name: text.Draw(t, "stage")}}
		for range rapid.IntRange(1, 3).Draw(t, "panels") {
			c.Panels = append(c.Panels, chart.Panel{Name: text.Draw(t, "panel"), Unit: "°C", Places: 1,
				Lines:  []chart.Line{{Name: text.Draw(t, "line"), At: at, Value: list("value"), Step: true}, {Name: "b", Role: chart.Quiet, At: at, Value: list("value")}},
				Bands:  []chart.Band{{Name: text.Draw(t, "band"), At: at, Low: list("low"), Middle: list("middle"), High: list("high")}},
				Points: []chart.Point{{At: at[1], Value: value.Draw(t, "point"), Error: value.Draw(t, "error"), Doubted: rapid.Bool().Draw(t, "doubted"), Name: text.Draw(t, "point")}},
				Gates:  []chart.Gate{{Value: value.Draw(t, "gate"), From: at[0], To: at[1], Name: text.Draw(t, "gate")}}})
		}
		var b strings.Builder
		require.NoError(t, term.Write(&b, c, term.Options{Width: width, Plain: rapid.Bool().Draw(t, "plain")}))
		for _, line := range strings.Split(b.String(), "\n") {
			require.LessOrEqual(t, uniseg.StringWidth(line), width, line)
			for _, r := range line {
				require.True(t, unicode.IsPrint(r), "%q of %q", r, line)
			}
		}
	})
}

func TestBarsStandBesideTheirNames(t *testing.T) {
	c := chart.Bars{Title: "what drives the spread", Groups: []chart.BarGroup{{Name: "total time", Unit: "%", Most: 100, Bars: []chart.Bar{
		{Name: "how fast the lot grows", Value: 73}, {Name: "where in its bands the process is held", Value: 7}, {Name: "colder", Value: -12, Text: "-12 %"}, {Name: "unknown", Value: math.NaN(), Text: "not known"}}}}}
	for _, width := range []int{80, 40} {
		for _, plain := range []bool{false, true} {
			var b strings.Builder
			require.NoError(t, term.WriteBars(&b, c, term.Options{Width: width, Plain: plain}))
			fits(t, b.String(), width)
			golden.File(t, fmt.Sprintf("testdata/bars-%t-%d.txt", plain, width), b.String())
		}
	}
}

func TestAPlainTerminalGetsASCII(t *testing.T) {
	for _, s := range samples {
		for _, r := range written(t, s.of(), term.Options{Plain: true}) {
			assert.Less(t, r, rune(0x7f))
		}
	}
}

func TestAColourSaysNothingAlone(t *testing.T) {
	escape := regexp.MustCompile("\x1b\\[[0-9;]*m")
	for _, s := range samples {
		coloured := written(t, s.of(), term.Options{Colour: true})
		assert.Contains(t, coloured, "\x1b[")
		assert.Equal(t, written(t, s.of(), term.Options{}), escape.ReplaceAllString(coloured, ""))
	}
}
