package serve

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"html/template"
	"net/http"
	"regexp"
	"time"
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
var templates = parsed(listPage, batchPage, readingPage, processPage, troublePage)

func parsed(names ...string) map[string]*template.Template {
	shared := template.Must(template.New("").Funcs(template.FuncMap{"held": held}).ParseFS(files, "pages/layout.html", "pages/entry.html"))
	out := map[string]*template.Template{}
	for _, name := range names {
		out[name] = template.Must(template.Must(shared.Clone()).ParseFS(files, "pages/"+name+".html"))
	}
	return out
}

// unit is a number and its unit behind it.
var unit = regexp.MustCompile(`(\d) (%|(?:kg|g|lb|oz|°C|°F|h|min|d)\b)`)

// held keeps a number and its unit on one line.
func held(text string) string { return unit.ReplaceAllString(text, "$1\u00a0$2") }
