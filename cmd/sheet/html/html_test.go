package html_test

import (
	"bytes"
	"fmt"
	stdhtml "html"
	"net/http"
	"net/http/httptest"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/answer/sample"
	"maltwright/cmd/serve/browsertest"
	"maltwright/cmd/sheet"
	"maltwright/cmd/sheet/html"
	"maltwright/lang/source/golden"
)

func of(t *testing.T, name string, size sheet.Size) sheet.Sheet {
	t.Helper()
	s, err := sheet.Of(sample.Forecast(t, name), sheet.Options{Start: time.Date(2026, 3, 6, 7, 0, 0, 0, time.UTC), Size: size, Begin: "maltwright begin pale.malt"})
	require.NoError(t, err)
	return s
}

func written(t *testing.T, s sheet.Sheet) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, html.Write(&b, s))
	return b.String()
}

// plain is a page as one reads it: without its marks, each run of blanks as one.
func plain(page string) string {
	text := stdhtml.UnescapeString(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(page, " "))
	return strings.Join(strings.Fields(text), " ")
}

// All that stands on a sheet is written, page by page and in its order.
func TestAllOfASheetIsWritten(t *testing.T) {
	s := of(t, "pale.malt", sheet.Size{})
	text := plain(written(t, s))
	next := func(want string) {
		want = strings.Join(strings.Fields(want), " ")
		_, behind, found := strings.Cut(text, want)
		require.True(t, found, "%q is missing, or out of its order", want)
		text = behind
	}
	for _, p := range s.Pages {
		next(p.Of)
		for _, b := range p.Blocks {
			if v, is := b.(sheet.Visit); is {
				next(v.When.Clock)
				for _, x := range append(v.Do, v.Expect...) {
					next(x)
				}
			}
			if g, is := b.(sheet.GoesWrong); is {
				for _, r := range g.Rows {
					next(r.What)
					next(r.Do)
				}
			}
		}
	}
	text = plain(written(t, s))
	for _, want := range []string{fmt.Sprintf("Loft pale steep 1 of %d", len(s.Pages)), "maltwright begin pale.malt"} {
		assert.True(t, strings.Contains(text, want), want)
	}
}

// A kind of block that the page does not know would be left out in silence.
func TestEveryKindOfBlockIsWritten(t *testing.T) {
	const word = "unmistakable"
	box := []sheet.Box{{Label: word}, {Label: word}}
	drawn := []sheet.Drawn{{Look: sheet.Half, Name: word}}
	for _, b := range []sheet.Block{
		sheet.Head{Fields: []sheet.Field{{Label: word}}}, sheet.Heading{Text: word}, sheet.Words{Text: word}, sheet.Sums{Rows: []sheet.Sum{{Label: word}}},
		sheet.Visit{Do: []string{word}, Boxes: box}, sheet.Readings{Rows: []sheet.Reading{{Line: word}}}, sheet.SpareRows{Count: 1, Boxes: box},
		sheet.Drawing{Shown: drawn}, sheet.Tally{Title: word, Classes: drawn}, sheet.Ticks{Title: word}, sheet.Gate{Asks: word, Boxes: box},
		sheet.SampleSum{Title: word}, sheet.Cautions{Title: word}, sheet.GoesWrong{Title: word}, sheet.Code{Line: word},
	} {
		assert.Contains(t, plain(written(t, sheet.Sheet{Size: sheet.A4, Pages: []sheet.Page{{Blocks: []sheet.Block{b}}}})), word, "%T", b)
	}
	last := written(t, sheet.Sheet{Size: sheet.A4, Pages: []sheet.Page{{Blocks: []sheet.Block{sheet.Remarks{Lines: 3}, sheet.Initials{Count: 5}}}}})
	assert.Equal(t, 3, strings.Count(last, `<div class="line">`))
	assert.Equal(t, 5, strings.Count(last, `<span class="line">`))
}

func TestAPageNeedsNothingElse(t *testing.T) {
	page := written(t, of(t, "pale.malt", sheet.Size{}))
	for _, not := range []string{"http:", "https:", "src=", "href=", "url(", "@import", "<script", "<link", "style="} {
		assert.NotContains(t, page, not)
	}
	assert.Equal(t, page, written(t, of(t, "pale.malt", sheet.Size{})), "the same sheet is the same bytes")
	assert.NotContains(t, page, "ZgotmplZ")
}

func TestWhatAFileHoldsIsEscaped(t *testing.T) {
	const evil = `</style><script>alert(1)</script>"'&`
	box := []sheet.Box{{Label: evil, Unit: evil, Filled: evil}, {Label: evil}}
	drawn := []sheet.Drawn{{Look: sheet.Half, Name: evil}}
	page := written(t, sheet.Sheet{Title: evil, Batch: evil, Code: evil, Size: sheet.A4, Pages: []sheet.Page{{Of: evil, Blocks: []sheet.Block{
		sheet.Head{Fields: []sheet.Field{{Label: evil, Text: evil}}}, sheet.Heading{Text: evil}, sheet.Words{Text: evil}, sheet.Sums{Rows: []sheet.Sum{{Label: evil, Working: evil, Result: evil}}},
		sheet.Visit{When: sheet.When{Day: evil, Clock: evil, After: evil, Mark: evil}, Do: []string{evil}, Expect: []string{evil}, Boxes: box}, sheet.Readings{Rows: []sheet.Reading{{When: evil, Line: evil}}},
		sheet.SpareRows{Count: 1, Boxes: box}, sheet.Drawing{Say: evil, Shown: drawn}, sheet.Tally{Title: evil, Say: evil, Classes: drawn, Ticks: 1, Line: evil},
		sheet.Ticks{Title: evil, Say: evil, Answers: []string{evil}, Rows: 1}, sheet.Gate{Asks: evil, Looks: []string{evil}, Boxes: box},
		sheet.SampleSum{Title: evil, Steps: []string{evil}, Boxes: box, Sum: evil, Line: evil}, sheet.Cautions{Title: evil, Lines: []string{evil}},
		sheet.GoesWrong{Title: evil, Rows: []sheet.Wrong{{What: evil, Do: evil}}, Small: evil}, sheet.Code{Say: evil, Line: evil}}}}})
	assert.NotContains(t, page, "<script")
	assert.Equal(t, 1, strings.Count(page, "</style>"))
	assert.Greater(t, strings.Count(page, "&lt;script&gt;"), 30)
}

// overfull are the pages of which something is cut off on paper, and by how much.
const overfull = `(() => { document.body.style.width = getComputedStyle(document.documentElement).getPropertyValue("--body");
	return [...document.querySelectorAll(".page")].filter(p => p.scrollHeight > p.clientHeight || p.scrollWidth > p.clientWidth + 1)
	.map(p => p.getAttribute("aria-label") + ": " + (p.scrollHeight - p.clientHeight) + ", " + (p.scrollWidth - p.clientWidth)) })()`

// In a browser the sheet has the pages that it says, nothing of them is cut off, and on a phone nothing
// is wider than the screen.
func TestABrowserPrintsThePagesThatASheetHas(t *testing.T) {
	b := browsertest.Open(t)
	some := map[string]sheet.Size{"home/porch.malt": sheet.Letter}
	if golden.Long() {
		some["pale.malt"], some["munich.malt"], some["wheat.malt"] = sheet.A4, sheet.Letter, sheet.A4
	}
	for name, size := range some {
		t.Run(name, func(t *testing.T) { printed(t, b, of(t, name, size)) })
	}
	t.Run("blank", func(t *testing.T) { printed(t, b, sheet.Blank(sheet.EitherUnits(), sheet.A4, "maltwright begin ____")) })
}

func printed(t *testing.T, b *browsertest.Browser, s sheet.Sheet) {
	page := written(t, s)
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { _, _ = w.Write([]byte(page)) }))
	defer server.Close()
	tab := b.Tab(t)
	tab.Go(server.URL)
	assert.Len(t, regexp.MustCompile(`/Type /Page\b`).FindAll(tab.PDF(), -1), len(s.Pages))
	assert.LessOrEqual(t, tab.Phone().Sideways(), 0)
	assert.Empty(t, browsertest.Eval[[]string](tab.Desk().Print(true), overfull))
	assert.Empty(t, tab.Said())
}

func TestAScreenReaderReadsTheSheet(t *testing.T) {
	page := written(t, of(t, "pale.malt", sheet.Size{}))
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { _, _ = w.Write([]byte(page)) }))
	defer server.Close()
	tab := browsertest.Open(t).Tab(t)
	tab.Go(server.URL)
	assert.Empty(t, tab.Axe())
}
