package read

import (
	"fmt"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// withMuch tells of each word that a step can be with what amount stands behind it, and
// whether it must.
var withMuch = map[string]struct {
	of   quantity.Dimension // Number for none
	must bool
}{
	vocabulary.WithAirflow: {quantity.Flow, true}, vocabulary.WithOverflow: {quantity.Flow, true}, vocabulary.WithSpray: {quantity.Flow, false},
	vocabulary.WithReturns: {quantity.Share, true},
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
		b.note(twoOfAClause.At(s.Airflow.Place, fmt.Sprintf("a soak with air gets as much as the water takes, so it cannot have %s too", s.Airflow)))
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

// heatWith reads what a step on the kiln is with.
func (b *builder) heatWith(s model.Step, r *filled) {
	h := model.HeatedOf(s)
	b.with(s, r, map[string]func(source.Place, *model.Quantity){
		vocabulary.WithAirflow: func(_ source.Place, q *model.Quantity) { h.Airflow = q },
		vocabulary.WithReturns: func(_ source.Place, q *model.Quantity) { h.Returns = q },
		vocabulary.WithSmoke:   func(source.Place, *model.Quantity) { h.Smoke = true },
	})
}

// with reads each thing that a step is with, once.
func (b *builder) with(s model.Step, r *filled, set map[string]func(source.Place, *model.Quantity)) {
	seen := map[string]bool{}
	for _, part := range r.parts("with") {
		what, much := part[0], part[1].quantity()
		if what == nil || set[what.word] == nil {
			continue
		}
		switch takes := withMuch[what.word]; {
		case seen[what.word]:
			b.again(what.place, r.place, fmt.Sprintf("%s is with %s twice", s.Kind(), what.word))
			continue
		case much == nil && takes.must && !r.whole: // what stands there was reported
			b.unread[s] = true
			continue
		case much == nil && takes.must:
			f := valueNeeded.At(what.place, fmt.Sprintf("%s needs how much (%s)", what.word, takes.of))
			f.Hint = fmt.Sprintf("such as with %s %s", what.word, withSample[what.word])
			b.note(f)
			b.unread[s] = true
			continue
		case much != nil && takes.of == quantity.Number:
			f := wordsTooMany.At(much.Place, fmt.Sprintf("%s has no place for %s", what.word, much.Place.Text()))
			if what.word == vocabulary.WithAir {
				f.Hint = fmt.Sprintf("write with %s %s", vocabulary.WithAirflow, much.Place.Text())
			}
			b.note(f)
			continue
		case much != nil && much.Dimension != takes.of:
			b.note(wrongDimension.At(much.Place, fmt.Sprintf("%s is %s, and %s takes %s", much.Place.Text(), withArticle(much.Dimension.String()), what.word, withArticle(takes.of.String()))))
			b.unread[s] = true
			continue
		}
		seen[what.word] = true
		set[what.word](what.place, much)
	}
}

// withSample is an amount of each word that needs one.
var withSample = map[string]string{vocabulary.WithAirflow: "15 m3/h", vocabulary.WithOverflow: "2 l/min", vocabulary.WithReturns: "50 %"}
