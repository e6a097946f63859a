package read

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// definitions builds what stands at the top of a file, by its word.
var definitions = map[string]func(*builder, *source.File, *reading){
	"grain": (*builder).grain, "site": (*builder).site, "vessel": (*builder).vessel,
	"floor": (*builder).floor, "kiln": (*builder).kiln, "limits": (*builder).houseLimits,
}

// name gives the quoted name of a definition and its place.
func (r *reading) name() (string, source.Place) {
	if v := r.slot(0); v != nil {
		return v.word, v.place
	}
	return "", r.place
}

// facts reads the statements of a definition by a table of what each sets.
func (b *builder) facts(f *source.File, r *reading, in vocabulary.Block, set map[string]func(*reading)) {
	if r.Body == nil {
		return
	}
	b.block(f, r.Body, in, r.scope(f), r.place, func(s *reading) {
		if do := set[s.Verb.Text]; do != nil {
			do(s)
		}
	})
}

// scope is the whole of a statement, with its block.
func (r *reading) scope(f *source.File) source.Place { return source.Place{File: f, Span: r.Span} }

func (b *builder) grain(f *source.File, r *reading) {
	g := &model.Grain{}
	var weight *value
	g.Name, g.Place = r.name()
	b.facts(f, r, vocabulary.Grain, map[string]func(*reading){
		"species":  func(s *reading) { g.Species = s.slot(0).chosen() },
		"moisture": func(s *reading) { g.Moisture = b.moisture(s.slot(0).quantity(), b.house.Limits) },
		"germination": func(s *reading) {
			if t, ok := b.germination(s); ok {
				g.Germination = append(g.Germination, t)
			}
		},
		"protein":     func(s *reading) { g.Protein = s.slot(0).quantity() },
		"corn-weight": func(s *reading) { weight = s.slot(0) },
		"treated":     func(s *reading) { g.Treated = s.slot(0).chosen() },
		"ergot":       func(s *reading) { g.Ergot = s.slot(0).chosen() },
		"mould":       func(s *reading) { g.Mould = s.slot(0).chosen() },
	})
	g.CornWeight = weight.quantity()
	b.ofItsKind(g.Species.Text, weight)
	b.house.Grains = append(b.house.Grains, g)
}

// ofItsKind reports a weight of a thousand corns that is out of the ordinary for its
// species.
func (b *builder) ofItsKind(species string, weight *value) {
	s := senseIn(vocabulary.Grain, "corn-weight")
	if usual, ok := s.UsualOf(species); ok && weight != nil && !within(usual, weight.rng) {
		b.unusual(s, usual, weight, " for "+species)
	}
}

func (b *builder) germination(s *reading) (model.Germination, bool) {
	share := s.slot(0).quantity()
	if share == nil {
		return model.Germination{}, false
	}
	t := model.Germination{Place: s.place, Share: *share, Water: s.clause("at", 0).quantity()}
	t.Corns = s.clause("of", 0).quantity()
	if on := s.clause("on", 0); on != nil {
		w := on.chosen()
		t.On = &w
	}
	return t, true
}

func (b *builder) site(f *source.File, r *reading) {
	s := &model.Site{}
	s.Name, s.Place = r.name()
	b.facts(f, r, vocabulary.Site, map[string]func(*reading){
		"air":      func(st *reading) { s.Air = b.upright(st.slot(0)) },
		"humidity": func(st *reading) { s.Humidity = b.upright(st.slot(0)) },
		"water":    func(st *reading) { s.Water = b.upright(st.slot(0)) },
		"altitude": func(st *reading) { s.Altitude = st.slot(0).quantity() },
		"awake": func(st *reading) {
			if v := st.slot(0); v != nil {
				s.Awake = &model.Clock{From: v.clock[0], To: v.clock[1], Place: v.place}
				b.awakeSense(s.Awake)
			}
		},
	})
	b.house.Sites = append(b.house.Sites, s)
}

func (b *builder) vessel(f *source.File, r *reading) {
	v := &model.Vessel{}
	v.Name, v.Place = r.name()
	b.facts(f, r, vocabulary.Vessel, map[string]func(*reading){
		"holds": func(s *reading) { v.Holds = s.slot(0).quantity() },
	})
	b.house.Vessels = append(b.house.Vessels, v)
}

func (b *builder) floor(f *source.File, r *reading) {
	v := &model.Floor{}
	v.Name, v.Place = r.name()
	b.facts(f, r, vocabulary.Floor, map[string]func(*reading){
		"area": func(s *reading) { v.Area = s.slot(0).quantity() },
	})
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

func (b *builder) kiln(f *source.File, r *reading) {
	k := &model.Kiln{}
	k.Name, k.Place = r.name()
	b.facts(f, r, vocabulary.KilnFacts, map[string]func(*reading){
		"area":    func(s *reading) { k.Area = s.slot(0).quantity() },
		"airflow": func(s *reading) { k.Airflow = s.slot(0).quantity() },
		"reaches": func(s *reading) { k.Reaches = b.upright(s.slot(0)) },
		"heater":  func(s *reading) { k.Heater = s.slot(0).quantity() },
		"fired": func(s *reading) {
			k.Fired = s.slot(0).chosen()
			k.Flue = s.clause("by", 0).chosen()
			k.Direct = k.Flue.Text == "direct"
		},
		"draught": func(s *reading) { k.Draught = s.slot(0).chosen() },
		"returns": func(s *reading) { k.Returns = s.slot(0).quantity() },
	})
	b.kilnProportions(k)
	b.house.Kilns = append(b.house.Kilns, k)
}

func (b *builder) houseLimits(f *source.File, r *reading) {
	if r.Body != nil {
		b.house.Limits = append(b.house.Limits, b.limits(f, r)...)
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
	for _, d := range h.Processes {
		list = append(list, definition{"process", d.Name, d.Place, d})
	}
	for _, d := range h.Batches {
		list = append(list, definition{"batch", d.Name, d.Place, d})
	}
	return list
}

// unused notes definitions of the main file that none of its processes uses. A
// file without processes is a file of the house, and is left alone.
func (b *builder) unused() {
	if len(b.pending) == 0 {
		return
	}
	for _, d := range definitionsIn(b.house) {
		if d.kind != "process" && d.kind != "batch" && d.place.File == b.main && !b.used[d.of] {
			b.note(unusedDefinition.At(d.place, fmt.Sprintf("no process of this file uses %s %q", d.kind, d.name)))
		}
	}
}
