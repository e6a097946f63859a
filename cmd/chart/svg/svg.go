// Package svg writes charts as SVG: one file or element that needs nothing else, light on light paper and dark on dark, with text as
// text and with what it shows in words. It holds no script and no font, and the same chart gives the same bytes.
package svg

import (
	"bufio"
	"fmt"
	"hash/fnv"
	"io"
	"strings"

	"maltwright/cmd/chart"
)

// Laid is what can be laid out: a chart, or bars.
type Laid interface {
	Lay(chart.Options, chart.Measure) *chart.Drawing
}

// Paper is what the drawing is for.
type Paper int

const (
	// Both are light paper and dark, as whoever looks at it prefers; what is printed is light.
	Both Paper = iota
	// Print is white paper.
	Print
	// Classes has the colours of light paper, and leaves those of dark to the style sheet of the page that it
	// is put into, which holds Style: for pages that allow no style within an element.
	Classes
)

// Options say how a chart is written; the zero value is a file of its own for a desk.
type Options struct {
	chart.Options
	Paper  Paper
	Inline bool // an element for a page of HTML: without the declaration of a file of its own
}

// Write writes a chart.
func Write(w io.Writer, c Laid, o Options) error {
	d := c.Lay(o.Options, chart.Sans{})
	p := &pencil{scheme: chart.Light, classes: o.Paper != Print}
	if o.Paper == Print {
		p.scheme = chart.Print
	}
	d.Draw(p)
	p.flush()
	b := bufio.NewWriter(w)
	if !o.Inline {
		b.WriteString("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n")
	}
	id := name(d)
	wide, high := number(d.Width), number(d.Height)
	fmt.Fprintf(b, `<svg xmlns="http://www.w3.org/2000/svg" width="%s" height="%s" viewBox="0 0 %s %s" role="img" aria-labelledby="%s-t %s-d" font-family="%s">`+"\n",
		wide, high, wide, high, id, id, family)
	fmt.Fprintf(b, "<title id=\"%s-t\">%s</title>\n<desc id=\"%s-d\">%s</desc>\n", id, escaped(d.Title), id, escaped(d.Says))
	if o.Paper == Both {
		fmt.Fprintf(b, "<style>%s</style>\n", Style())
	}
	b.WriteString(p.String())
	b.WriteString("</svg>\n")
	return b.Flush()
}

// family is a plain sans-serif font that the reader has.
const family = "Helvetica Neue, Helvetica, Arial, Liberation Sans, sans-serif"

// name is an id made of what the chart says, so that those of two charts on one page are not the same.
func name(d *chart.Drawing) string {
	h := fnv.New64a()
	fmt.Fprintf(h, "%q %q %g", d.Title, d.Says, d.Width)
	return fmt.Sprintf("mwc%x", h.Sum64())
}

// Style is the style sheet by which charts are dark where dark is preferred, on a screen, and on white paper where they are printed.
func Style() string {
	return "@media screen and (prefers-color-scheme:dark){" + rules(chart.Dark) + "}@media print{" + rules(chart.Print) + "}"
}

// rules give the colours of a scheme that are not those of light paper.
func rules(s *chart.Scheme) string {
	var b strings.Builder
	for i := range chart.Inks {
		if c := colour(s, i); c != colour(chart.Light, i) {
			fmt.Fprintf(&b, ".mwc-f%d{fill:%s}.mwc-s%d{stroke:%s}", i, c, i, c)
		}
	}
	return b.String()
}

func colour(s *chart.Scheme, i chart.Ink) string {
	c := s.Of(i)
	return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
}
