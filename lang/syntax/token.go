package syntax

import "github.com/alecthomas/participle/v2/lexer"

// The kinds of token. A header never crosses a line, so line ends, comments and
// braces only ever stand between headers and the grammar need not know them.
const (
	kindWord     lexer.TokenType = iota + 1 // soak, air-on
	kindClause                              // in, at, until ...: opens a clause
	kindBound                               // at least, is, >= ...
	kindTo                                  // the "to" between two values of a range
	kindQuantity                            // 12, 3/4, 12.4 %, 1 h 30 min, 45 % dry basis
	kindDate                                // 2026-03-06
	kindClock                               // 07:30
	kindText                                // "Far field"
	kindOpen                                // {
	kindClose                               // }
	kindEnd                                 // line end or ;
	kindComment                             // # ...
	kindStray                               // a character the language has no use for
)

var kindNames = map[string]lexer.TokenType{
	"EOF": lexer.EOF, "Word": kindWord, "Clause": kindClause, "Bound": kindBound, "To": kindTo,
	"Quantity": kindQuantity, "Date": kindDate, "Clock": kindClock, "Text": kindText,
	"Open": kindOpen, "Close": kindClose, "End": kindEnd, "Comment": kindComment, "Stray": kindStray,
}
