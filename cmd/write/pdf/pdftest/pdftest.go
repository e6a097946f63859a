// Package pdftest reads a PDF of cmd/write/pdf back: which texts stand where, and which
// lines. It follows the operators of ISO 32000-1, as far as those files use them, and takes the widths of letters
// from the fonts themselves, not from what wrote the file. Only tests use it.
package pdftest

import (
	"bytes"
	"compress/zlib"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// point is 1/72 inch, mm.
const point = 25.4 / 72

// Document is what stands on paper.
type Document struct {
	Wide, Tall float64 // of a page, mm
	Pages      []Page
}

// Page is a page.
type Page struct {
	Texts []Text
	Lines []Line
}

// Text is a line of letters.
type Text struct {
	X, Y  float64 // where its baseline begins, mm from the upper left corner
	Wide  float64 // mm
	Size  float64 // points
	Bold  bool
	Words string
}

// Line is a line that was drawn, or an area that was filled.
type Line struct {
	Dots            []float64 // x and y in turn, mm from the upper left corner; a curve by what it leans to as well
	Curved, Closed  bool
	Stroked, Filled bool
	Thick           float64 // mm
}

// Upright gives the sides of a rectangle, mm; ok tells whether it is one.
func (l Line) Upright() (wide, tall float64, ok bool) {
	d := l.Dots
	if !l.Closed || l.Curved || len(d) != 8 || d[1] != d[3] || d[2] != d[4] || d[5] != d[7] || d[0] != d[6] {
		return 0, 0, false
	}
	return d[2] - d[0], d[5] - d[3], true
}

// All is the text of a page, a line for each that was set.
func (p Page) All() string {
	var b strings.Builder
	for _, t := range p.Texts {
		b.WriteString(t.Words + "\n")
	}
	return b.String()
}

var (
	object   = regexp.MustCompile(`(?s)(?:^|\n)(\d+) 0 obj\n(.*?)\nendobj`)
	mediaBox = regexp.MustCompile(`/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]`)
	contents = regexp.MustCompile(`/Contents (\d+) 0 R`)
	kids     = regexp.MustCompile(`/Kids \[([^\]]*)\]`)
	aFont    = regexp.MustCompile(`/(F[0-9a-f]+) (\d+) 0 R`)
	baseFont = regexp.MustCompile(`/BaseFont /(\S+)`)
	length   = regexp.MustCompile(`/Length (\d+)`)
)

// Read reads a document.
func Read(t testing.TB, file []byte) Document {
	t.Helper()
	objects := map[string][]byte{}
	for _, m := range object.FindAllSubmatch(file, -1) {
		objects[string(m[1])] = m[2]
	}
	box := mediaBox.FindSubmatch(file)
	require.NotNil(t, box, "the file has no pages")
	d := Document{Wide: number(string(box[1])) * point, Tall: number(string(box[2])) * point}
	bold := map[string]bool{}
	for _, m := range aFont.FindAllSubmatch(file, -1) {
		name := baseFont.FindSubmatch(objects[string(m[2])])
		require.NotNil(t, name, "font %s", m[1])
		bold[string(m[1])] = bytes.HasSuffix(name[1], []byte("B"))
	}
	fonts, widths := letters(t), map[cut]float64{}
	order := kids.FindSubmatch(file)
	require.NotNil(t, order)
	for _, id := range regexp.MustCompile(`(\d+) 0 R`).FindAllSubmatch(order[1], -1) {
		at := contents.FindSubmatch(objects[string(id[1])])
		require.NotNil(t, at, "page %s", id[1])
		r := reader{t: t, tall: d.Tall, bold: bold, letters: fonts, widths: widths}
		r.run(stream(t, objects[string(at[1])]))
		d.Pages = append(d.Pages, r.page)
	}
	return d
}

func stream(t testing.TB, object []byte) []byte {
	t.Helper()
	head, body, found := bytes.Cut(object, []byte("stream\n"))
	require.True(t, found)
	n, err := strconv.Atoi(string(length.FindSubmatch(head)[1]))
	require.NoError(t, err)
	body = body[:n]
	if !bytes.Contains(head, []byte("FlateDecode")) {
		return body
	}
	z, err := zlib.NewReader(bytes.NewReader(body))
	require.NoError(t, err)
	out, err := io.ReadAll(z)
	require.NoError(t, err)
	return out
}

func number(s string) float64 {
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic(err) // a test reads what the program wrote
	}
	return x
}
