package syntax

import (
	"strings"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"

	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// From participle's nodes to the tree. All that matters of a node is its tokens.

func span(t lexer.Token) source.Span {
	return source.Span{Start: t.Pos.Offset, End: t.Pos.Offset + len(t.Value)}
}

func cover(tokens []lexer.Token) source.Span {
	return source.Span{Start: span(tokens[0]).Start, End: span(tokens[len(tokens)-1]).End}
}

func wordOf(t lexer.Token) Word { return Word{span(t), t.Value} }

func convertHeader(h *header) *Statement {
	s := &Statement{Span: cover(h.Tokens), Verb: wordOf(h.Tokens[0]), Terms: convertTerms(h.Terms)}
	s.Verb.Text = vocabulary.Today(s.Verb.Text)
	if len(h.Clauses) > 0 {
		s.Clauses = make([]*Clause, len(h.Clauses))
		for i, c := range h.Clauses {
			s.Clauses[i] = &Clause{cover(c.Tokens), wordOf(c.Tokens[0]), convertTerms(c.Terms)}
		}
	}
	return s
}

func convertTerms(terms []*term) []Term {
	if len(terms) == 0 {
		return nil
	}
	list := make([]Term, len(terms))
	for i, t := range terms {
		list[i] = convertTerm(t.Tokens)
	}
	return list
}

func convertTerm(tokens []lexer.Token) Term {
	switch first := tokens[0]; first.Type {
	case kindText:
		return textOf(first)
	case kindQuantity:
		return amountOf(tokens)
	case kindBound:
		return Bounded{cover(tokens), Word{span(first), foldBlanks(first.Value)}, convertTerm(tokens[1:])}
	case kindDate, kindClock:
		return momentOf(tokens)
	default:
		return wordOf(first)
	}
}

func amountOf(tokens []lexer.Token) Amount {
	a := Amount{Span: cover(tokens), Low: quantityOf(tokens[0])}
	if len(tokens) == 3 { // the one in the middle is the "to"
		high := quantityOf(tokens[2])
		a.High = &high
	}
	return a
}

func quantityOf(t lexer.Token) Quantity {
	q := Quantity{Span: span(t), Parts: make([]Part, 0, 1)}
	s := scanner{text: t.Value}
	for s.at < len(s.text) {
		start := s.at
		s.number()
		p := Part{Number: wordAt(t, start, s.at)}
		s.skipBlanks()
		unit := s.at
		if s.at < len(s.text) && s.unitStarts() {
			s.unit()
			p.Unit = wordAt(t, unit, s.at)
		}
		p.Span = p.Number.Join(p.Unit.Span)
		q.Parts = append(q.Parts, p)
		s.skipBlanks()
		if s.at == start { // cannot be; but a loop that might not end is worse than a part too few
			break
		}
	}
	return q
}

func wordAt(t lexer.Token, from, to int) Word {
	at := t.Pos.Offset
	return Word{source.Span{Start: at + from, End: at + to}, foldBlanks(t.Value[from:to])}
}

func momentOf(tokens []lexer.Token) Moment {
	m := Moment{Span: cover(tokens)}
	for i, t := range tokens {
		if t.Type == kindTo {
			m.From, m.To = stampOf(tokens[:i]), new(Stamp)
			*m.To = stampOf(tokens[i+1:])
			return m
		}
	}
	m.From = stampOf(tokens)
	return m
}

func stampOf(tokens []lexer.Token) Stamp {
	s := Stamp{Span: cover(tokens)}
	for _, t := range tokens {
		if t.Type == kindDate {
			s.Date = Word{span(t), plainDate(t.Value)}
		} else {
			s.Clock = Word{span(t), plainClock(t.Value)}
		}
	}
	return s
}

func textOf(t lexer.Token) Text {
	_, size := utf8.DecodeRuneInString(t.Value)
	value := t.Value[size:]
	if _, closed := quoteEnd(t.Value, 0); closed {
		_, n := utf8.DecodeLastRuneInString(value)
		value = value[:len(value)-n]
	}
	if strings.Contains(value, `\`) {
		value = unescape(value)
	}
	return Text{span(t), spaces.Replace(value)}
}

// spaces writes the blanks that programs put in names of their own accord as those that people type.
var spaces = strings.NewReplacer("\u00a0", " ", "\u202f", " ", "\u2009", " ")

// unescape drops the backslash before a quote or another backslash. Before anything
// else it stays, so that a message shows a path such as barn\loft.malt as it was written.
func unescape(value string) string {
	var b strings.Builder
	for i := 0; i < len(value); i++ { // by bytes, so that what is no UTF-8 stays as it is
		if value[i] == '\\' && i+1 < len(value) {
			if r, _ := utf8.DecodeRuneInString(value[i+1:]); r == '\\' || openQuote(r) || closeQuote(r) {
				i++
			}
		}
		b.WriteByte(value[i])
	}
	return b.String()
}

func isBlank(r rune) bool { return strings.ContainsRune(blanks, r) }

// foldBlanks writes the blanks inside "at  least" or "% dry basis" as one space each.
func foldBlanks(value string) string {
	if strings.ContainsAny(value, blanks) {
		return strings.Join(strings.FieldsFunc(value, isBlank), " ")
	}
	return value
}
