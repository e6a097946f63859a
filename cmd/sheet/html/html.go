// Package html writes a sheet as one file that needs nothing else: on paper page by page as the PDF
// of it, on a screen as wide as that is. Whatever comes from a file is escaped.
package html

import (
	_ "embed"
	"fmt"
	"io"
	"reflect"
	"strings"

	"maltwright/cmd/sheet"
	"maltwright/cmd/words"
	"maltwright/cmd/write/fill"
)

//go:embed sheet.html
var text string

var pages = fill.New(fill.Funcs{
	"name":    func(b sheet.Block) string { return strings.ToLower(reflect.TypeOf(b).Name()) },
	"picture": picture,
	"page":    numbered,
	"values":  func(list []sheet.Box) []sheet.Box { return list[:max(0, len(list)-1)] },
	"bound":   words.Bound,
	"across":  sheet.Across,
	"last":    func(list []sheet.Box) sheet.Box { return list[len(list)-1] },
	"each":    func(n int) []struct{} { return make([]struct{}, n) },
	"mm":      func(x float64) string { return fmt.Sprintf("%.4gmm", x) },
	"pt":      func(x float64) string { return fmt.Sprintf("%.4gpt", x) },
	"form":    func() form { return measures },
	"body":    func(s sheet.Size) float64 { return s.Body() },
	"inner":   func(s sheet.Size) float64 { return s.Tall - 2*sheet.Margin - slack },
}, text)

// slack is by how much a page is lower than the paper allows, mm, so that no rounding of a browser
// begins another one.
const slack = 0.5

// form are the measures of the form by name.
type form struct {
	Margin, HeadTall, FootTall, Gap, BodyPoints, BodyLine, FinePoints, FineLine, HeadPoints, HeadLine,
	BoxTall, BoxLabel, BoxWide, TimeWide, WhenWide, TickWide, NameWide, LookTall, RowTall, LabelWide, ResultWide, ReadWide, WrongWide, Rule, SumWide, Indent float64
}

var measures = form{sheet.Margin, sheet.HeadTall, sheet.FootTall, sheet.Gap, sheet.BodyPoints, sheet.BodyLine, sheet.FinePoints, sheet.FineLine, sheet.HeadPoints, sheet.HeadLine,
	sheet.BoxTall, sheet.BoxLabel, sheet.BoxWide, sheet.TimeWide, sheet.WhenWide, sheet.TickWide, sheet.NameWide, sheet.LookTall, sheet.RowTall, sheet.LabelWide, sheet.ResultWide, sheet.ReadWide, sheet.WrongWide, sheet.Rule, sheet.SumWide, sheet.Indent}

// leaf is a page with its number.
type leaf struct {
	sheet.Page
	Sheet sheet.Sheet
	N, Of int
}

func numbered(s sheet.Sheet, i int) leaf { return leaf{s.Pages[i], s, i + 1, len(s.Pages)} }

// Write writes the sheet.
func Write(w io.Writer, s sheet.Sheet) error { return pages.Write(w, s) }

// drawing is a picture as paths, 100 units tall.
type drawing struct {
	Wide  string
	Paths []path
}

type path struct{ D, Fill, Thick string }

const tall = 100

// inks are how an area is filled.
var inks = map[sheet.Ink]string{sheet.Open: "none", sheet.White: "#fff", sheet.Black: "#000"}

func picture(d sheet.Drawn) drawing {
	p := d.Picture()
	out := drawing{Wide: number(tall * p.Wide)}
	for _, s := range p.Strokes {
		out.Paths = append(out.Paths, path{way(s), inks[s.Ink], number(tall * s.Thick)})
	}
	return out
}

// way is a stroke in the words of a path.
func way(s sheet.Stroke) string {
	var b strings.Builder
	for i, d := range s.Dots {
		switch {
		case i == 0:
			b.WriteString("M")
		case s.Curved && i%3 == 1:
			b.WriteString("C")
		case !s.Curved:
			b.WriteString("L")
		default:
			b.WriteString(" ")
		}
		b.WriteString(number(tall*d.X) + " " + number(tall*d.Y))
	}
	if s.Closed {
		b.WriteString("Z")
	}
	return b.String()
}

func number(x float64) string {
	text := strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.2f", x), "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}
