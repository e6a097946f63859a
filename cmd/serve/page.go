package serve

import (
	"bytes"
	"crypto/hmac"
	"crypto/rand"
	"crypto/sha256"
	"encoding/hex"
	"net/http"
	"time"

	"maltwright/cmd/folder"
)

// The pages.
const (
	listPage    = "list"
	batchPage   = "batch"
	readingPage = "reading"
	processPage = "process"
	troublePage = "trouble"
)

// page is what the layout asks for.
type page struct {
	Title, StyleTag, ScriptTag string
	Stamp, AsOf                string // as of when it is
	Home, Write                bool
	Version                    string // of the folder; "" on a page that does not change with it
	Folder, Batch              folder.ID
	Calendar                   string
	Under                      []link // the batches under way
	Body                       any
}

const asOfLayout = "Mon 2 Jan, 15:04"

type link struct {
	ID   folder.ID
	Name string
	Here bool
}

// mostLinks is how many batches the head of a page names at the most.
const mostLinks = 4

func (s *server) page(r *http.Request, title string) *page {
	now := s.Clock()
	return &page{Title: title, StyleTag: style.tag, ScriptTag: script.tag, Stamp: now.Format(time.RFC3339), AsOf: now.Format(asOfLayout), Write: s.MayWrite(r.Context()), Folder: s.keep.ID(), Calendar: s.Calendar}
}

// under names the batches under way in the head.
func (p *page) under(list []folder.Batch, here folder.ID) {
	if len(list) > mostLinks {
		return
	}
	for _, b := range list {
		p.Under = append(p.Under, link{b.ID, b.Name, b.ID == here})
	}
}

// write makes the whole page before the first byte of it is sent.
func (s *server) write(w http.ResponseWriter, name string, status int, p *page) {
	var out bytes.Buffer
	if err := templates[name].WritePart(&out, "page", p); err != nil {
		http.Error(w, "the page could not be made: "+err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_, _ = w.Write(out.Bytes())
}

// table is a table of a page, whose rows fold on a phone.
type table struct {
	Caption, Class string
	Head           []string
	Rows           []row
}

type row struct {
	Between string // a heading among the rows
	Late    bool
	Cells   []cell
}

// cell is one of a row; the first names the row.
type cell struct {
	Text, Below, Href, Mark string
	Number                  bool
}

func cellOf(text string) cell { return cell{Text: text} }

func figure(text string) cell { return cell{Text: text, Number: true} }

func (t *table) add(cells ...cell) { t.Rows = append(t.Rows, row{Cells: cells}) }

// once is what a form calls itself, so that it is written once however often it is sent.
func once() string {
	var b [12]byte
	_, _ = rand.Read(b[:]) // it never fails
	return hex.EncodeToString(b[:])
}

// seal marks texts that the page hands to itself by an address, so that nobody else writes on it.
type seal [32]byte

func newSeal() (s seal) {
	_, _ = rand.Read(s[:])
	return s
}

func (s seal) of(text string) string {
	m := hmac.New(sha256.New, s[:])
	m.Write([]byte(text))
	return hex.EncodeToString(m.Sum(nil)[:12])
}

func (s seal) fits(text, mark string) bool { return hmac.Equal([]byte(s.of(text)), []byte(mark)) }
