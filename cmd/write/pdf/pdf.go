// Package pdf is paper: pages of A4 or letter size on which texts, lines, boxes and curves
// are set at places in mm, written as a PDF.
//
// The letters are those of Go's own fonts, of which a file holds what it uses: Latin, Greek, Cyrillic,
// fractions and arrows; so every reader shows the same, and text can be searched and copied. What
// they lack stands as a box, and Missing names it. Whatever acts instead of being read (controls, turns of direction)
// is written out. The file holds no clock and nothing at random: the same calls give the same bytes.
package pdf

import (
	"bytes"
	"io"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"maltwright/cmd/words"
)

// Options say what the paper is.
type Options struct {
	Wide, Tall float64   // of a page, mm; A4 where they are 0
	Title      string    // what a reader shows as the name of the document
	Made       time.Time // told in the file; a fixed day where it is zero
	// Foot is called for each page once all are there, to write its number.
	Foot func(p *Paper, page, of int)

	loose bool // streams are not compressed, for tests that read them
}

// A4 paper, ISO 216, mm.
const (
	a4Wide = 210
	a4Tall = 297
)

// language is the one in which the program writes, by RFC 5646.
const language = "en"

// noDay stands where nobody says when a paper was made: PDF readers do not like to be without it.
var noDay = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// Paper is a document under way.
type Paper struct {
	Wide, Tall float64 // of each page, mm
	options    Options
	file       *fpdf.Fpdf
	missing    []string        // in the order in which they came
	lacks      map[string]bool // what is in it
	pages      int
	lacking    map[int]bool            // pages on which a box stands for a letter
	advance    map[string]map[rune]int // how wide letters are by the style of their font, thousandths of its size
}

// XY is a place on a page, mm from its upper left corner, to the right and down.
type XY struct{ X, Y float64 }

// RGB is a colour; its zero value is black.
type RGB struct{ R, G, B uint8 }

// White is the colour of the paper.
var White = RGB{255, 255, 255}

// New is paper without a page.
func New(o Options) *Paper {
	if o.Wide <= 0 || o.Tall <= 0 {
		o.Wide, o.Tall = a4Wide, a4Tall
	}
	if o.Made.IsZero() {
		o.Made = noDay
	}
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: o.Wide, Ht: o.Tall}})
	f.SetCatalogSort(true) // or fonts stand in the order of a map
	f.SetCompression(!o.loose)
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.SetLineJoinStyle("round")
	f.SetLineCapStyle("round")
	// fpdf writes into the bytes of a font, which are those of every paper
	f.AddUTF8FontFromBytes(family, "", bytes.Clone(regular()))
	f.AddUTF8FontFromBytes(family, "B", bytes.Clone(bold()))
	p := &Paper{Wide: o.Wide, Tall: o.Tall, options: o, file: f, lacks: map[string]bool{}, lacking: map[int]bool{},
		advance: map[string]map[rune]int{Font{}.style(): {}, Font{Bold: true}.style(): {}}}
	f.SetTitle(words.Safe(o.Title), true)
	f.SetProducer("maltwright", true)
	f.SetLang(language)
	f.SetCreationDate(o.Made)
	f.SetModificationDate(o.Made)
	return p
}

// Page begins a page. What is drawn stands on it from then on.
func (p *Paper) Page() {
	p.file.AddPage()
	p.pages++
}

// Pages is how many there are.
func (p *Paper) Pages() int { return p.pages }

// Write writes the document, whereafter it takes no more.
func (p *Paper) Write(w io.Writer) error {
	if p.options.Foot != nil {
		for i := range p.pages {
			p.file.SetPage(i + 1)
			p.options.Foot(p, i+1, p.pages)
		}
	}
	return p.file.Output(w)
}
