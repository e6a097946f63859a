package serve

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"net/http"
	"regexp"
	"time"

	"maltwright/cmd/write/fill"
)

//go:embed pages
var files embed.FS

// asset is a file that every page asks for: it is served from memory, with a tag by which a browser
// that has it already is told so.
type asset struct {
	name, kind, tag string
	text            []byte
}

func assetOf(name, kind string) asset {
	text, err := files.ReadFile("pages/" + name)
	if err != nil {
		panic(err) // it is part of the program
	}
	sum := sha256.Sum256(text)
	return asset{name, kind, hex.EncodeToString(sum[:6]), text}
}

var (
	style  = assetOf("style.css", "text/css; charset=utf-8")
	script = assetOf("page.js", "text/javascript; charset=utf-8")
	worker = assetOf("worker.js", "text/javascript; charset=utf-8")
)

// ServeHTTP gives the file, or says that it is as it was.
func (a asset) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	h.Set("Content-Type", a.kind)
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("ETag", `"`+a.tag+`"`)
	h.Set("Cache-Control", "private, no-cache")
	if r.URL.Query().Get("v") == a.tag { // its address changes with it
		h.Set("Cache-Control", "private, max-age=31536000, immutable")
	}
	http.ServeContent(w, r, a.name, time.Time{}, bytes.NewReader(a.text))
}

// templates has each page with the layout around it.
var templates = laidOut(listPage, batchPage, readingPage, processPage, troublePage)

func laidOut(names ...string) map[string]*fill.Page {
	out := map[string]*fill.Page{}
	for _, name := range names {
		var texts []string
		for _, file := range []string{"layout", "entry", name} {
			text, err := files.ReadFile("pages/" + file + ".html")
			if err != nil {
				panic(err) // it is part of the program
			}
			texts = append(texts, string(text))
		}
		out[name] = fill.New(fill.Funcs{"held": held}, texts...)
	}
	return out
}

// unit is a number and its unit behind it.
var unit = regexp.MustCompile(`(\d) (%|(?:kg|g|lb|oz|°C|°F|h|min|d)\b)`)

// held keeps a number and its unit on one line.
func held(text string) string { return unit.ReplaceAllString(text, "$1\u00a0$2") }
