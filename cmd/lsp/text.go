package lsp

import (
	"path/filepath"
	"strings"

	"maltwright/cmd/lsp/wire"
	"maltwright/cmd/words"
)

// text is what is shown to people, in Markdown where the editor shows that.
type text struct {
	markdown bool
	parts    []string // paragraphs
}

// textOf is a text in the first of the forms that an editor lists.
func textOf(forms []string) *text {
	return &text{markdown: len(forms) > 0 && forms[0] == wire.Markdown}
}

func (t *text) empty() bool { return len(t.parts) == 0 }

func (t *text) content() *wire.MarkupContent {
	kind := wire.PlainText
	if t.markdown {
		kind = wire.Markdown
	}
	return &wire.MarkupContent{Kind: kind, Value: strings.Join(t.parts, "\n\n")}
}

// signs that mean something in Markdown. Words in backquotes stay so.
var signs = strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "[", `\[`, "]", `\]`, "<", "&lt;", ">", "&gt;", "&", "&amp;", "#", `\#`, "~", `\~`, "|", `\|`)

func (t *text) escaped(line string) string {
	line = words.Safe(line)
	if t.markdown {
		return signs.Replace(line)
	}
	return line
}

// head is the word that a text is about.
func (t *text) head(line string) {
	line = t.escaped(line)
	if t.markdown {
		line = "**" + strings.ReplaceAll(line, "`", "\\`") + "**"
	}
	t.parts = append(t.parts, line)
}

func (t *text) line(line string) {
	if line != "" {
		t.parts = append(t.parts, t.escaped(line))
	}
}

// list is several lines, one below the other.
func (t *text) list(lines []string) {
	if len(lines) == 0 {
		return
	}
	out := make([]string, len(lines))
	for i, line := range lines {
		out[i] = "- " + t.escaped(line)
	}
	t.parts = append(t.parts, strings.Join(out, "\n"))
}

// code is text of the language, as it is.
func (t *text) code(code string) { t.fenced("malt", code) }

// form is how a statement is written: its signs for what may be left out are none of the language, and
// an editor would mark them as wrong.
func (t *text) form(form string) { t.fenced("text", form) }

func (t *text) fenced(language, code string) {
	if code == "" {
		return
	}
	code = words.SafeLines(code)
	if !t.markdown {
		t.parts = append(t.parts, code)
		return
	}
	fence := "```"
	for strings.Contains(code, fence) {
		fence += "`"
	}
	t.parts = append(t.parts, fence+language+"\n"+code+"\n"+fence)
}

func base(path string) string { return words.Safe(filepath.Base(path)) }
