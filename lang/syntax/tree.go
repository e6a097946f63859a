package syntax

import (
	"maltwright/lang/quantity"
	"maltwright/lang/source"
)

// Tree is one file as statements. Whatever of the file could not be read is
// missing from it or marked Broken; the findings that came with it say where.
type Tree struct {
	File *source.File
	Top  Block
}

// Block is a run of statements: a whole file, or what stands between braces.
type Block struct {
	source.Span // with its braces
	Statements  []*Statement
	Tail        []Comment // comments below the last statement
	Close       *Comment  // the comment behind the closing brace
}

// Statement is a verb with its values and clauses, and its block if it has one.
type Statement struct {
	source.Span // from the verb to the last clause or the closing brace
	Verb        Word
	Terms       []Term
	Clauses     []*Clause
	Body        *Block // nil where there are no braces
	Lead        []Comment
	Trail       *Comment // on the statement's own line, or behind its opening brace
	Spaced      bool     // an empty line stands above
	Broken      bool     // the header did not read; Verb is what it begins with
}

// Clause is a clause word with its values.
type Clause struct {
	source.Span
	Word  Word
	Terms []Term
}

// Term is a value: a Word, Text, Amount, Bounded or Moment.
type Term interface{ Range() source.Span }

// Word is a bare word: a verb, a measure, a place, a choice.
type Word struct {
	source.Span
	Text string
}

// Text is a quoted text; Value is without the quotes.
type Text struct {
	source.Span
	Value string
}

// Amount is a quantity or a range of two.
type Amount struct {
	source.Span
	Low  Quantity
	High *Quantity // nil for a single quantity
}

// LowEnd is the amount, or the low end of a range. Where that borrows the unit of the
// high end, as in 43 to 45 %, the whole range is what it spans, and its unit stands
// behind the high end.
func (a Amount) LowEnd() Quantity {
	low := a.Low
	if !a.borrows() {
		return low
	}
	number := low.Parts[0]
	number.Unit = a.High.Parts[0].Unit
	return Quantity{a.Span, []Part{number}}
}

// Borrows tells whether the low end of a range takes the unit of the high end.
func (a Amount) borrows() bool {
	return a.High != nil && quantity.Borrows(a.Low.Written(), a.High.Written())
}

// Quantity is one or more numbers with their units, as written.
type Quantity struct {
	source.Span
	Parts []Part
}

// Written gives the parts of the quantity by their text alone.
func (q Quantity) Written() []quantity.Part {
	parts := make([]quantity.Part, len(q.Parts))
	for i, p := range q.Parts {
		parts[i] = quantity.Part{Number: p.Number.Text, Unit: p.Unit.Text}
	}
	return parts
}

// Part is a number and its unit; the unit may be missing. Of plain degrees, where the file
// says which, it is °C or °F, whatever is written.
type Part struct {
	source.Span
	Number, Unit Word
}

// Bounded is a bound such as "at least", with what it bounds.
type Bounded struct {
	source.Span
	Bound Word
	Value Term // Amount, Word or Text
}

// Moment is a date, a time of day, both, or a range of two such.
type Moment struct {
	source.Span
	From Stamp
	To   *Stamp
}

// Stamp is a date, a time of day or both; what is not written is an empty word.
type Stamp struct {
	source.Span
	Date, Clock Word
}

// Comment is one comment; Text is with its "#".
type Comment struct {
	source.Span
	Text   string
	Spaced bool // an empty line stands above
}

// Range gives the place of the word.
func (w Word) Range() source.Span { return w.Span }

// Range gives the place of the text with its quotes.
func (t Text) Range() source.Span { return t.Span }

// Range gives the place of the whole amount.
func (a Amount) Range() source.Span { return a.Span }

// Range gives the place of the bound and its value.
func (b Bounded) Range() source.Span { return b.Span }

// Range gives the place of the moment.
func (m Moment) Range() source.Span { return m.Span }

// Head is the part of the statement before its block.
func (s *Statement) Head() source.Span {
	end := s.Verb.End
	if n := len(s.Terms); n > 0 {
		end = s.Terms[n-1].Range().End
	}
	if n := len(s.Clauses); n > 0 {
		end = s.Clauses[n-1].End
	}
	return source.Span{Start: s.Start, End: end}
}

// Walk calls visit for the statement and all below it, outer first.
func (b *Block) Walk(visit func(*Statement)) {
	for _, s := range b.Statements {
		visit(s)
		if s.Body != nil {
			s.Body.Walk(visit)
		}
	}
}

// Comments calls visit for every comment of the block and below, in the order in
// which they stand.
func (b *Block) Comments(visit func(*Comment)) {
	for _, s := range b.Statements {
		for i := range s.Lead {
			visit(&s.Lead[i])
		}
		if s.Trail != nil {
			visit(s.Trail)
		}
		if s.Body != nil {
			s.Body.Comments(visit)
		}
	}
	for i := range b.Tail {
		visit(&b.Tail[i])
	}
	if b.Close != nil {
		visit(b.Close)
	}
}
