package read

import (
	"fmt"
	"math"
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

// learnt builds what a house has learnt. It waits until all lots and kilns are known,
// since it names them. Of several blocks the first holds.
func (b *builder) learnt(r *filled) {
	l := &model.Learnt{}
	l.Name, l.Place = r.name()
	if first := b.house.Learnt; first != nil {
		b.again(l.Place, first.Place, "a second house block: there may be only one")
		return
	}
	b.house.Learnt = l
	facts(b, r, vocabulary.House, l, learntFacts)
}

var learntFacts = table[model.Learnt]{
	"growth":      func(b *builder, l *model.Learnt, s *filled) { l.Growth = b.factor(s) },
	"respiration": func(b *builder, l *model.Learnt, s *filled) { l.Respiration = b.factor(s) },
	"withering":   func(b *builder, l *model.Learnt, s *filled) { l.Withering = b.factor(s) },
	"uptake":      ofLot("uptake", func(l *model.Learnt) *[]model.GrainFactor { return &l.Uptake }, (*model.Learnt).UptakeOf),
	"husk-water":  ofLot("husk-water", func(l *model.Learnt) *[]model.GrainFactor { return &l.HuskWater }, (*model.Learnt).HuskWaterOf),
	"chit":        ofLot("chit", func(l *model.Learnt) *[]model.GrainFactor { return &l.Chit }, (*model.Learnt).ChitOf),
	"drying":      (*builder).dryingOf,
	"thermometer": func(b *builder, l *model.Learnt, s *filled) { l.Thermometer = b.thermometer(s) },
}

// ofLot reads a factor of a lot into its list, unless the lot has one.
func ofLot(what string, list func(*model.Learnt) *[]model.GrainFactor, known func(*model.Learnt, *model.Grain) *model.Factor) func(*builder, *model.Learnt, *filled) {
	return func(b *builder, l *model.Learnt, s *filled) {
		factor := b.factor(s)
		g, _ := lookUp(b, s.clause("of", 0), "grain", b.house.Grains, func(g *model.Grain) string { return g.Name })
		if first := known(l, g); first != nil {
			b.again(s.place, first.Place, fmt.Sprintf("%s of %q is given twice in this block", what, g.Name))
		} else if factor != nil && g != nil {
			*list(l) = append(*list(l), model.GrainFactor{Factor: *factor, Grain: g})
		}
	}
}

func (b *builder) dryingOf(l *model.Learnt, s *filled) {
	factor := b.factor(s)
	k, _ := lookUp(b, s.clause("of", 0), "kiln", b.house.Kilns, func(k *model.Kiln) string { return k.Name })
	if first := l.DryingOf(k); first != nil {
		b.again(s.place, first.Place, fmt.Sprintf("drying of %q is given twice in this block", k.Name))
	} else if factor != nil && k != nil {
		l.Drying = append(l.Drying, model.KilnFactor{Factor: *factor, Kiln: k})
	}
}

// factor reads a factor and its error, nil where either cannot be.
func (b *builder) factor(s *filled) *model.Factor {
	value := b.checked(s.slot(0).quantity(), model.LeastFactor, model.MostFactor, "a factor", "0.2 to 5")
	of := b.positive(s.clause("error", 0).quantity(), "an error")
	switch {
	case value == nil || of == nil && s.has("error"):
		return nil
	case of != nil && of.SI > value.SI:
		b.refuse(outOfRange.At(of.Place, fmt.Sprintf("an error of %s is more than the factor itself, %s", of, value)))
		return nil
	}
	f := &model.Factor{Value: *value, Error: of, Place: s.place, Batches: b.batches(s)}
	if f.Scatter = b.positive(s.clause("scatter", 0).quantity(), "a scatter"); f.Scatter != nil && f.Scatter.SI > value.SI {
		b.refuse(outOfRange.At(f.Scatter.Place, fmt.Sprintf("a scatter of %s is more than the factor itself, %s", f.Scatter, value)))
		return nil
	}
	return f
}

// mostBatches is the most that a figure may rest on: more than a house malts in a life.
const mostBatches = 100_000

// batches reads how many batches a figure rests on, 0 where it is not said.
func (b *builder) batches(s *filled) int {
	n := b.checked(s.clause("batches", 0).quantity(), 1, mostBatches, "a number of batches", "1 to 100,000")
	if n == nil {
		return 0
	}
	if n.SI != math.Trunc(n.SI) {
		b.refuse(outOfRange.At(n.Place, fmt.Sprintf("%s batches; it is a whole number", n)))
		return 0
	}
	return int(n.SI)
}

// mostOff is the most that a thermometer shows wrong before it is thrown away, K.
const mostOff = 10.0

func (b *builder) thermometer(s *filled) *model.Factor {
	value := b.off(s.slot(0).quantity(), -mostOff, "a difference")
	of := b.off(b.positive(s.clause("error", 0).quantity(), "an error"), 0, "an error")
	if value == nil || of == nil && s.has("error") {
		return nil
	}
	return &model.Factor{Value: *value, Error: of, Place: s.place, Batches: b.batches(s)}
}

// off checks a difference of temperature that lies between low and mostOff, K, and tells
// the interval in the unit in which it is written.
func (b *builder) off(q *model.Quantity, low float64, what string) *model.Quantity {
	if q == nil {
		return nil
	}
	from := strings.TrimSuffix(q.Like(low), " "+q.Unit())
	return b.checked(q, low, mostOff, what, from+" to "+q.Like(mostOff))
}
