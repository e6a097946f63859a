package read

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// vesselFacts are what a vessel can say: of itself, and, where grain grows in it, of its bed
// as a floor.
var vesselFacts = func() table[model.Vessel] {
	t := table[model.Vessel]{
		"holds":  func(_ *builder, v *model.Vessel, r *filled) { v.Holds = r.slot(0).quantity() },
		"weighs": func(_ *builder, v *model.Vessel, r *filled) { v.Weighs = r.slot(0).quantity() },
	}
	for _, word := range bedFacts {
		set := floorFacts[word]
		t[word] = func(b *builder, v *model.Vessel, r *filled) {
			set(b, &v.Grows, r)
			b.beds[v] = append(b.beds[v], r)
		}
	}
	return t
}()

// bedFacts are the facts of a vessel that only a piece asks for.
var bedFacts = []string{"area", "airflow", vocabulary.FactFan, "heater", "cooler", vocabulary.FactReturns, "tumbles"}

func vesselName(v *model.Vessel) string { return v.Name }

// inVessels reads the vessels of a steep.
func (b *builder) inVessels(st *model.Steep, s *filled) {
	for _, part := range s.parts("in") {
		v := find(b, part[0], "vessel", b.house.Vessels, vesselName)
		switch {
		case v == nil:
		case slices.Contains(st.Vessels(), v):
			b.again(part[0].place, s.place, fmt.Sprintf("%q is given twice", v.Name))
		case st.Vessel == nil:
			st.Vessel = v
		default:
			st.More = append(st.More, v)
		}
	}
}

// inVessel reads the vessel that a piece grows in.
func (b *builder) inVessel(piece *model.Piece, s *filled) {
	switch {
	case s.has("in") && s.has("on"):
		f := twoOfAClause.At(s.place, fmt.Sprintf("%s is on a floor and in a vessel", s.Verb.Text))
		f.Hint = "keep the one that is meant"
		b.refuse(f)
		return
	case !s.has("in") && !s.has("on"):
		f := valueNeeded.At(s.place, fmt.Sprintf("%s needs on: where the piece lies; or in: the vessel it grows in", s.Verb.Text))
		f.Hint = "its form: " + vocabulary.Form(*s.row)
		b.refuse(f)
		return
	}
	if b.floorMeant(s) {
		return
	}
	v := find(b, s.clause("in", 0), "vessel", b.house.Vessels, vesselName)
	if v == nil {
		return
	}
	piece.In, piece.Floor = v, v.Bed()
	b.grownIn[v] = true
	if v.Grows.Area == nil {
		f := missingStatement.At(s.clause("in", 0).place, fmt.Sprintf("vessel %q needs area: grain grows in it", v.Name))
		f.Hint = "add a line such as: area 0.8 m2"
		f.Related = []finding.Related{{Place: v.Place, Message: "the vessel"}}
		b.note(f)
	}
}

// idleBeds notes facts of a vessel that only a piece asks for, where none grows in it. Its area
// is asked for by the rests of a steep too.
func (b *builder) idleBeds() {
	for _, v := range b.house.Vessels {
		if b.grownIn[v] || v.Place.File != b.main || !b.used[v] {
			continue
		}
		for _, r := range b.beds[v] {
			if r.Verb.Text == vocabulary.FactArea {
				continue
			}
			b.note(unusedDefinition.At(r.place, fmt.Sprintf("no process of this file grows grain in %q, so its %s says nothing", v.Name, r.Verb.Text)))
		}
	}
}

// floorMeant tells of a piece that is said to grow in what is a floor of that name.
func (b *builder) floorMeant(s *filled) bool {
	v := s.clause("in", 0)
	named := func(name string) bool { return v != nil && v.word == name }
	if slices.ContainsFunc(b.house.Vessels, func(x *model.Vessel) bool { return named(x.Name) }) || !slices.ContainsFunc(b.house.Floors, func(x *model.Floor) bool { return named(x.Name) }) {
		return false
	}
	i := slices.IndexFunc(s.Clauses, func(c *syntax.Clause) bool { return c.Word.Text == "in" })
	if i < 0 {
		return false
	}
	f := unknownName.At(v.place, fmt.Sprintf("%q is a floor, and no vessel", v.word))
	f.Repair(source.Place{File: v.place.File, Span: s.Clauses[i].Word.Span}, "on")
	f.Hint = fmt.Sprintf("write on %q", v.word)
	b.refuse(f)
	return true
}
