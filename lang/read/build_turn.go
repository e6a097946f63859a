package read

import (
	"fmt"
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

const (
	clauseEvery  = "every"
	clauseAt     = "at"
	clauseOver   = "over"
	clauseFrom   = "from"
	clauseFor    = "for"
	clauseOf     = "of"
	clauseAllow  = "allow"
	clauseUntil  = "until"
	clauseWithin = "within"
)

// turns reads when a piece is turned: at even intervals, or at times of day, of which the
// mean interval is given as well.
func (b *builder) turns(r *filled) (every *model.Quantity, at *model.Daily) {
	switch {
	case r.has(clauseEvery) && r.has(clauseAt):
		f := twoOfAClause.At(r.place, fmt.Sprintf("%s is given an interval and times of day", r.Verb.Text))
		f.Hint = "keep the one that is meant"
		b.refuse(f)
		return nil, nil
	case r.has(clauseAt):
		return b.timesOfDay(r)
	case !r.has(clauseEvery) && !r.whole:
		b.dropped++
		return nil, nil
	case !r.has(clauseEvery):
		f := valueNeeded.At(r.place, fmt.Sprintf("%s needs how often: every with a time, or at with times of day", r.Verb.Text))
		f.Hint = "its form: " + vocabulary.Form(*r.row)
		b.refuse(f)
		return nil, nil
	}
	return b.interval(r), nil
}

func (b *builder) timesOfDay(r *filled) (*model.Quantity, *model.Daily) {
	d := &model.Daily{}
	for _, part := range r.parts(clauseAt) {
		v := part[0]
		if v == nil {
			continue
		}
		second := v.clock[0]
		if slices.Contains(d.At, second) {
			b.again(v.place, d.Head, fmt.Sprintf("%s is given twice", v.place.Text()))
			continue
		}
		d.At = append(d.At, second)
		if !d.Head.Known() {
			d.Head = v.place
		}
		d.Head = source.Place{File: d.Head.File, Span: d.Head.Join(v.place.Span)}
	}
	if len(d.At) == 0 {
		return nil, nil
	}
	slices.Sort(d.At)
	mean, err := quantity.In(24*3600/float64(len(d.At)), "h")
	if err != nil || mean.SI < model.LeastInterval {
		b.refuse(intervalTooShort.At(d.Head, fmt.Sprintf("%d times a day are more often than anything is turned", len(d.At))))
		return nil, nil
	}
	return &model.Quantity{Quantity: mean, Place: d.Head}, d
}
