package svg

import (
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
	"strings"

	"maltwright/cmd/chart"
	"maltwright/lang/source"
)

// pencil is a canvas that writes elements. Boxes of one colour that follow one another are one path.
type pencil struct {
	chart.Sans
	strings.Builder
	scheme  *chart.Scheme
	classes bool
	boxes   strings.Builder // of the path that is being written
	fill    chart.Fill
}

func (p *pencil) flush() {
	if p.boxes.Len() > 0 {
		fmt.Fprintf(p, "<path d=\"%s\"%s shape-rendering=\"crispEdges\"/>\n", p.boxes.String(), p.filled(p.fill))
		p.boxes.Reset()
	}
}

// filled gives the attributes of a filled shape.
func (p *pencil) filled(f chart.Fill) string {
	text := p.ink("fill", f.Ink)
	if f.Share > 0 && f.Share < 1 {
		text += fmt.Sprintf(" fill-opacity=\"%s\"", number(f.Share))
	}
	return text
}

// ink gives the colour of a fill or a stroke: that of light paper, and the class by which a style sheet gives another.
func (p *pencil) ink(of string, i chart.Ink) string {
	text := fmt.Sprintf(" %s=\"%s\"", of, colour(p.scheme, i))
	if p.classes {
		text += fmt.Sprintf(" class=\"mwc-%c%d\"", of[0], i)
	}
	return text
}

func (p *pencil) stroke(pen chart.Pen) string {
	text := fmt.Sprintf(" fill=\"none\"%s stroke-width=\"%s\"", p.ink("stroke", pen.Ink), number(pen.Width))
	if len(pen.Dash) > 0 {
		list := make([]string, len(pen.Dash))
		for i, d := range pen.Dash {
			list[i] = number(d)
		}
		text += fmt.Sprintf(" stroke-dasharray=\"%s\"", strings.Join(list, " "))
	}
	return text
}

// Box fills an upright rectangle.
func (p *pencil) Box(at chart.XY, width, height float64, f chart.Fill) {
	if f != p.fill {
		p.flush()
		p.fill = f
	}
	fmt.Fprintf(&p.boxes, "M%s %sh%sv%sh-%sz", number(at.X), number(at.Y), number(width), number(height), number(width))
}

// Polyline draws an open line.
func (p *pencil) Polyline(points []chart.XY, pen chart.Pen) {
	p.flush()
	join := ""
	if len(points) > 2 {
		join = " stroke-linejoin=\"round\""
	}
	fmt.Fprintf(p, "<polyline points=\"%s\"%s%s/>\n", list(points), p.stroke(pen), join)
}

// Area fills a closed line.
func (p *pencil) Area(corners []chart.XY, f chart.Fill) {
	p.flush()
	fmt.Fprintf(p, "<polygon points=\"%s\"%s/>\n", list(corners), p.filled(f))
}

// Mark draws a shape.
func (p *pencil) Mark(at chart.XY, shape chart.Shape, size float64, ink chart.Ink) {
	p.flush()
	line := chart.Pen{Ink: ink, Width: 1.5}
	switch shape {
	case chart.Disc:
		fmt.Fprintf(p, "<circle cx=\"%s\" cy=\"%s\" r=\"%s\"%s/>\n", number(at.X), number(at.Y), number(size/2), p.filled(chart.Fill{Ink: ink}))
	case chart.Ring:
		fmt.Fprintf(p, "<circle cx=\"%s\" cy=\"%s\" r=\"%s\"%s/>\n", number(at.X), number(at.Y), number(size/2), p.stroke(line))
	case chart.Cross:
		c := shape.Corners(at, size)
		p.Polyline(c[:2], line)
		p.Polyline(c[2:], line)
	default:
		p.Area(shape.Corners(at, size), chart.Fill{Ink: ink})
	}
}

var anchors = map[chart.Align]string{chart.AtMiddle: "middle", chart.AtEnd: "end"}

// Text writes a line of text; its halo is a stroke of paper below its letters.
func (p *pencil) Text(at chart.XY, text string, l chart.Lettering) {
	p.flush()
	how := fmt.Sprintf(" x=\"%s\" y=\"%s\" font-size=\"%s\"", number(at.X), number(at.Y), number(l.Size))
	if l.Bold {
		how += " font-weight=\"bold\""
	}
	if a := anchors[l.Align]; a != "" {
		how += fmt.Sprintf(" text-anchor=\"%s\"", a)
	}
	if l.Halo {
		how += fmt.Sprintf(" paint-order=\"stroke\" stroke-linejoin=\"round\" stroke-width=\"4\" stroke=\"%s\"", colour(p.scheme, chart.Paper))
		if p.classes {
			fmt.Fprintf(p, "<text%s fill=\"%s\" class=\"mwc-f%d mwc-s%d\">%s</text>\n", how, colour(p.scheme, l.Ink), l.Ink, chart.Paper, escaped(text))
			return
		}
	}
	fmt.Fprintf(p, "<text%s%s>%s</text>\n", how, p.ink("fill", l.Ink), escaped(text))
}

// escaped is a text as it may stand in XML, with what acts on those who read it written out.
func escaped(text string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(source.Safe(text))) // a builder takes all
	return b.String()
}

// number writes a length with two decimals at most.
func number(x float64) string {
	if x = math.Round(100*x) / 100; x == 0 {
		return "0"
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

func list(points []chart.XY) string {
	var b strings.Builder
	for i, q := range points {
		if i > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(tenth(q.X) + "," + tenth(q.Y))
	}
	return b.String()
}

// tenth writes a coordinate of a line to a tenth of a px, which nobody sees more of.
func tenth(x float64) string { return number(math.Round(10*x) / 10) }
