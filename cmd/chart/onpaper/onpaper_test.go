package onpaper

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/chart"
	"maltwright/cmd/chart/sample"
	"maltwright/cmd/write/pdf"
	"maltwright/cmd/write/pdf/pdftest"
)

func charts() map[string]Laid {
	return map[string]Laid{"forecast": sample.Forecast(), "under way": sample.UnderWay(), "season": sample.Season(), "bed": sample.Bed(), "drivers": sample.Drivers()}
}

func written(t testing.TB, c Laid, o Options) []byte {
	t.Helper()
	var b bytes.Buffer
	lost, err := Write(&b, []Laid{c}, o)
	require.NoError(t, err)
	assert.Empty(t, lost)
	return b.Bytes()
}

func TestAChartLiesWithinItsPage(t *testing.T) {
	for name, c := range charts() {
		for _, o := range []Options{{}, {Wide: 210, Tall: 297}, {Wide: 279.4, Tall: 80}, {Wide: 90, Tall: 297}} {
			page := pdftest.Read(t, written(t, c, o))
			const slack = 1.0 // mm: half a line, and what lies below a baseline
			texts := page.Pages[0].Texts
			assert.NotEmpty(t, texts, name)
			for _, x := range texts {
				assert.True(t, x.X >= margin-slack && x.X+x.Wide <= page.Wide-margin+slack && x.Y <= page.Tall-margin+slack, "%s: %q", name, x.Words)
			}
			for _, l := range page.Pages[0].Lines {
				for i := 0; i < len(l.Dots); i += 2 {
					assert.True(t, l.Dots[i] >= margin-slack && l.Dots[i] <= page.Wide-margin+slack && l.Dots[i+1] <= page.Tall-margin+slack, name)
				}
			}
		}
	}
}

func TestNoTextOfAChartLiesOverAnother(t *testing.T) { // the widths are those of the fonts, which the layout asks for
	for name, c := range charts() {
		texts := pdftest.Read(t, written(t, c, Options{})).Pages[0].Texts
		for i, a := range texts {
			for _, b := range texts[i+1:] {
				up := 0.6 * a.Size * pdf.Point
				apart := a.X+a.Wide <= b.X+0.1 || b.X+b.Wide <= a.X+0.1 || a.Y <= b.Y-up || b.Y <= a.Y-up
				assert.True(t, apart, "%s: %q over %q", name, a.Words, b.Words)
			}
		}
	}
}

func TestLettersOfAChartCanBeRead(t *testing.T) {
	for name, c := range charts() {
		for _, x := range pdftest.Read(t, written(t, c, Options{})).Pages[0].Texts {
			assert.GreaterOrEqual(t, x.Size, 8.0, "%s: %q", name, x.Words)
		}
	}
}

func TestTwoCopiesOfAChartAreTheSameBytes(t *testing.T) {
	for name, c := range charts() {
		assert.True(t, bytes.Equal(written(t, c, Options{}), written(t, c, Options{})), name)
	}
}

func TestEachChartHasItsPage(t *testing.T) {
	var b bytes.Buffer
	_, err := Write(&b, []Laid{sample.Forecast(), sample.Bed(), sample.Drivers()}, Options{})
	require.NoError(t, err)
	d := pdftest.Read(t, b.Bytes())
	require.Len(t, d.Pages, 3)
	assert.Contains(t, d.Pages[1].All(), sample.Bed().Title)
}

func TestAFigureStandsWhereItIsPut(t *testing.T) {
	p := pdf.New(pdf.Options{})
	p.Page()
	f := Lay(p, sample.Forecast(), 100, 0)
	assert.InDelta(t, 100, f.Wide, 1e-9)
	assert.Less(t, Lay(p, sample.Forecast(), 100, 25).Tall, f.Tall)
	f.Draw(p, pdf.XY{X: 50, Y: 60})
	var b bytes.Buffer
	require.NoError(t, p.Write(&b))
	page := pdftest.Read(t, b.Bytes()).Pages[0]
	wide, tall, ok := page.Lines[0].Upright() // the paper below it
	require.True(t, ok)
	assert.InDelta(t, f.Wide, wide, 0.02)
	assert.InDelta(t, f.Tall, tall, 0.02)
	assert.InDelta(t, 50, page.Lines[0].Dots[0], 0.02)
	assert.InDelta(t, 60, page.Lines[0].Dots[1], 0.02)
}

func TestHostileTextsOfAChart(t *testing.T) {
	c := sample.Forecast()
	c.Title = strings.Repeat("麦\u202e)(\\\x00", 400)
	c.Note = append(c.Note, strings.Repeat("W", 10000))
	var b bytes.Buffer
	lost, err := Write(&b, []Laid{c}, Options{})
	require.NoError(t, err)
	assert.Contains(t, lost, "麦 (U+9EA6)")
	pdftest.Read(t, b.Bytes())
}

// Every shape has a mark, so that roles are told apart in black and white too.
func TestEveryShapeIsDrawn(t *testing.T) {
	for shape := chart.Disc; shape <= chart.Cross; shape++ {
		p := pdf.New(pdf.Options{})
		p.Page()
		canvas{paper: p, px: 0.25}.Mark(chart.XY{X: 10, Y: 10}, shape, 8, chart.Letters)
		var b bytes.Buffer
		require.NoError(t, p.Write(&b))
		assert.NotEmpty(t, pdftest.Read(t, b.Bytes()).Pages[0].Lines, shape)
	}
}
