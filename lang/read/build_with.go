package read

import (
	"fmt"

	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// withFlow tells of each word of a soak or a rest whether an amount must or may stand behind it.
var withFlow = map[string]struct{ must, may bool }{
	vocabulary.WithAirflow: {true, true}, vocabulary.WithOverflow: {true, true}, vocabulary.WithSpray: {false, true},
}

// soakWith reads what a soak is with, and in how much water.
func (b *builder) soakWith(s *model.Soak, r *filled) {
	s.Water = b.positive(r.clause("in", 0).quantity(), "an amount of water")
	b.with(s, r, map[string]func(source.Place, *model.Quantity){
		vocabulary.WithAir:      func(source.Place, *model.Quantity) { s.Aerated = true },
		vocabulary.WithLime:     func(source.Place, *model.Quantity) { s.Limed = true },
		vocabulary.WithAirflow:  func(_ source.Place, q *model.Quantity) { s.Airflow = q },
		vocabulary.WithOverflow: func(_ source.Place, q *model.Quantity) { s.Overflow = q },
	})
	if s.Aerated && s.Airflow != nil {
		b.note(twoOfAClause.At(s.Airflow.Place, fmt.Sprintf("a soak with air has as much as the water takes, and %s is said as well", s.Airflow)))
		s.Airflow = nil
	}
}

// restWith reads what a rest is with.
func (b *builder) restWith(s *model.Rest, r *filled) {
	b.with(s, r, map[string]func(source.Place, *model.Quantity){
		vocabulary.WithAirflow: func(_ source.Place, q *model.Quantity) { s.Airflow = q },
		vocabulary.WithSpray: func(at source.Place, q *model.Quantity) {
			s.Spray = &model.Spray{Written: model.Written{Head: at}, Flow: q}
		},
	})
}

// with reads each thing that a step is with, once.
func (b *builder) with(s model.Step, r *filled, set map[string]func(source.Place, *model.Quantity)) {
	seen := map[string]bool{}
	for _, part := range r.parts("with") {
		what, flow := part[0], part[1].quantity()
		if what == nil || set[what.word] == nil {
			continue
		}
		switch takes := withFlow[what.word]; {
		case seen[what.word]:
			b.again(what.place, r.place, fmt.Sprintf("%s is with %s twice", s.Kind(), what.word))
			continue
		case flow == nil && takes.must:
			f := valueNeeded.At(what.place, fmt.Sprintf("%s needs how much (%s)", what.word, "flow"))
			f.Hint = fmt.Sprintf("such as with %s %s", what.word, withSample[what.word])
			b.note(f)
			b.unread[s] = true
			continue
		case flow != nil && !takes.may:
			f := wordsTooMany.At(flow.Place, fmt.Sprintf("%s has no place for %s", what.word, flow.Place.Text()))
			if what.word == vocabulary.WithAir {
				f.Hint = fmt.Sprintf("write with %s %s", vocabulary.WithAirflow, flow.Place.Text())
			}
			b.note(f)
			continue
		}
		seen[what.word] = true
		set[what.word](what.place, flow)
	}
}

// withSample is an amount of each word that needs one.
var withSample = map[string]string{vocabulary.WithAirflow: "15 m3/h", vocabulary.WithOverflow: "2 l/min"}
