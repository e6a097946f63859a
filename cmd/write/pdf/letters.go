package pdf

import (
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/words"
)

const family = "go"

// Font is how letters look.
type Font struct {
	Size float64 // points, 1/72 inch
	Bold bool
	Ink  RGB
}

// Align is which end of a text its place is.
type Align int

// The aligns.
const (
	Left Align = iota // the text begins there
	Middle
	Right // it ends there
)

// Point is how long a point is, mm.
const Point = 25.4 / 72

// Rise is how far capitals stand above the baseline, mm.
func (f Font) Rise() float64 { return 0.72 * f.Size * Point }

func (f Font) style() string {
	if f.Bold {
		return "B"
	}
	return ""
}

// Text writes a line, its baseline at a place.
func (p *Paper) Text(at XY, text string, f Font, a Align) {
	text = p.legible(text)
	if text == "" || !finite(at.X, at.Y, f.Size) {
		return
	}
	switch wide := p.width(text, f); a {
	case Middle:
		at.X -= wide / 2
	case Right:
		at.X -= wide
	}
	p.file.SetFont(family, f.style(), f.Size)
	p.file.SetTextColor(int(f.Ink.R), int(f.Ink.G), int(f.Ink.B))
	p.file.Text(at.X, at.Y, text)
}

// Width is how wide a line is, mm.
func (p *Paper) Width(text string, f Font) float64 { return p.width(p.shown(text), f) }

// width is that of letters which the fonts have. Each letter is asked for once, since to
// choose a font writes into the page.
func (p *Paper) width(text string, f Font) float64 {
	known, sum := p.advance[f.style()], 0
	for _, r := range text {
		w, ok := known[r]
		if !ok {
			p.file.SetFont(family, f.style(), f.Size)
			w = p.file.GetStringSymbolWidth(string(r))
			known[r] = w
		}
		sum += w
	}
	return float64(sum) / 1000 * f.Size * Point
}

// Wrap breaks a text into lines no wider than so many mm, between words; a word that is
// wider is broken within. A number is not parted from its unit.
func (p *Paper) Wrap(text string, f Font, wide float64) []string {
	var lines []string
	line, used, blank := "", 0.0, p.width(" ", f)
	for _, word := range words.Glued(blanks(text)) {
		w := p.Width(word, f)
		if line != "" && used+blank+w > wide {
			lines, line, used = append(lines, line), "", 0
		}
		if w > wide {
			parts := p.broken(word, f, wide)
			lines, word = append(lines, parts[:len(parts)-1]...), parts[len(parts)-1]
			w = p.Width(word, f)
		}
		if line != "" {
			line, used = line+" ", used+blank
		}
		line, used = line+word, used+w
	}
	if line == "" {
		return lines
	}
	return append(lines, line)
}

// blanks are the words between blanks, tabs and ends of lines; what acts is written out.
func blanks(text string) []string {
	plain := strings.NewReplacer("\t", " ", "\r\n", " ", "\n", " ").Replace(text)
	return strings.FieldsFunc(words.Safe(plain), func(r rune) bool { return r == ' ' })
}

// broken is a word in parts that fit, of one letter at least.
func (p *Paper) broken(word string, f Font, wide float64) []string {
	var parts []string
	from, used := 0, 0.0
	g := uniseg.NewGraphemes(word)
	for g.Next() {
		w := p.Width(g.Str(), f)
		at, _ := g.Positions()
		if at > from && used+w > wide {
			parts, from, used = append(parts, word[from:at]), at, 0
		}
		used += w
	}
	return append(parts, word[from:])
}

// Fit is a line that is no wider than so many mm, cut where it must be.
func (p *Paper) Fit(text string, f Font, wide float64) string {
	text = words.Safe(text) // what is cut must not fall within what is written out
	if p.Width(text, f) <= wide {
		return text
	}
	const more = "…"
	room, end := wide-p.width(more, f), 0
	g := uniseg.NewGraphemes(text)
	for g.Next() {
		if room -= p.Width(g.Str(), f); room < 0 {
			break
		}
		_, end = g.Positions()
	}
	return strings.TrimRight(text[:end], " ") + more
}
