package pdftest

import (
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// reader runs what draws a page.
type reader struct {
	t       testing.TB
	tall    float64
	bold    map[string]bool // by the name of a font
	letters [2]*sfnt.Font   // regular and bold
	widths  map[cut]float64 // of letters, in parts of their size
	page    Page

	operands []string
	font     Text // its size and weight
	at       [2]float64
	path     Line
	thick    float64
}

// cut is a letter of a font.
type cut struct {
	letter rune
	bold   bool
}

func letters(t testing.TB) [2]*sfnt.Font {
	var out [2]*sfnt.Font
	for i, b := range [][]byte{goregular.TTF, gobold.TTF} {
		f, err := sfnt.Parse(b)
		require.NoError(t, err)
		out[i] = f
	}
	return out
}

func (r *reader) run(content []byte) {
	for len(content) > 0 {
		var word string
		word, content = token(content)
		if word == "" {
			continue
		}
		if do, ok := operators[word]; ok {
			do(r)
			r.operands = r.operands[:0]
			continue
		}
		r.operands = append(r.operands, word)
	}
	require.LessOrEqual(r.t, len(r.operands), 0, "no operator takes these: %q", r.operands)
}

// token is the next word of a content stream; a string keeps its opening bracket.
func token(c []byte) (word string, rest []byte) {
	switch c[0] {
	case ' ', '\n', '\r', '[', ']':
		return "", c[1:]
	case '(':
		return text(c)
	}
	end := 1
	for end < len(c) && c[end] != ' ' && c[end] != '\n' && c[end] != ']' {
		end++
	}
	return string(c[:end]), c[end:]
}

func text(c []byte) (word string, rest []byte) {
	out := []byte{'('}
	for i := 1; i < len(c); i++ {
		switch c[i] {
		case ')':
			return string(out), c[i+1:]
		case '\\':
			i++
			if c[i] == 'r' {
				out = append(out, '\r')
				continue
			}
			out = append(out, c[i])
		default:
			out = append(out, c[i])
		}
	}
	return string(out), nil
}

func (r *reader) number(i int) float64 {
	require.Greater(r.t, len(r.operands), i)
	return number(r.operands[i])
}

// place is where two operands lie, mm from the upper left corner.
func (r *reader) place(i int) (x, y float64) {
	return r.number(i) * point, r.tall - r.number(i+1)*point
}

var operators = map[string]func(*reader){
	"Tf": func(r *reader) {
		r.font.Bold, r.font.Size = r.bold[r.operands[0][1:]], r.number(1)
	},
	"Td": func(r *reader) { r.at[0], r.at[1] = r.place(0) },
	"Tj": (*reader).show,
	"w":  func(r *reader) { r.thick = r.number(0) * point },
	"m":  func(r *reader) { r.path = Line{}; r.to(0) },
	"l":  func(r *reader) { r.to(0) },
	"c":  func(r *reader) { r.path.Curved = true; r.to(0); r.to(2); r.to(4) },
	"h":  func(r *reader) { r.path.Closed = true },
	"S":  func(r *reader) { r.end(true, false) },
	"f":  func(r *reader) { r.end(false, true) },
	"B":  func(r *reader) { r.end(true, true) },
	"BT": skip, "ET": skip, "q": skip, "Q": skip, "rg": skip, "RG": skip, "g": skip, "G": skip, "J": skip, "j": skip, "d": skip, "gs": skip,
}

func skip(*reader) {}

func (r *reader) to(i int) {
	x, y := r.place(i)
	r.path.Dots = append(r.path.Dots, x, y)
}

func (r *reader) end(stroked, filled bool) {
	r.path.Stroked, r.path.Filled, r.path.Thick = stroked, filled, r.thick
	r.page.Lines = append(r.page.Lines, r.path)
}

// show writes a text, which is UTF-16 with the high byte first.
func (r *reader) show() {
	raw := r.operands[0][1:]
	require.Zero(r.t, len(raw)%2, "a text of UTF-16")
	var codes []uint16
	for i := 0; i < len(raw); i += 2 {
		codes = append(codes, uint16(raw[i])<<8|uint16(raw[i+1]))
	}
	t := r.font
	t.X, t.Y, t.Words = r.at[0], r.at[1], string(utf16.Decode(codes))
	for _, letter := range t.Words {
		t.Wide += r.advance(letter, t.Bold) * t.Size * point
	}
	r.page.Texts = append(r.page.Texts, t)
}

// advance is how wide a letter is in parts of its size.
func (r *reader) advance(letter rune, bold bool) float64 {
	if w, ok := r.widths[cut{letter, bold}]; ok {
		return w
	}
	font := r.letters[0]
	if bold {
		font = r.letters[1]
	}
	var b sfnt.Buffer
	glyph, err := font.GlyphIndex(&b, letter)
	require.NoError(r.t, err)
	require.NotZero(r.t, glyph, "the font has no %q", letter)
	units := font.UnitsPerEm()
	advance, err := font.GlyphAdvance(&b, glyph, fixed.I(int(units)), 0)
	require.NoError(r.t, err)
	w := float64(advance) / 64 / float64(units)
	r.widths[cut{letter, bold}] = w
	return w
}
