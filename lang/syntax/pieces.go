package syntax

import (
	"github.com/alecthomas/participle/v2/lexer"

	"maltwright/lang/source"
)

// PieceKind is what a piece of a line is.
type PieceKind int

// The kinds of piece.
const (
	PieceWord    PieceKind = iota + 1 // a bare word
	PieceClause                       // a word that opens a clause
	PieceBound                        // at least, is, >=
	PieceTo                           // the "to" between two values
	PieceNumber                       // a quantity with its units, a number alone
	PieceTime                         // a date or a time of day
	PieceText                         // a quoted text, closed or not
	PieceBrace                        // { or }
	PieceEnd                          // a line end or ;
	PieceComment                      // # and what stands behind it
	PieceStray                        // what the language has no use for
)

var pieceKinds = map[lexer.TokenType]PieceKind{
	kindWord: PieceWord, kindClause: PieceClause, kindBound: PieceBound, kindTo: PieceTo, kindQuantity: PieceNumber,
	kindDate: PieceTime, kindClock: PieceTime, kindText: PieceText, kindOpen: PieceBrace, kindClose: PieceBrace,
	kindEnd: PieceEnd, kindComment: PieceComment, kindStray: PieceStray,
}

// Piece is a piece of a text as the lexer cuts it, by its bytes in that text. Of a text it
// has more to say than a tree, which has nothing of a statement that does not read.
type Piece struct {
	source.Span
	Kind PieceKind
}

// Pieces cuts a text, which begins where a statement may, as a line does.
func Pieces(text string) (list []Piece) {
	s := &scanner{text: text}
	for {
		t, _ := s.Next() // the scanner gives no errors
		if t.Type == lexer.EOF {
			return list
		}
		list = append(list, Piece{span(t), pieceKinds[t.Type]})
	}
}

// Closed tells whether a piece that is a quoted text has its closing quote.
func Closed(text string) bool {
	end, closed := quoteEnd(text, 0)
	return closed && end == len(text)
}
