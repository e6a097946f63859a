package syntax

import (
	"github.com/alecthomas/participle/v2/lexer"

	"maltwright/lang/source"
)

// Lexeme is one word or sign of a file by itself, whether the statement that it stands in
// reads or not.
type Lexeme struct {
	source.Span
	Kind LexemeKind
}

// LexemeKind is what a lexeme is by its letters alone.
type LexemeKind int

// The kinds of lexeme.
const (
	StrayLexeme  LexemeKind = iota // a sign that the language has no use for
	WordLexeme                     // soak, air-on
	ClauseLexeme                   // a word that opens a clause behind a statement
	BoundLexeme                    // at least, >=
	ToLexeme                       // the "to" or the dash between two values of a range
	NumberLexeme
	UnitLexeme
	DateLexeme
	ClockLexeme
	TextLexeme // with its quotes
	OpenLexeme
	CloseLexeme
	EndLexeme // a line end or ;
	CommentLexeme
)

var lexemeKinds = map[lexer.TokenType]LexemeKind{
	kindWord: WordLexeme, kindClause: ClauseLexeme, kindBound: BoundLexeme, kindTo: ToLexeme,
	kindDate: DateLexeme, kindClock: ClockLexeme, kindText: TextLexeme, kindOpen: OpenLexeme,
	kindClose: CloseLexeme, kindEnd: EndLexeme, kindComment: CommentLexeme, kindStray: StrayLexeme,
}

// Lexemes cuts a file into its words and signs, in the order in which they stand; blanks are
// left out. Of a file that is no text there are none.
func Lexemes(f *source.File) []Lexeme {
	if _, readable := inspect(f); !readable {
		return nil
	}
	var list []Lexeme
	for s := (&scanner{text: string(f.Bytes())}); ; {
		tok, _ := s.Next() // it gives no errors
		switch tok.Type {
		case lexer.EOF:
			return list
		case kindQuantity:
			list = append(list, measured(tok)...)
		default:
			list = append(list, Lexeme{span(tok), lexemeKinds[tok.Type]})
		}
	}
}

// measured parts a quantity into its numbers and units.
func measured(tok lexer.Token) []Lexeme {
	var list []Lexeme
	for _, p := range quantityOf(tok).Parts {
		for _, l := range []Lexeme{{p.Number.Span, NumberLexeme}, {p.Unit.Span, UnitLexeme}} {
			if !l.Empty() {
				list = append(list, l)
			}
		}
	}
	return list
}
