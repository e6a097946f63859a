package read

import (
	"fmt"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/nearest"
	"maltwright/lang/quantity"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// limits reads a limits block.
func (b *builder) limits(r *filled) []model.Limit {
	var list []model.Limit
	rd := &statementReader{file: r.place.File, found: &b.found, in: vocabulary.Limits, home: b.home}
	for _, s := range r.Body.Statements {
		if l, ok := b.limit(rd, s); ok {
			list = append(list, l)
			b.note(limitsChanged.At(l.Place, fmt.Sprintf("%s is moved to %s", l.Word, l.Bound)))
		}
	}
	return list
}

// limit reads one threshold. Its words are a table of their own, so that a rule
// can add one without a row of the vocabulary.
func (b *builder) limit(r *statementReader, s *syntax.Statement) (model.Limit, bool) {
	if s.Broken {
		return model.Limit{}, false
	}
	names := vocabulary.LimitNames()
	i := slices.IndexFunc(names, func(l vocabulary.Limit) bool { return l.Word == s.Verb.Text })
	if i < 0 {
		words := make([]string, len(names))
		for k := range names {
			words[k] = names[k].Word
		}
		f := unknownWord.At(r.at(s.Verb.Span), fmt.Sprintf("%q is no threshold of the house", s.Verb.Text))
		f.Hint = "known: " + quoted(words)
		if meant, ok := nearest.Word(s.Verb.Text, words); ok {
			f.AskOnly(f.Place, meant, certain(s.Verb.Text, words))
		}
		r.note(f)
		return model.Limit{}, false
	}
	slot := vocabulary.Slot{Kind: vocabulary.Amount, Label: names[i].Word, Dims: []quantity.Dimension{names[i].Dim}, Bound: true}
	got := r.slots([]vocabulary.Slot{slot}, s.Terms, s.Verb)
	if got[0] == nil {
		return model.Limit{}, false
	}
	bound := quantity.Bound{Op: names[i].Op, Range: got[0].rng}
	if got[0].op != nil && *got[0].op != names[i].Op {
		r.note(boundUnexpected.At(got[0].place, fmt.Sprintf("%s is a threshold of the kind %q", names[i].Word, names[i].Op)))
		return model.Limit{}, false
	}
	if !b.makesSense(names[i].Sense, got[0]) {
		return model.Limit{}, false
	}
	return model.Limit{Word: names[i].Word, Bound: bound, Place: r.at(s.Head())}, true
}
