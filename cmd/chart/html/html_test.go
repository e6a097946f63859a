package html_test

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/chart"
	"maltwright/cmd/chart/html"
	"maltwright/cmd/chart/sample"
)

func page(t *testing.T, title string, charts ...html.Laid) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, html.Write(&b, title, charts...))
	return b.String()
}

func TestAPageNeedsNothingElseAndIsTheSameEachTime(t *testing.T) {
	text := page(t, "Batch 26-03", sample.UnderWay(), sample.Bed(), sample.Drivers())
	assert.Equal(t, text, page(t, "Batch 26-03", sample.UnderWay(), sample.Bed(), sample.Drivers()))
	assert.NotContains(t, strings.ReplaceAll(text, "http://www.w3.org/2000/svg", ""), "http:")
	for _, not := range []string{"https:", "<script", "<link", "@import", "url(", "src="} {
		assert.NotContains(t, text, not)
	}
	assert.Contains(t, text, `<html lang="en">`)
	assert.Contains(t, text, "@media print")
	assert.Equal(t, 6, strings.Count(text, "<svg "), "each chart as wide as a desk and as narrow as a phone")
	assert.Equal(t, 1, strings.Count(text, "<style>"))
}

func TestNoIDStandsTwiceOnAPage(t *testing.T) {
	ids := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]+)"`).FindAllStringSubmatch(page(t, "all", sample.UnderWay(), sample.Bed(), sample.Season(), sample.Drivers()), -1) {
		assert.NotContains(t, ids, m[1])
		ids[m[1]] = true
	}
	assert.Len(t, ids, 16)
}

// Who cannot see the chart reads its figures: the head of each column and row is named as such.
func TestFiguresStandInATableToo(t *testing.T) {
	text := page(t, "Batch 26-03", sample.UnderWay())
	assert.Contains(t, text, "<caption>moisture, %</caption>")
	assert.Contains(t, text, `<th scope="col">time</th><th scope="col">grain</th><th scope="col">air on</th>`)
	assert.Contains(t, text, `<tr><th scope="row">Thu 12 Mar 07:00</th><td>12.0 to 12.8</td><td>12.4</td></tr>`)
	assert.Contains(t, text, "<td>in doubt</td>")
}

func TestWhatAFileNamesIsTextAndNothingElse(t *testing.T) {
	c := sample.UnderWay()
	evil := "</style></svg><script>alert(1)</script>&\"'\u202e\x00"
	c.Title, c.Panels[0].Name, c.Panels[0].Points[0].Name, c.Panels[1].Lines[0].Name, c.Stages[0].Name = evil, evil, evil, evil, evil
	text := page(t, evil, c)
	assert.NotContains(t, text, "<script")
	assert.NotContains(t, text, "\u202e")
	assert.NotContains(t, text, "\x00")
	assert.Contains(t, text, "&lt;script&gt;")
}

// What is written by hand in the style sheet is of the scheme.
func TestThePageHasTheColoursOfItsCharts(t *testing.T) {
	known := map[string]bool{}
	for _, s := range []*chart.Scheme{chart.Light, chart.Dark, chart.Print} {
		for i := range chart.Inks {
			c := s.Of(i)
			known[fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)] = true
		}
	}
	for _, colour := range regexp.MustCompile(`#[0-9a-f]{6}`).FindAllString(string(html.Style()), -1) {
		assert.Contains(t, known, colour)
	}
}
