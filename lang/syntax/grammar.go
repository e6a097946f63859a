package syntax

import (
	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// The grammar of one header, as participle reads it; docs/grammar.ebnf is the
// same in full. A production keeps the tokens it matched and captures nothing
// else, which spares participle most of its work: convert.go makes the tree.

type header struct {
	Tokens  []lexer.Token
	Verb    struct{}  `parser:"(Word | Clause)"`
	Terms   []*term   `parser:"@@*"`
	Clauses []*clause `parser:"@@*"`
}

type clause struct {
	Tokens []lexer.Token
	Word   struct{} `parser:"Clause"`
	Terms  []*term  `parser:"@@*"`
}

type term struct {
	Tokens []lexer.Token
	Form   struct{} `parser:"Word | Quantity ( To Quantity )? | Text | Bound ( Quantity ( To Quantity )? | Word | Text ) | ( Date Clock? | Clock Date? ) ( To ( Date Clock? | Clock Date? ) )?"`
}

var grammar = participle.MustBuild[header](participle.Lexer(definition{kindNames}))
