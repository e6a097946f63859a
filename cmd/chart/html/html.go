// Package html writes charts as a page of HTML that needs nothing else, or as parts of one: each chart as wide as a desk and as
// narrow as a phone, of which a style sheet shows the one that fits, and its figures as a table.
package html

import (
	_ "embed"
	"io"
	"strings"

	"maltwright/cmd/chart"
	"maltwright/cmd/chart/svg"
	"maltwright/cmd/write/fill"
	"maltwright/lang/source"
)

// Laid is a chart or bars.
type Laid interface {
	svg.Laid
	Tables() []chart.Table
}

//go:embed page.html
var text string

//go:embed style.css
var style string

var pages = fill.New(nil, text)

// Widths of the two forms, px.
const (
	wide   = 860
	narrow = 358
)

// Style is the style sheet that figures ask of the page they stand in. It holds svg.Style.
func Style() fill.CSS { return fill.CSS(style + svg.Style() + "\n") }

// Figure is a chart as an element of a page, with its figures in a table below it that opens. The page holds Style.
func Figure(c Laid) (fill.HTML, error) {
	forms := make([]fill.HTML, 2)
	for i, px := range []float64{wide, narrow} {
		var b strings.Builder
		err := svg.Write(&b, c, svg.Options{Options: chart.Options{Width: px}, Paper: svg.Classes, Inline: true})
		if err != nil {
			return "", err
		}
		forms[i] = fill.HTML(b.String())
	}
	var b strings.Builder
	err := pages.WritePart(&b, "figure", map[string]any{"Wide": forms[0], "Narrow": forms[1], "Tables": c.Tables()})
	return fill.HTML(b.String()), err
}

// Write writes a page of charts.
func Write(w io.Writer, title string, charts ...Laid) error {
	figures := make([]fill.HTML, len(charts))
	for i, c := range charts {
		var err error
		if figures[i], err = Figure(c); err != nil {
			return err
		}
	}
	return pages.WritePart(w, "page", map[string]any{"Title": source.Safe(title), "Style": Style(), "Figures": figures})
}
