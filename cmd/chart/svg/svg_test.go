package svg_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/chart"
	"maltwright/cmd/chart/sample"
	"maltwright/cmd/chart/svg"
	"maltwright/lang/source/golden"
)

var all = map[string]svg.Laid{"forecast": sample.Forecast(), "underway": sample.UnderWay(), "season": sample.Season(), "bed": sample.Bed(), "drivers": sample.Drivers()}

func written(t *testing.T, c svg.Laid, o svg.Options) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, svg.Write(&b, c, o))
	return b.String()
}

func width(px float64) svg.Options { return svg.Options{Options: chart.Options{Width: px}} }

// elements reads a file as XML, and gives each element with its text.
func elements(t *testing.T, text string) (list []xml.StartElement, texts []string) {
	t.Helper()
	for d := xml.NewDecoder(strings.NewReader(text)); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return list, texts
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			list, texts = append(list, token.Copy()), append(texts, "")
		case xml.CharData:
			if len(texts) > 0 {
				texts[len(texts)-1] += string(token)
			}
		}
	}
}

func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func TestAChartIsAnImageWithANameAndASayingOfWhatItShows(t *testing.T) {
	for name, c := range all {
		list, texts := elements(t, written(t, c, svg.Options{}))
		root := list[0]
		assert.Equal(t, "svg", root.Name.Local, name)
		assert.Equal(t, "img", attribute(root, "role"), name)
		by := strings.Fields(attribute(root, "aria-labelledby"))
		require.Len(t, by, 2, name)
		assert.Equal(t, []string{"title", "desc"}, []string{list[1].Name.Local, list[2].Name.Local}, name)
		assert.Equal(t, by, []string{attribute(list[1], "id"), attribute(list[2], "id")}, name)
		assert.NotEmpty(t, strings.TrimSpace(texts[1]), name)
		assert.Greater(t, len(texts[2]), 60, name)
	}
}

// number is one of an attribute.
var number = regexp.MustCompile(`-?\d+(\.\d+)?(e[-+]?\d+)?`)

func TestAFileNeedsNothingElseAndHasNoMoreDecimalsThanASheet(t *testing.T) {
	for name, c := range all {
		for _, px := range []float64{390, 900} {
			text := written(t, c, width(px))
			list, _ := elements(t, text)
			for _, e := range list {
				assert.Contains(t, []string{"svg", "title", "desc", "style", "path", "polyline", "polygon", "circle", "text"}, e.Name.Local, name)
				for _, a := range e.Attr {
					if a.Name.Local == "class" || a.Name.Local == "id" || a.Name.Local == "aria-labelledby" || strings.HasPrefix(a.Value, "#") {
						continue
					}
					assert.NotContains(t, a.Value, "url(", name)
					assert.False(t, strings.HasPrefix(a.Name.Local, "on"), a.Name.Local)
					for _, n := range number.FindAllStringSubmatch(a.Value, -1) {
						assert.LessOrEqual(t, len(n[1]), 3, "%s: %s of %s", name, a.Name.Local, e.Name.Local)
						assert.Empty(t, n[2], "%s: %s", name, a.Value)
					}
				}
				if size := attribute(e, "font-size"); size != "" {
					px, err := strconv.ParseFloat(size, 64)
					require.NoError(t, err)
					assert.GreaterOrEqual(t, px, 12.0, name)
				}
			}
			assert.NotContains(t, strings.ReplaceAll(text, "http://www.w3.org/2000/svg", ""), "http", name)
			assert.Equal(t, text, written(t, c, width(px)), "%s is written twice", name)
			assert.Contains(t, text, `width="`+strconv.FormatFloat(px, 'f', -1, 64)+`"`, name)
		}
	}
}

func TestWhatAFileNamesIsTextAndNothingElse(t *testing.T) {
	c := sample.UnderWay()
	evil := "<script>alert(1)</script> ]]> & \"'\u202e\x00\xff --> </svg>"
	c.Title, c.Sub, c.Note = evil, evil, []string{evil}
	c.Panels[0].Name, c.Panels[0].Unit = evil, evil
	c.Panels[0].Bands[0].Name, c.Panels[0].Gates[0].Name, c.Stages[1].Name = evil, evil, evil
	c.Panels[1].Lines[0].Name = evil
	text := written(t, c, svg.Options{})
	list, texts := elements(t, text)
	for _, e := range list {
		assert.NotEqual(t, "script", e.Name.Local)
	}
	assert.NotContains(t, text, "\u202e")
	assert.Equal(t, `<script>alert(1)</script> ]]> & "'<U+202E><U+0000><byte 0xFF> --> </svg>`, strings.TrimSpace(texts[1]))
}

func TestAPageThatHoldsTwoChartsHasNoIDTwice(t *testing.T) {
	ids := map[string]bool{}
	for _, c := range all {
		list, _ := elements(t, written(t, c, svg.Options{Inline: true}))
		for _, e := range list {
			if id := attribute(e, "id"); id != "" {
				assert.NotContains(t, ids, id)
				ids[id] = true
			}
		}
	}
}

func TestDarkIsAStyleThatOnlyAScreenHas(t *testing.T) {
	both := written(t, sample.Drivers(), svg.Options{})
	assert.Contains(t, both, "<style>"+svg.Style()+"</style>")
	assert.True(t, strings.HasPrefix(svg.Style(), "@media screen and (prefers-color-scheme:dark){"))
	for _, class := range regexp.MustCompile(`mwc-[fs]\d+`).FindAllString(both, -1) {
		assert.Contains(t, svg.Style(), "."+class+"{")
	}
	printed := written(t, sample.Drivers(), svg.Options{Paper: svg.Print})
	assert.NotContains(t, printed, "<style>")
	assert.NotContains(t, printed, "class=")
	classes := written(t, sample.Drivers(), svg.Options{Paper: svg.Classes, Inline: true})
	assert.NotContains(t, classes, "<style>")
	assert.Contains(t, classes, "class=")
	assert.True(t, strings.HasPrefix(classes, "<svg "))
}

// A line of 50 000 points takes two points a px at most: of 900 px, some 12 bytes each.
func TestAChartOfVeryManyPointsStaysSmall(t *testing.T) {
	var l chart.Line
	for i := range 50_000 {
		l.At, l.Value = append(l.At, 10*float64(i)), append(l.Value, 20+10*math.Sin(float64(i*i)))
	}
	c := chart.Chart{Title: "many", To: 500_000, Panels: []chart.Panel{{Name: "x", Lines: []chart.Line{l}}}}
	assert.Less(t, len(written(t, c, svg.Options{})), 2*900*12+6000)
}

func TestChartsLookAsTheyDid(t *testing.T) {
	golden.File(t, "testdata/underway-390.svg", written(t, sample.UnderWay(), width(390)))
	golden.File(t, "testdata/drivers-900.svg", written(t, sample.Drivers(), svg.Options{Paper: svg.Print}))
}

// BenchmarkChart writes a chart of a line of 2 000 points with its band.
func BenchmarkChart(b *testing.B) {
	var band chart.Band
	for i := range 2000 {
		y := 40 + 5*math.Sin(float64(i)/90)
		band.At, band.Low, band.Middle, band.High = append(band.At, 300*float64(i)), append(band.Low, y-2), append(band.Middle, y), append(band.High, y+2)
	}
	c := sample.Forecast()
	c.Panels = []chart.Panel{{Name: "moisture", Unit: "%", Places: 1, Bands: []chart.Band{band}, Gates: c.Panels[0].Gates}}
	for b.Loop() {
		if err := svg.Write(io.Discard, c, svg.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkField writes the bed of a kiln.
func BenchmarkField(b *testing.B) {
	for b.Loop() {
		if err := svg.Write(io.Discard, sample.Bed(), svg.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
