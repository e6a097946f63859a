package text

import (
	"fmt"
	"strings"

	"maltwright/cmd/answer/reference"
	"maltwright/cmd/words"
)

// kinds are the titles of entries.
var kinds = map[reference.Kind]string{
	reference.Measure: "a measure, for until and gate", reference.Promise: "a measure of the whole process, for expect",
	reference.Threshold: "a threshold, moved in a limits block",
	reference.Term:      "a word of the trade",
	reference.Unit:      "a unit",
}

// Entries writes what there is to say of a name.
func Entries(list []reference.Entry, o Options) string {
	s := &Sheet{Options: o}
	for i, e := range list {
		if i > 0 {
			s.line("")
		}
		s.entry(e)
	}
	return s.String()
}

func (s *Sheet) entry(e reference.Entry) {
	switch e.Kind {
	case reference.Rule:
		s.entryTitle(e.Name, "a rule, usually a "+e.Severity)
		s.told("when", e.Doc)
		s.told("why", e.Why)
		s.told("do", e.Do)
		s.told("limits", e.Limits)
		s.sample("not so", e.Bad)
		s.sample("but so", e.Good)
		s.told("since", e.Since)
		return
	case reference.Word:
		s.entryTitle(e.Name, "stands in "+strings.Join(e.In, ", "))
	case reference.Part:
		s.entryTitle(e.Name, "a word of "+some(e.In))
	default:
		s.entryTitle(e.Name, kinds[e.Kind])
	}
	s.indented(e.Doc)
	s.told("form", e.Form)
	for _, c := range e.Clauses {
		s.told("  "+c.Name, c.Doc)
	}
	for _, v := range e.Values {
		s.told("values", words.Joined(": ", v.Name, v.Doc))
	}
	s.told("words", strings.Join(e.Words, ", "))
	s.told("inside", strings.Join(e.Inside, ", "))
	s.sample("example", e.Example)
	s.told("in hand", e.Looks)
	for _, l := range e.Drawing {
		s.line("    %s", l)
	}
}

// some names a few of many.
func some(list []string) string {
	const few = 6
	if len(list) > few {
		list = append(list[:few:few], "and others")
	}
	return strings.Join(list, ", ")
}

func (s *Sheet) entryTitle(name, what string) {
	lines := words.Wrap(name+" - "+what, s.columns())
	lines[0] = s.bold(name) + strings.TrimPrefix(lines[0], name)
	for _, line := range lines {
		s.line("%s", line)
	}
}

func (s *Sheet) indented(text string) { s.hang("  ", text) }

// told writes a paragraph behind a label, if there is something to say.
func (s *Sheet) told(label, text string) {
	if text == "" {
		return
	}
	if s.narrow() {
		s.item("%s", strings.TrimSpace(label)+": "+text)
		return
	}
	for i, line := range words.Wrap(text, s.columns()-12) {
		if i > 0 {
			label = ""
		}
		s.line("  %-9s %s", label, line)
	}
}

// sample writes an example line by line, as it stands.
func (s *Sheet) sample(label, text string) {
	if text == "" {
		return
	}
	if s.narrow() {
		s.line("  %s:", label)
		for _, line := range strings.Split(text, "\n") {
			line = words.Safe(line)
			s.hangs("    "+line[:len(line)-len(strings.TrimLeft(line, " "))], "        ", line)
		}
		return
	}
	for i, line := range strings.Split(text, "\n") {
		if i > 0 {
			label = ""
		}
		s.line("  %-9s %s", label, words.Safe(line))
	}
}

// Overview writes an entry a line.
func Overview(list []reference.Entry, o Options) string {
	s := &Sheet{Options: o}
	for _, e := range list {
		doc := e.Doc
		switch e.Kind {
		case reference.Rule:
			doc = e.Severity + ": " + doc
		case reference.Measure, reference.Promise:
			doc = "measure: " + doc
		}
		s.brief(e.Name, doc)
	}
	return s.String()
}

// Units writes the units by dimension.
func Units(list []reference.Units, o Options) string {
	s := &Sheet{Options: o}
	for _, d := range list {
		s.entryTitle(d.Dimension, "units")
		for _, u := range d.Units {
			s.brief("  "+u.Name, u.Doc)
		}
	}
	return s.String()
}

// brief writes a word, and what it is in a column beside it.
func (s *Sheet) brief(word, doc string) {
	if s.narrow() {
		margin := word[:len(word)-len(strings.TrimLeft(word, " "))]
		s.hangs(margin, "    ", strings.TrimSpace(word))
		s.hang("      ", doc)
		return
	}
	const column = 30
	if len([]rune(word)) >= column {
		s.hangs("  ", "    ", strings.TrimSpace(word))
		word = ""
	}
	for i, line := range words.Wrap(doc, s.columns()-column-1) {
		if i > 0 {
			word = ""
		}
		s.line("%s", fmt.Sprintf("%-*s %s", column, word, line))
	}
}
