package read

import (
	"fmt"
	"slices"

	"maltwright/lang/quantity"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// saidFirst is the first clause of a word, as it is written.
func (r *statementReader) saidFirst(s *syntax.Statement, word string) string {
	i := slices.IndexFunc(s.Clauses, func(c *syntax.Clause) bool { return c.Word.Text == word })
	return r.at(s.Clauses[i].Span).Text()
}

// leadHint says where the time of a step stands, of a value that has no place behind its
// verb; "" where it is none.
func (r *statementReader) leadHint(a syntax.Amount, verb syntax.Word) string {
	row, ok := vocabulary.Lookup(r.in, verb.Text)
	if !ok || row.Leads == "" {
		return ""
	}
	text := r.at(a.Span).Text()
	rng, err := value.Range(a, []quantity.Dimension{quantity.Time, quantity.Number})
	switch {
	case err != nil:
		return ""
	case rng.Low.Dimension == quantity.Time:
		return fmt.Sprintf("a time stands right behind %s, or behind %s", verb.Text, row.Leads)
	}
	return fmt.Sprintf("%s lacks its unit", text)
}
