package highlight

import (
	"fmt"
	"strings"

	"maltwright/lang/vocabulary"
)

// list is one list of words and what the modes call it.
type list struct {
	name  string
	words []string
	doc   string
}

// lists are what the modes for Vim and Emacs are built on.
func (w Words) lists() []list {
	return []list{
		{"includes", w.Includes, "bring in another file"},
		{"definitions", w.Definitions, "give a name to what their block says"},
		{"acts", w.Acts, "begin a step, a stage, a setting or a line of a record"},
		{"facts", w.Facts, "begin a fact"},
		{"numbered", w.Numbered, "begin a statement of a step and its number"},
		{"steps", w.Steps, "the steps that can be numbered there"},
		{"clauses", w.Clauses, "open a clause"},
		{"bounds", w.Bounds, "stand in front of a value as its bound"},
		{"signs", w.Signs, "signs of a bound"},
		{"and", []string{vocabulary.And}, "joins two tests"},
		{"to", []string{vocabulary.To}, "stands between two ends of a range"},
		{"places", w.Places, "where a temperature is taken, and what a condition names"},
		{"choices", w.Choices, "values that are words"},
		{"times", w.Times, "times of day that are words"},
		{"months", months(), "the first letters of the months"},
		{"units", w.Units, "every spelling of a unit, the longer first"},
		{"either", w.Either, "units that open a clause too, where something follows"},
		{"fractions", strings.Split(fractions(), ""), "signs that are numbers"},
	}
}

// Lists stand in the files of the modes between these marks, behind the comment sign of each.
const (
	ListsBegin = " The words: made from the vocabulary by the tests of cmd/write/highlight; do not edit.\n"
	ListsEnd   = " The words end here.\n"
)

// Vim gives the lists as variables of a script of Vim.
func Vim() string {
	var b strings.Builder
	for _, l := range Collect().lists() {
		quoted := make([]string, len(l.words))
		for i, word := range l.words {
			quoted[i] = "'" + strings.ReplaceAll(word, "'", "''") + "'"
		}
		fmt.Fprintf(&b, "\" %s\nlet s:%s = [%s]\n", l.doc, l.name, folded(quoted, ", ", "\n  \\ "))
	}
	return b.String()
}

// Emacs gives the lists as constants of Emacs Lisp.
func Emacs() string {
	var b strings.Builder
	for _, l := range Collect().lists() {
		quoted := make([]string, len(l.words))
		for i, word := range l.words {
			quoted[i] = `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(word) + `"`
		}
		fmt.Fprintf(&b, "(defconst malt--%s\n  '(%s)\n  \"Words: %s.\")\n\n", l.name, folded(quoted, " ", "\n    "), l.doc)
	}
	return b.String()
}

// folded joins the words, on as many lines as make none much longer than a screen.
func folded(words []string, between, newline string) string {
	const width = 72
	var b strings.Builder
	at := 0
	for i, word := range words {
		if i > 0 {
			b.WriteString(between)
		}
		if at > 0 && at+len(word) > width {
			text := strings.TrimRight(b.String(), " ")
			b.Reset()
			b.WriteString(text + newline)
			at = 0
		}
		b.WriteString(word)
		at += len(word) + len(between)
	}
	return b.String()
}
