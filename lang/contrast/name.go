package contrast

import (
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Name is the verb of a statement of a block and, where the statement has one, its quoted
// name or measure, the lot or kiln it is a figure of, or the vessel, floor or kiln of a stage.
func Name(s *syntax.Statement, in vocabulary.Block) string {
	if seat := seatOf(s, in); seat != "" {
		return name(s, in) + " " + seat
	}
	return name(s, in)
}

// seatOf is the vessel, floor or kiln of a stage, in quotes, "" for none.
func seatOf(s *syntax.Statement, in vocabulary.Block) string {
	row, known := vocabulary.Lookup(in, s.Verb.Text)
	if !known || in != vocabulary.Process || !row.Ordered || row.Opens == vocabulary.None {
		return ""
	}
	return named(s, row)
}

func name(s *syntax.Statement, in vocabulary.Block) string {
	key := s.Verb.Text
	row, known := vocabulary.Lookup(in, s.Verb.Text)
	if len(s.Terms) > 0 {
		switch t := s.Terms[0].(type) {
		case syntax.Text:
			key += " " + t.Value
		case syntax.Word:
			if known && row.By == vocabulary.ByValue {
				key += " " + t.Text
			}
		}
	}
	if f := figureOf(s, in); f != "" {
		key += " " + f
	}
	return key
}

// figureOf is the lot or kiln that a statement is a figure of, in quotes, "" for none.
func figureOf(s *syntax.Statement, in vocabulary.Block) string {
	row, known := vocabulary.Lookup(in, s.Verb.Text)
	if !known || row.By != vocabulary.ByName {
		return ""
	}
	return named(s, row)
}

// named is the definition that a statement names in a clause, in quotes, "" for none.
func named(s *syntax.Statement, row *vocabulary.Row) string {
	for _, def := range row.Clauses {
		if c := clause(s, def.Word); c != nil && def.Slots[0].Kind == vocabulary.Name {
			return saysIn(c.Terms, nil)
		}
	}
	return ""
}
