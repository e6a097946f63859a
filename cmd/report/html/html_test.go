package html_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/chart"
	"maltwright/cmd/report"
	"maltwright/cmd/report/html"
)

// awkward is a report whose every text is markup, with a block of each kind.
func awkward() report.Report {
	const x = `<script>alert("x")</script>&`
	page := report.Page{Title: x, Sub: x, AsOf: x, Blocks: []report.Block{
		report.Facts{Head: x, List: []report.Fact{{Name: x, Value: x, Standing: x}}},
		report.Table{Head: x, Columns: []report.Column{{Head: x}, {Head: x, Right: true}}, Rows: [][]string{{x}, {x, x}}, Notes: []string{x}},
		report.Text{Head: x, Lines: []string{x}, List: true},
		report.Text{Head: x, Lines: []string{x}},
		report.Figure{Chart: chart.Chart{Title: x, Sub: x, To: 1, Panels: []chart.Panel{{Name: x, Unit: x, Lines: []chart.Line{{Name: x, At: []float64{0, 1}, Value: []float64{0, 1}}}}}, Note: []string{x}}},
		report.Found{Head: x, List: []report.Finding{{Severity: x, Text: x, Do: x, Rule: x}}},
		report.Found{Head: x, None: x},
	}}
	return report.New(x, page, page)
}

func written(t *testing.T, r report.Report) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, html.Write(&b, r))
	return b.String()
}

func TestWhateverIsSaidIsEscaped(t *testing.T) {
	out := written(t, awkward())
	assert.NotContains(t, out, "<script")
	assert.Greater(t, strings.Count(out, "&lt;script&gt;"), 30, "every text of both pages")
	assert.Equal(t, out, written(t, awkward()), "the same each time")
}

// Nothing is fetched from anywhere: the only addresses are parts of the page and the name of SVG.
func TestAReportNeedsNothingElse(t *testing.T) {
	out := written(t, awkward())
	for _, address := range regexp.MustCompile(`(?i)(?:src|href|url)\s*[=(]\s*["']?([^"'\s)>]+)`).FindAllStringSubmatch(out, -1) {
		assert.True(t, strings.HasPrefix(address[1], "#"), address[1])
	}
	assert.False(t, regexp.MustCompile(`https?:`).MatchString(strings.ReplaceAll(out, "http://www.w3.org/2000/svg", "")))
}

func TestAPartHasItsOwnSheet(t *testing.T) {
	out := written(t, awkward())
	assert.Equal(t, 2, strings.Count(out, "<article id=\"part-"))
	assert.Contains(t, out, `<a href="#part-2">`)
	assert.Contains(t, out, "break-before: page")
	assert.NotContains(t, written(t, report.New("one", report.Page{Title: "one"})), "<nav", "one part needs no list of them")
}
