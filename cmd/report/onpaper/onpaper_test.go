package onpaper

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/cmd/chart/sample"
	"maltwright/cmd/report"
	"maltwright/cmd/write/pdf/pdftest"
)

// book is a report with a block of each kind, all its texts of one source.
func book(text func() string, rows int) report.Report {
	t := report.Table{Head: text(), Columns: []report.Column{{Head: text()}, {Head: "weight", Right: true}, {Head: "kg, as forecast", Right: true}, {}}, Notes: []string{text()}}
	for i := range rows {
		if i%7 == 0 {
			t.Rows = append(t.Rows, []string{text()})
		}
		t.Rows = append(t.Rows, []string{text(), fmt.Sprintf("%d.25 kg", i), text(), text()})
	}
	return report.Report{Title: text(), Letter: rows%2 == 1, Notice: []string{text(), "This is no certificate."}, Pages: []report.Page{
		{Title: text(), Sub: text(), AsOf: text(), Blocks: []report.Block{
			report.Facts{Head: text(), List: []report.Fact{{Name: text(), Value: text(), Standing: text()}, {Name: "yield"}}}, t,
			report.Text{Head: text(), Lines: []string{text(), text()}}, report.Text{Lines: []string{text(), text()}, List: true},
			report.Figure{Chart: sample.Drivers()},
			report.Found{Head: "Deviations", List: []report.Finding{{Severity: "warning", Text: text(), Do: text(), Rule: "bed-too-warm"}}}, report.Found{Head: text(), None: text()}}},
		{Title: "second"}}}
}

func written(t testing.TB, r report.Report) pdftest.Document {
	t.Helper()
	var b bytes.Buffer
	_, err := Write(&b, r)
	require.NoError(t, err)
	return pdftest.Read(t, b.Bytes())
}

// within fails where a text leaves the margins, or two texts lie over each other.
func within(t testing.TB, d pdftest.Document, apart bool) {
	t.Helper()
	const point = 25.4 / 72
	for i, page := range d.Pages {
		for k, a := range page.Texts {
			assert.True(t, a.X >= margin-0.2 && a.X+a.Wide <= d.Wide-margin+0.5 && a.Y >= margin && a.Y <= d.Tall-margin+0.1, "page %d: %q at %.1f, %.1f", i+1, a.Words, a.X, a.Y)
			for _, b := range page.Texts[k+1:] {
				if !apart {
					break
				}
				up := 0.6 * a.Size * point
				clear := a.X+a.Wide <= b.X+0.2 || b.X+b.Wide <= a.X+0.2 || a.Y <= b.Y-0.6*b.Size*point || b.Y <= a.Y-up
				assert.True(t, clear, "page %d: %q over %q", i+1, a.Words, b.Words)
			}
		}
	}
}

func TestAReportGoesOnOverPages(t *testing.T) {
	i := 0
	r := book(func() string { i++; return fmt.Sprintf("text %d of what was malted at 14 °C", i) }, 120)
	d := written(t, r)
	within(t, d, true)
	require.Greater(t, len(d.Pages), 3)
	all, heads := "", 0
	for i, page := range d.Pages {
		text := page.All()
		all += text
		heads += strings.Count(text, "weight\n")
		assert.Contains(t, text, fmt.Sprintf("page %d of %d\n", i+1, len(d.Pages)))
		assert.Contains(t, text, "This is no certificate.\n")
		assert.Contains(t, text, r.Title+"\n")
	}
	assert.GreaterOrEqual(t, heads, 3, "the heads of a table stand on each page of it")
	flat := strings.ReplaceAll(all, "\n", " ")
	for n := 1; n <= i; n++ {
		assert.Contains(t, flat, fmt.Sprintf("text %d of", n))
	}
}

func TestTwoCopiesOfAReportAreTheSameBytes(t *testing.T) {
	text := func() string { return "żółć ½" }
	var a, b bytes.Buffer
	_, err := Write(&a, book(text, 20))
	require.NoError(t, err)
	_, err = Write(&b, book(text, 20))
	require.NoError(t, err)
	assert.True(t, bytes.Equal(a.Bytes(), b.Bytes()))
}

func TestWhateverStandsInAReportStaysOnItsPage(t *testing.T) {
	letters := []rune("aaeeinrst   WM.i°½→麦\u0301\u200d\U0001f33e)(\\Жż\x00\u202e\u200b\n")
	rapid.Check(t, func(t *rapid.T) {
		some := rapid.StringOfN(rapid.RuneFrom(letters), 0, 120, -1)
		within(tb{t: t}, written(tb{t: t}, book(func() string { return some.Draw(t, "text") }, rapid.IntRange(0, 4).Draw(t, "rows"))), false)
	})
}

func TestTextsWithoutAnEnd(t *testing.T) {
	for _, text := range []string{strings.Repeat("W", 10000), strings.Repeat("麦 ", 2000), strings.Repeat("\u200d", 3000)} {
		within(t, written(t, book(func() string { return text }, 1)), false)
	}
}

func TestAnEmptyReport(t *testing.T) {
	assert.Contains(t, written(t, report.Report{Title: "nothing"}).Pages[0].All(), "nothing")
	written(t, report.Report{Pages: []report.Page{{Blocks: []report.Block{report.Table{}, report.Facts{}, report.Text{}, report.Found{}}}}})
}

func TestWhatTheFontsLackIsNamed(t *testing.T) {
	var b bytes.Buffer
	lost, err := Write(&b, report.Report{Title: "麦"})
	require.NoError(t, err)
	assert.Contains(t, lost, "麦 (U+9EA6)")
	assert.Contains(t, pdftest.Read(t, b.Bytes()).Pages[0].All(), "□ stands for a letter that this paper's fonts lack: U+9EA6\n")
}

// tb hands to rapid what a test asks of the testing package.
type tb struct {
	testing.TB
	t *rapid.T
}

func (r tb) Helper()                   {}
func (r tb) Errorf(f string, a ...any) { r.t.Errorf(f, a...) }
func (r tb) FailNow()                  { r.t.FailNow() }
