package chart_test

import (
	"math"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"maltwright/cmd/chart"
)

var (
	zones = []string{"UTC", "Europe/Berlin", "Australia/Lord_Howe", "Asia/Kathmandu", "America/New_York"}
	names = rapid.OneOf(
		rapid.SampledFrom([]string{"", "grain", "air on", "moisture", "ברכה", "Ziarno słodowane po zalaniu wodą w pierwszej kadzi numer dwa", "麦芽の水分", "a\u202eb\tc\x00", "\xff\xfe", "👩‍🌾 & <b>\"'"}),
		rapid.StringN(0, 30, 90))
	figures = rapid.OneOf(rapid.Float64Range(-50, 120), rapid.Float64Range(0, 1e-3),
		rapid.SampledFrom([]float64{0, 12, 12, 45, 1e6, math.NaN(), math.Inf(1), math.Inf(-1)}), rapid.Float64())
	when = rapid.OneOf(rapid.Float64Range(-86400, 40*86400), rapid.SampledFrom([]float64{0, 3600, 86400, 7 * 86400, math.NaN(), math.Inf(1)}), rapid.Float64())
	role = rapid.Custom(func(t *rapid.T) chart.Role { return chart.Role(rapid.IntRange(-2, 20).Draw(t, "role")) })
)

func some(t *rapid.T, of *rapid.Generator[float64], what string) []float64 {
	return rapid.SliceOfN(of, 0, 20).Draw(t, what)
}

// moments are mostly in order.
func moments(t *rapid.T) []float64 {
	list := some(t, when, "at")
	if rapid.IntRange(0, 9).Draw(t, "in order") > 0 {
		slices.Sort(list)
	}
	return list
}

var (
	spans = rapid.Custom(func(t *rapid.T) chart.Span {
		return chart.Span{From: when.Draw(t, "from"), To: when.Draw(t, "to"), Name: names.Draw(t, "name")}
	})
	lines = rapid.Custom(func(t *rapid.T) chart.Line {
		return chart.Line{Name: names.Draw(t, "name"), Role: role.Draw(t, "role"), At: moments(t), Value: some(t, figures, "value"), Step: rapid.Bool().Draw(t, "step")}
	})
	bands = rapid.Custom(func(t *rapid.T) chart.Band {
		return chart.Band{Name: names.Draw(t, "name"), Role: role.Draw(t, "role"), At: moments(t), Low: some(t, figures, "low"), Middle: some(t, figures, "middle"), High: some(t, figures, "high")}
	})
	points = rapid.Custom(func(t *rapid.T) chart.Point {
		return chart.Point{At: when.Draw(t, "at"), Value: figures.Draw(t, "value"), Error: figures.Draw(t, "error"), Doubted: rapid.Bool().Draw(t, "doubted"), Name: names.Draw(t, "name"), Role: role.Draw(t, "role")}
	})
	gates = rapid.Custom(func(t *rapid.T) chart.Gate {
		return chart.Gate{Value: figures.Draw(t, "value"), From: when.Draw(t, "from"), To: when.Draw(t, "to"), Name: names.Draw(t, "name")}
	})
	fields = rapid.Custom(func(t *rapid.T) *chart.Field {
		f := &chart.Field{Name: names.Draw(t, "name"), Unit: "%", Places: rapid.IntRange(-1, 3).Draw(t, "places"), At: moments(t), Depth: some(t, figures, "depth"), Low: figures.Draw(t, "low"), High: figures.Draw(t, "high")}
		slices.Sort(f.Depth)
		f.Value = rapid.SliceOfN(rapid.SliceOfN(figures, 0, 20), 0, 20).Draw(t, "field")
		return f
	})
	panels = rapid.Custom(func(t *rapid.T) chart.Panel {
		p := chart.Panel{Name: names.Draw(t, "name"), Unit: rapid.SampledFrom([]string{"", "%", "°F", "kg"}).Draw(t, "unit"), Places: rapid.IntRange(-1, 4).Draw(t, "places"),
			Least: figures.Draw(t, "least"), Most: figures.Draw(t, "most"), Tall: figures.Draw(t, "tall"),
			Lines: rapid.SliceOfN(lines, 0, 9).Draw(t, "lines"), Bands: rapid.SliceOfN(bands, 0, 3).Draw(t, "bands"),
			Points: rapid.SliceOfN(points, 0, 9).Draw(t, "points"), Gates: rapid.SliceOfN(gates, 0, 4).Draw(t, "gates")}
		if rapid.IntRange(0, 4).Draw(t, "is a field") == 0 {
			p.Field = fields.Draw(t, "field")
		}
		return p
	})
	charts = rapid.Custom(func(t *rapid.T) chart.Chart {
		c := chart.Chart{Title: names.Draw(t, "title"), Sub: names.Draw(t, "sub"), Since: names.Draw(t, "since"), From: when.Draw(t, "from"), To: when.Draw(t, "to"),
			Nights: rapid.SliceOfN(spans, 0, 9).Draw(t, "nights"), Stages: rapid.SliceOfN(spans, 0, 6).Draw(t, "stages"),
			Panels: rapid.SliceOfN(panels, 0, 3).Draw(t, "panels"), Note: rapid.SliceOfN(names, 0, 3).Draw(t, "note")}
		if rapid.Bool().Draw(t, "by the clock") {
			zone, err := time.LoadLocation(rapid.SampledFrom(zones).Draw(t, "zone"))
			if err != nil {
				zone = time.UTC
			}
			c.Start = time.Unix(rapid.Int64Range(1e9, 2e9).Draw(t, "start"), 0).In(zone)
		}
		if rapid.Bool().Draw(t, "under way") {
			now := when.Draw(t, "now")
			c.Now = &now
		}
		return c
	})
	options = rapid.Custom(func(t *rapid.T) chart.Options {
		return chart.Options{Width: rapid.SampledFrom([]float64{0, 280, 390, 620, 900, 1600, math.NaN()}).Draw(t, "width"),
			Letters: rapid.SampledFrom([]float64{0, 12, 14, 18, 60, math.NaN()}).Draw(t, "letters"), Panel: rapid.SampledFrom([]float64{0, 100, 300}).Draw(t, "panel")}
	})
)

func TestNoTwoTextsOfAnyChartLieOverOneAnotherAndAllLiesOnTheSheet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, o := charts.Draw(t, "chart"), options.Draw(t, "options")
		d := c.Lay(o, chart.Sans{})
		r := drawn(d)
		assert.Empty(t, trouble(d, r))
		assert.Equal(t, r.all, drawn(c.Lay(o, chart.Sans{})).all, "drawn a second time")
	})
}

func TestNoTwoTextsOfAnyBarsLieOverOneAnotherAndAllLiesOnTheSheet(t *testing.T) {
	bar := rapid.Custom(func(t *rapid.T) chart.Bar {
		return chart.Bar{Name: names.Draw(t, "name"), Value: figures.Draw(t, "value"), Error: figures.Draw(t, "error"), Text: names.Draw(t, "text"), Role: role.Draw(t, "role")}
	})
	group := rapid.Custom(func(t *rapid.T) chart.BarGroup {
		return chart.BarGroup{Name: names.Draw(t, "name"), Unit: "%", Places: rapid.IntRange(-1, 3).Draw(t, "places"), Most: figures.Draw(t, "most"), Bars: rapid.SliceOfN(bar, 0, 8).Draw(t, "bars")}
	})
	rapid.Check(t, func(t *rapid.T) {
		b := chart.Bars{Title: names.Draw(t, "title"), Sub: names.Draw(t, "sub"), Groups: rapid.SliceOfN(group, 0, 3).Draw(t, "groups"), Note: rapid.SliceOfN(names, 0, 2).Draw(t, "note")}
		d := b.Lay(options.Draw(t, "options"), chart.Sans{})
		assert.Empty(t, trouble(d, drawn(d)))
	})
}
