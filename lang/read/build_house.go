package read

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// name gives the quoted name of a definition and its place.
func (r *filled) name() (string, source.Place) {
	if v := r.slot(0); v != nil {
		return v.word, v.place
	}
	return "", r.place
}

// scope is the whole of a statement, with its block.
func (r *filled) scope() source.Place { return source.Place{File: r.place.File, Span: r.Span} }

// lot is a lot of grain whose weight of a thousand kernels waits for the species.
type lot struct {
	model.Grain
	weight *given
}

var grainFacts = table[lot]{
	"species":              func(_ *builder, g *lot, s *filled) { g.Species = s.slot(0).chosen() },
	vocabulary.FactAlready: func(_ *builder, g *lot, s *filled) { g.Already = s.slot(0).chosen() },
	"moisture":             func(b *builder, g *lot, s *filled) { g.Moisture = b.moistureOfLot(s.slot(0).quantity()) },
	"germination": func(b *builder, g *lot, s *filled) {
		if t, ok := b.germination(s); ok {
			g.Germination = append(g.Germination, t)
		}
	},
	"protein":       func(_ *builder, g *lot, s *filled) { g.Protein = s.slot(0).quantity() },
	"kernel-weight": func(_ *builder, g *lot, s *filled) { g.weight = s.slot(0) },
	"treated":       func(_ *builder, g *lot, s *filled) { g.Treated = s.slot(0).chosen() },
	"ergot":         func(_ *builder, g *lot, s *filled) { g.Ergot = s.slot(0).chosen() },
	"mould":         func(_ *builder, g *lot, s *filled) { g.Mould = s.slot(0).chosen() },
	"delivered":     delivered,
	"store":         func(_ *builder, g *lot, s *filled) { g.Store = s.clause("in", 0).chosen() },
}

func (b *builder) grain(r *filled) {
	g := &lot{}
	g.Name, g.Place = r.name()
	facts(b, r, vocabulary.Grain, g, grainFacts)
	g.KernelWeight = g.weight.quantity()
	b.ofItsKind(g.Species.Text, g.weight)
	b.house.Grains = append(b.house.Grains, &g.Grain)
}

// ofItsKind reports a weight of a thousand kernels that is out of the ordinary for its
// species.
func (b *builder) ofItsKind(species string, weight *given) {
	s := senseIn(vocabulary.Grain, "kernel-weight")
	if usual, ok := s.UsualOf(species); ok && weight != nil && !within(usual, weight.rng) {
		b.unusual(s, usual, weight, " for "+species)
	}
}

func (b *builder) germination(s *filled) (model.GerminationTest, bool) {
	share := s.slot(0).quantity()
	if share == nil {
		return model.GerminationTest{}, false
	}
	t := model.GerminationTest{Place: s.place, Share: *share, Water: s.clause("at", 0).quantity()}
	t.Kernels = s.clause("of", 0).quantity()
	t.On = s.clause("on", 0).chosen()
	return t, true
}

var siteFacts = table[model.Site]{
	"air":      func(b *builder, s *model.Site, r *filled) { s.Air = b.upright(r.slot(0)) },
	"humidity": func(b *builder, s *model.Site, r *filled) { s.Humidity = b.upright(r.slot(0)) },
	"water":    func(b *builder, s *model.Site, r *filled) { s.Water = b.upright(r.slot(0)) },
	"altitude": func(_ *builder, s *model.Site, r *filled) { s.Altitude = r.slot(0).quantity() },
	"awake":    (*builder).awake, "away": (*builder).daysAway,
}

func (b *builder) site(r *filled) {
	s := &model.Site{}
	s.Name, s.Place = r.name()
	facts(b, r, vocabulary.Site, s, siteFacts)
	b.shiftSense(s)
	b.house.Sites = append(b.house.Sites, s)
}

func (b *builder) vessel(r *filled) {
	v := &model.Vessel{}
	v.Name, v.Place = r.name()
	facts(b, r, vocabulary.Vessel, v, vesselFacts)
	b.together(vocabulary.VesselWeight, v.Weighs, v.Holds)
	b.house.Vessels = append(b.house.Vessels, v)
}

var floorFacts = table[model.Floor]{
	"area":    func(_ *builder, v *model.Floor, r *filled) { v.Area = r.slot(0).quantity() },
	"weighs":  func(_ *builder, v *model.Floor, r *filled) { v.Weighs = r.slot(0).quantity() },
	"airflow": func(_ *builder, v *model.Floor, r *filled) { v.Airflow = r.slot(0).quantity() },
	"heater": func(_ *builder, v *model.Floor, r *filled) {
		v.Heater, v.Efficiency = r.slot(0).quantity(), r.clause("at", 0).quantity()
	},
	vocabulary.FactFan:     func(_ *builder, v *model.Floor, r *filled) { v.FanPower = r.slot(0).quantity() },
	"cooler":               func(_ *builder, v *model.Floor, r *filled) { v.Cooler = r.slot(0).quantity() },
	vocabulary.FactReturns: func(_ *builder, v *model.Floor, r *filled) { v.Returns = r.slot(0).quantity() },
	"tumbles":              func(_ *builder, v *model.Floor, r *filled) { v.Tumbles = r.slot(0).chosen() },
}

func (b *builder) floor(r *filled) {
	v := &model.Floor{}
	v.Name, v.Place = r.name()
	facts(b, r, vocabulary.Floor, v, floorFacts)
	b.floorProportions(v)
	b.together(vocabulary.TrayWeight, v.Weighs, v.Area)
	b.house.Floors = append(b.house.Floors, v)
}

// positive reports a quantity that is not above nothing and drops it.
func (b *builder) positive(q *model.Quantity, what string) *model.Quantity {
	if q == nil || q.SI > 0 {
		return q
	}
	b.refuse(outOfRange.At(q.Place, fmt.Sprintf("%s of %s; it is more than nothing", what, q)))
	return nil
}

var scaleFacts = table[model.Scale]{
	"division": func(_ *builder, s *model.Scale, r *filled) { s.Division = r.slot(0).quantity() },
	"holds":    func(_ *builder, s *model.Scale, r *filled) { s.Holds = r.slot(0).quantity() },
}

func (b *builder) scale(r *filled) {
	s := &model.Scale{}
	s.Name, s.Place = r.name()
	facts(b, r, vocabulary.Scale, s, scaleFacts)
	b.together(vocabulary.ScaleMarks, s.Holds, s.Division)
	b.house.Scales = append(b.house.Scales, s)
}

func (b *builder) houseLimits(r *filled) {
	if r.Body != nil {
		b.house.Limits = append(b.house.Limits, b.limits(r)...)
	}
}

// sameNames reports two definitions of one kind under one name.
func (b *builder) sameNames() {
	seen := map[string]source.Place{}
	for _, d := range definitionsIn(b.house) {
		key := d.kind + "\x00" + d.name
		if first, ok := seen[key]; ok && d.name != "" {
			f := nameUsedTwice.At(d.place, fmt.Sprintf("another %s is already called %q", d.kind, d.name))
			f.Related = []finding.Related{{Place: first, Message: "the first is here"}}
			b.note(f)
			continue
		}
		seen[key] = d.place
	}
}

type definition struct {
	kind, name string
	place      source.Place
	of         any
}

func definitionsIn(h *model.House) []definition {
	var list []definition
	for _, d := range h.Grains {
		list = append(list, definition{"grain", d.Name, d.Place, d})
	}
	for _, d := range h.Sites {
		list = append(list, definition{"site", d.Name, d.Place, d})
	}
	for _, d := range h.Vessels {
		list = append(list, definition{"vessel", d.Name, d.Place, d})
	}
	for _, d := range h.Floors {
		list = append(list, definition{"floor", d.Name, d.Place, d})
	}
	for _, d := range h.Kilns {
		list = append(list, definition{"kiln", d.Name, d.Place, d})
	}
	for _, d := range h.Scales {
		list = append(list, definition{"scale", d.Name, d.Place, d})
	}
	for _, d := range h.Processes {
		list = append(list, definition{"process", d.Name, d.Place, d})
	}
	for _, d := range h.Batches {
		list = append(list, definition{"batch", d.Name, d.Place, d})
	}
	return list
}

// serves are the kinds of definition that are of no use where no process names them. A
// scale is not named: the weights of every process are shown as it shows them.
var serves = map[string]bool{"grain": true, "site": true, "vessel": true, "floor": true, "kiln": true}

// halfRead tells whether some of the main file did not read, in which a definition may be named.
func (b *builder) halfRead() bool {
	return b.misread || slices.ContainsFunc(b.found, func(f finding.Finding) bool {
		return f.Place.File == b.main && (undecided(&f) || f.Rule == wordOutOfPlace.Name)
	})
}

// unused notes definitions of the main file that none of its processes uses. A
// file without processes is a file of the house, and is left alone.
func (b *builder) unused() {
	if len(b.pending) == 0 || b.halfRead() || slices.ContainsFunc(b.house.Processes, func(p *model.Process) bool { return p.Broken }) {
		return // what did not read of a process may be what names it
	}
	b.idleBeds()
	for _, d := range definitionsIn(b.house) {
		if serves[d.kind] && d.place.File == b.main && !b.used[d.of] && !(b.weighedIn[d.name] && d.kind != "grain" && d.kind != "site") {
			b.note(unusedDefinition.At(d.place, fmt.Sprintf("no process of this file uses %s %q", d.kind, d.name)))
		}
	}
}
