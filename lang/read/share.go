package read

import (
	"fmt"
	"strconv"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// share says what to write for a number that stands where a share is wanted: 12.4 % for 0.124,
// 97 % of 200 kernels for 194/200, and 97 % for the 194 of 194 of 200.
func (r *statementReader) share(f *finding.Finding, a syntax.Amount) {
	if a.High != nil {
		low, top := quantity.Spell(a.Low.Parts[0].Number.Text), quantity.Spell(a.High.Parts[0].Number.Text)
		if rng, ok := between(low, top, ""); ok && rng.High.SI <= 1 && !strings.Contains(low+top, "/") {
			f.Write(f.Place, movePoint(low, 2)+" "+vocabulary.To+" "+movePoint(top, 2)+" %")
			return
		}
		f.Write(f.Place, f.Place.Text()+" %")
		return
	}
	number := quantity.Spell(a.Low.Parts[0].Number.Text)
	made, err := quantity.Make(a.Low.Written()...)
	if err != nil {
		return
	}
	top, bottom, fraction := strings.Cut(number, "/")
	row, _ := vocabulary.Lookup(r.in, r.verb)
	of, counts := countOf(row)
	switch said := r.saidOf(); {
	case fraction && counts && said == nil && made.SI <= 1 && !strings.Contains(top, " "):
		f.Write(f.Place, fmt.Sprintf("%s %s %s kernels", percent(made.SI), of.Word, bottom))
	case counts && !fraction && said != nil && made.SI > 1 && made.SI <= said.SI && said.SI > 0:
		f.Message = fmt.Sprintf("%s of %s is %s: a share is wanted here", number, said, percent(made.SI/said.SI))
		whole, of := f.Place, ""
		if clause := r.clauseOf(); clause != nil && clause.Start >= f.Place.End && strings.TrimSpace(string(r.file.Bytes()[f.Place.End:clause.Start])) == "" {
			whole.Span, of = f.Place.Join(clause.Span), " "+clauseOf+" "+trimmed(said.SI)+" kernels"
		}
		f.Write(whole, percent(made.SI/said.SI)+of)
		if made.SI <= 100 {
			f.Write(whole, percent(made.SI/said.SI)+of, number+" %"+of)
		}
	case fraction && made.SI <= 1:
		f.Write(f.Place, percent(made.SI))
	case fraction:
		f.Hint = "write it as a share of a hundred, such as 12.5 %"
	case made.SI > 0 && made.SI < 1:
		f.Write(f.Place, movePoint(number, 2)+" %")
	case made.SI == 1:
		f.Write(f.Place, "100 %", "1 %")
	default:
		f.Write(f.Place, number+" %")
	}
}

// percent writes a share of one in per cent.
func percent(share float64) string { return strconv.FormatFloat(100*share, 'g', 4, 64) + " %" }

func trimmed(n float64) string { return strconv.FormatFloat(n, 'f', -1, 64) }

// clauseOf is the clause of the statement that says of how many something was counted.
func (r *statementReader) clauseOf() *syntax.Clause {
	if r.statement == nil {
		return nil
	}
	for _, c := range r.statement.Clauses {
		if c.Word.Text == clauseOf && len(c.Terms) == 1 {
			return c
		}
	}
	return nil
}

// countOf is the clause of a row that says of how many something was counted.
func countOf(row *vocabulary.Row) (*vocabulary.Clause, bool) {
	if row == nil {
		return nil, false
	}
	c, ok := row.Clause(clauseOf)
	return c, ok && len(c.Slots) == 1 && takes(c.Slots[0], quantity.Count)
}

// saidOf is of how many the statement that is read says something was counted, nil where it
// does not.
func (r *statementReader) saidOf() *quantity.Quantity {
	c := r.clauseOf()
	if c == nil {
		return nil
	}
	if a, ok := c.Terms[0].(syntax.Amount); ok && a.High == nil {
		if q, err := value.Quantity(a.Low, nil); err == nil {
			return &q
		}
	}
	return nil
}
