package fill_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/cmd/write/fill"
	"maltwright/cmd/write/fill/filltest"
)

type inner struct{ Name, To string }

type data struct {
	inner
	Text, More string
	N          int
	Is         bool
	Share      float64
	List       []inner
	Words      []string
	One        *inner
	Any        any
}

// pages have each place where something can be filled in, and each way of saying what.
var pages = map[string]*fill.Page{
	"text":       fill.New(nil, `<p>{{.Text}} {{.N}} {{.Share}}</p>`),
	"attribute":  fill.New(nil, `<p class="a {{.Text}}" id="{{.N}}"{{if .Is}} lang="{{.More}}"{{end}}>x</p>`),
	"joined":     fill.New(nil, `<p class="a{{if .Is}} {{.Text}}{{else}} b{{end}}" role="{{if .Text}}alert{{else}}status{{end}}">`),
	"field":      fill.New(nil, `<title>{{.Text}} and</title><textarea name="a">{{.More}}</textarea><p>{{.Text}}</p>`),
	"address":    fill.New(nil, `<a href="{{.Text}}">{{.More}}</a><img src="{{.More}}" alt="{{.Text}}">`),
	"path":       fill.New(nil, `<a href="/batch/{{.Text}}">x</a><form action="/batch/{{.Text}}/undo#{{.More}}">`),
	"query":      fill.New(nil, `<a href="/batch?a={{.Text}}&amp;b={{.More}}#{{.N}}">x</a>`),
	"sources":    fill.New(nil, `<source srcset="{{.Text}}"><source srcset="{{.More}}">`),
	"style":      fill.New(fill.Funcs{"mm": func(n int) string { return strings.Repeat("9", max(0, n)) + "mm" }}, `<style>p { width: {{mm .N}}; top: calc({{mm .N}} - 1mm) }</style>`),
	"list":       fill.New(nil, `{{range .List}}<b>{{.Name}}</b>{{$.Text}}{{else}}none{{end}}{{range $i, $w := .Words}}{{if $i}}, {{end}}{{$w}}{{end}}`),
	"with":       fill.New(nil, `{{with .One}}{{.Name}}{{else}}{{.Text}}{{end}}{{with .Text}}<i>{{.}}</i>{{end}}{{$x := .More}}{{if .Is}}{{$x}}{{end}}`),
	"logic":      fill.New(nil, `{{if and .Is .Text}}a{{end}}{{if or .Is .Words}}b{{else if not .Text}}c{{end}}{{if eq .Text "44 %"}}d{{else if eq .N 1}}e{{end}}{{if gt (len .Words) 1}}{{index .Words 1}}{{end}}{{or .Text "–"}}`),
	"promoted":   fill.New(nil, `{{.Name}}{{.To}}{{with .Any}}{{.}}{{end}}`),
	"parts":      fill.New(nil, `{{define "x"}}<p>{{.Name}}</p>{{end}}{{range .List}}{{template "x" .}}{{end}}`, `{{define "y"}}{{end}}{{template "x" .}}`),
	"drawing":    fill.New(nil, `<svg viewBox="0 0 {{.N}} 100"><path d="{{.Text}}" fill="{{.More}}"/></svg>`),
	"whitespace": fill.New(nil, "<p>\n{{- if .Is}}\n  x\n{{- end -}}\n</p>"),
}

// TestPagesAreFilledAsTheStandardLibraryFillsThem: whatever is filled in, wherever.
func TestPagesAreFilledAsTheStandardLibraryFillsThem(t *testing.T) {
	for name, p := range pages {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				d := filltest.Any(t, data{})
				d.Any = rapid.SampledFrom([]any{nil, "<b>", 3, &d.Text, fill.HTML("<b>a</b>"), 1.5}).Draw(t, "any")
				d.inner = inner{filltest.Hostile().Draw(t, "name"), filltest.Hostile().Draw(t, "to")}
				filltest.Same(t, p, "", d)
				if name == "text" {
					filltest.Same(t, p, "", &d)
				}
			})
		})
	}
}

func TestMarkupOfOursStandsAsItIs(t *testing.T) {
	var out strings.Builder
	p := fill.New(nil, `<style>{{.Style}}</style><p class="x">{{.Drawing}}</p><title>{{.Drawing}}</title>`)
	require.NoError(t, p.Write(&out, map[string]any{"Style": fill.CSS("p { top: 0 }"), "Drawing": fill.HTML("<b>&</b>")}))
	assert.Equal(t, `<style>p { top: 0 }</style><p class="x"><b>&</b></p><title>&lt;b&gt;&amp;&lt;/b&gt;</title>`, out.String())
}

// TestNothingIsFilledInWhereItIsNotSafe: such a page does not parse, whatever is to be filled in.
func TestNothingIsFilledInWhereItIsNotSafe(t *testing.T) {
	for text, why := range map[string]string{
		`<p class={{.Text}}>`:   "double quotes",
		`<p class='{{.Text}}'>`: "double quotes",
		`<p {{.Text}}>`:         "nothing can be filled in here",
		`<p {{.Text}}="x">`:     "nothing can be filled in here",
		`<{{.Text}}>`:           "without a name",
		`<meta http-equiv="refresh" content="{{.Text}}">`:    `attribute "content"`,
		`<meta http-equiv="{{.Text}}" content="0">`:          `attribute "http-equiv"`,
		`<link rel="{{.Text}}" href="/a">`:                   `attribute "rel"`,
		`<script type="{{.Text}}">f()</script>`:              `attribute "type"`,
		`<a href="javascript:{{.Text}}">`:                    "nothing can be filled in here",
		`<a href="javascript:f(?{{.Text}})">`:                "nothing can be filled in here",
		`<a href="data:text/html,{{.Text}}">`:                "nothing can be filled in here",
		`<a href="{{if .Is}}vbscript:a{{end}}?{{.Text}}">`:   "nothing can be filled in here",
		`<img srcset="/a 1x, {{.Text}}">`:                    "nothing can be filled in here",
		`<a HREF="{{.Text}}">`:                               `attribute "HREF"`,
		`<a href = "{{.Text}}">`:                             "no attribute",
		`<a xlink:href="{{.Text}}">`:                         "no attribute",
		`<iframe srcdoc="{{.Text}}">`:                        `attribute "srcdoc"`,
		"<p\tclass=\"{{.Text}}\">":                           "no attribute",
		`<script></SCRIPT><p>{{.Text}}</p>`:                  `element "script"`,
		`<style></sty{{if .Is}}le>{{end}}<p id="{{.Text}}">`: "ends inside",
		`<p onclick="{{.Text}}">`:                            `attribute "onclick"`,
		`<p style="{{.Text}}">`:                              `attribute "style"`,
		`<a formaction="{{.Text}}">`:                         `attribute "formaction"`,
		`<script>{{.Text}}</script>`:                         `element "script"`,
		`<!-- {{.Text}} -->`:                                 "neither a tag",
		`<a href="{{.Text}}{{.More}}">`:                      "nothing can be filled in here",
		`<a href="{{if .Is}}x{{else}}?{{end}}{{.More}}">`:    "nothing can be filled in here",
		`<p{{if .Is}} class="{{end}}">`:                      "two places",
		`{{range .List}}<p class="{{end}}">`:                 "two places",
		`<p hr{{if .Is}}ef="{{.Text}}"{{end}}>`:              "does not begin with a space",
		`<p{{if .Is}}re{{end}}>`:                             "does not begin with a space",
		`<p class="{{template "x"}}">{{define "x"}}{{end}}`:  "inside a tag",
		`{{template "y"}}`:                                   "no part",
		`{{define "x"}}<p class="{{end}}`:                    "ends inside",
		`<title>{{.Text}}`:                                   "ends inside",
		`{{break}}`:                                          "outside",
		`{{range .List}}{{break}}{{end}}`:                    "not known here",
		`{{.Text`:                                            "unclosed",
		`{{shout .Text}}`:                                    `"shout" not defined`,
	} {
		assert.ErrorContains(t, fill.New(nil, text).Parses(), why, text)
	}
	assert.ErrorContains(t, fill.New(nil, `{{define "a"}}x{{end}}`, `{{define "a"}}y{{end}}`).Parses(), "twice")
}

// TestAPageSaysWhatItCannotFill: nothing is written then, and nothing panics.
func TestAPageSaysWhatItCannotFill(t *testing.T) {
	for text, why := range map[string]string{
		`<p>{{.Nothing}}`:                 "has no field Nothing",
		`<p>{{.Map.Nothing}}`:             "there is no Nothing",
		`<p>{{.One.Name}}`:                "there is no Name of nothing",
		`<p>{{.private}}`:                 "has no field private",
		`<p>{{.List}}`:                    "cannot show a []string",
		`<p>{{range .Text}}{{end}}`:       "is no list",
		`<p>{{.Text | len}}`:              "one command",
		`<p>{{.Text .Text}}`:              "is no function",
		`<p>{{add .Text}}`:                "takes a int, and not a string",
		`<p>{{add 1 2}}`:                  "give it 1 values",
		`<p>{{fails 1}}`:                  "give it 1 values",
		`<p>{{if eq 1.5 2.5}}{{end}}`:     "not known here",
		`<p>{{index .List 7}}`:            "index: ",
		`<p>{{if eq .List .List}}{{end}}`: "eq: ",
		`<p>{{len 7}}`:                    "len: ",
	} {
		var out strings.Builder
		p := fill.New(fill.Funcs{"add": func(n int) int { return n + 1 }, "fails": func(int) (string, error) { return "", errors.New("no") }}, text)
		assert.ErrorContains(t, p.Write(&out, struct {
			Text, private string
			List          []string
			One           *inner
			Map           map[string]any
		}{Map: map[string]any{}}), why, text)
		assert.Empty(t, out.String(), text)
	}
	var out strings.Builder
	assert.ErrorContains(t, fill.New(nil, "x").WritePart(&out, "y", nil), "no part")
	assert.ErrorContains(t, fill.New(nil, "{{").Write(&out, nil), "unclosed")
}
