package html_test

import (
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/chart/html"
	"maltwright/cmd/chart/sample"
	"maltwright/cmd/serve/browsertest"
)

// shown is a text of a chart as the browser has drawn it, px of the chart.
type shown struct {
	Text                 string
	X, Y, Wide, High, On float64 // On is how wide the chart is
	Size                 float64
	Chart                int
}

// texts are those of the charts that can be seen. What a letter has above and below it is left out.
const texts = `[...document.querySelectorAll("svg")].filter(s => s.getClientRects().length).flatMap((s, i) => [...s.querySelectorAll("text")].map(e => {
	const b = e.getBBox(), size = parseFloat(getComputedStyle(e).fontSize)
	return {text: e.textContent, x: b.x, y: b.y + b.height / 2 - 0.4 * size, wide: b.width, high: 0.8 * size, on: s.viewBox.baseVal.width, size: size * s.getBoundingClientRect().width / s.viewBox.baseVal.width, chart: i}
}))`

// Whatever font the browser takes for ours, no two texts lie over one another, none is cut off, and none is small.
func TestInABrowserTheChartsFitTheWindowAndTheirTextsKeepClear(t *testing.T) {
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		require.NoError(t, html.Write(w, "Charts", sample.UnderWay(), sample.Bed(), sample.Season(), sample.Drivers()))
	}))
	defer server.Close()
	tab := browsertest.Open(t).Tab(t)
	for name, size := range map[string]func() *browsertest.Tab{"phone": tab.Phone, "desk": tab.Desk} {
		size().Go(server.URL)
		assert.Zero(t, tab.Sideways(), "%s: the page is wider than its window", name)
		list := browsertest.Eval[[]shown](tab, texts)
		require.Greater(t, len(list), 60, name)
		for i, a := range list {
			assert.True(t, a.X >= 0 && a.X+a.Wide <= a.On, "%s: %q is cut off", name, a.Text)
			assert.GreaterOrEqual(t, a.Size, 12.0, "%s: %q is small", name, a.Text)
			for _, b := range list[:i] {
				over := a.Chart == b.Chart && a.X < b.X+b.Wide && b.X < a.X+a.Wide && a.Y < b.Y+b.High && b.Y < a.Y+a.High
				assert.False(t, over, "%s: %q lies on %q", name, a.Text, b.Text)
			}
		}
	}
	paper := `getComputedStyle([...document.querySelectorAll("svg")].find(s => s.getClientRects().length).querySelector("path")).fill`
	assert.Equal(t, "rgb(252, 251, 247)", browsertest.Eval[string](tab, paper))
	assert.Equal(t, "rgb(26, 29, 32)", browsertest.Eval[string](tab.Dark(true), paper))
	assert.Equal(t, "rgb(255, 255, 255)", browsertest.Eval[string](tab.Print(true), paper))
	assert.False(t, browsertest.Eval[bool](tab, `document.querySelector("details").getClientRects().length > 0`), "tables are not printed")
	tab.Print(false)
	browsertest.Eval[bool](tab, `document.querySelectorAll("details").forEach(d => d.open = true), true`)
	assert.Empty(t, tab.Axe())
}
