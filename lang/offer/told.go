package offer

import (
	"slices"
	"strings"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// tellValue says what the last value of a header is.
func (l *list) tellValue(m *Meaning, head *syntax.Statement, at syntax.Lexeme, text string) bool {
	terms, doc := head.Terms, l.row.Doc
	before := *head
	if n := len(head.Clauses); n > 0 {
		last := *head.Clauses[n-1]
		terms = last.Terms
		if c, ok := l.row.Clause(last.Word.Text); ok {
			doc = c.Doc
		}
		last.Terms = terms[:max(0, len(terms)-1)]
		before.Clauses = append(append([]*syntax.Clause{}, head.Clauses[:n-1]...), &last)
	} else {
		before.Terms = terms[:max(0, len(terms)-1)]
	}
	if len(terms) == 0 {
		return false
	}
	term := terms[len(terms)-1]
	if b, ok := term.(syntax.Bounded); ok {
		term = b.Value
	}
	wants := l.courseOf(&before).wants
	switch term := term.(type) {
	case syntax.Amount:
		return l.tellAmount(m, at, wants, doc)
	case syntax.Text:
		return l.tellName(m, term.Value, wants, doc)
	case syntax.Word:
		return l.tellWord(m, term.Text, wants)
	}
	m.Title, m.Doc = text, doc
	return true
}

// tellWord says what a word of a list, a place or a measure is.
func (l *list) tellWord(m *Meaning, word string, wants []want) bool {
	m.Title, m.Doc = word, about(word)
	for _, w := range wants {
		if whole, behind := l.twoWordsFrom(m.Span); w.slot.Kind == vocabulary.Condition && w.first == "" && about(whole) != "" {
			m.Title, m.Doc, m.Span = whole, about(whole), behind
		}
		if w.first != "" {
			if whole := w.first + " " + word; about(whole) != "" {
				m.Title, m.Doc = whole, about(whole)
			}
		}
		if m.Doc == "" && w.slot.Label != "" {
			m.Doc = w.slot.Label
		}
		if w.slot.Label == vocabulary.AStep {
			m.Doc = stepDoc(word, m.Doc)
		}
	}
	for _, r := range l.known.Rules {
		if r.Text == word {
			m.Doc = r.Detail
		}
	}
	if g, ok := vocabulary.GlossOf(word); ok && g.Looks != "" && g.Looks != m.Doc {
		m.Facts = append(m.Facts, g.Looks)
	}
	return m.Doc != ""
}

// stepDoc is what a step is that is named by the word that orders it.
func stepDoc(word, otherwise string) string {
	for _, in := range []vocabulary.Block{vocabulary.Process, vocabulary.Steep, vocabulary.Germinate, vocabulary.Wither, vocabulary.Kiln} {
		if row, ok := vocabulary.Lookup(in, word); ok {
			return row.Doc
		}
	}
	return otherwise
}

// twoWordsFrom gives the word at a place and the one behind it, as they name a measure of two.
func (l *list) twoWordsFrom(at source.Span) (string, source.Span) {
	line := pieces(l.file, lineAt(l.file, at.Start))
	for i := 0; i+1 < len(line); i++ {
		if line[i].Start == at.Start && line[i+1].Kind == syntax.WordLexeme {
			return l.file.Text(line[i].Span) + " " + l.file.Text(line[i+1].Span), line[i].Span.Join(line[i+1].Span)
		}
	}
	return "", at
}

// tellName says what is named, with its definition.
func (l *list) tellName(m *Meaning, name string, wants []want, doc string) bool {
	m.Title, m.Doc = quote(name), doc
	for _, w := range wants {
		if w.slot.Kind != vocabulary.Name {
			m.Title = w.slot.Label
			continue
		}
		for _, n := range l.known.Names {
			if n.Text == name && (n.Block == w.slot.Of || slices.Contains(w.slot.Or, n.Block)) {
				m.Title, m.Says, m.From = quote(name), definition(n), n.Place
				m.Doc = n.Detail
				return true
			}
		}
		m.Facts = append(m.Facts, "no definition of "+quote(name)+" is known here")
	}
	return true
}

// mostLines of a definition are shown.
const mostLines = 12

// definition is the text of what is named, of a long one its beginning.
func definition(n Named) string {
	if !n.Place.Known() {
		return ""
	}
	f := n.Place.File
	text := string(f.Bytes()[n.Place.Start:n.whole(f)])
	lines := strings.Split(strings.ReplaceAll(text, "\r\n", "\n"), "\n")
	if len(lines) > mostLines {
		lines = append(lines[:mostLines], "  …")
	}
	return strings.Join(lines, "\n")
}

// whole is where the definition ends, with its block.
func (n Named) whole(f *source.File) int {
	if n.end > n.Place.End && n.end <= f.Size() {
		return n.end
	}
	return n.Place.End
}

// tellAmount says what a value is, in other units too, and what is usual.
func (l *list) tellAmount(m *Meaning, at syntax.Lexeme, wants []want, doc string) bool {
	whole, a, ok := l.amountAt(at)
	if !ok {
		return false
	}
	m.Span, m.Doc, m.Title = whole, doc, l.file.Text(whole)
	for i := range wants {
		w := &wants[i]
		if w.slot.Kind != vocabulary.Amount && w.measure == nil || w.unit || w.to {
			continue
		}
		dims, label := l.dims(w), w.slot.Label
		m.Asked = l.at
		m.Asked.Place, m.Asked.Beside = w.place, w.beside
		if w.measure != nil {
			dims, label, m.Asked.Measure = w.measure.Dims, w.measure.Word, w.measure.Word
		}
		r, err := value.Range(a, dims)
		if err != nil {
			continue
		}
		if label != "" {
			m.Title = label + ": " + strings.Join(strings.Fields(m.Title), " ")
		}
		m.Facts = append(m.Facts, otherwise(r, a, moistureOf(dims))...)
		usual := l.known.usual(m.Asked)
		for _, u := range usual {
			m.Facts = append(m.Facts, u.Why)
		}
		if text := l.sensible(w.slot.Sense, r.Low.Dimension); len(usual) == 0 && w.measure == nil && text != "" {
			m.Facts = append(m.Facts, text)
		}
		break
	}
	return true
}
