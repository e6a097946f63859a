package process

import (
	"fmt"

	"maltwright/lang/finding"
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
	g := &Grain{}
	g.Name, g.Place = r.name()
	b.facts(f, r, vocabulary.Grain, map[string]func(*reading){
		"species":  func(s *reading) { g.Species = s.slot(0).chosen() },
		"moisture": func(s *reading) { g.Moisture = b.moisture(s.slot(0).quantity(), b.house.Limits) },
		"germination": func(s *reading) {
			if t, ok := b.germination(s); ok {
				g.Germination = append(g.Germination, t)
			}
		},
		"protein": func(s *reading) {
			g.Protein = b.checked(s.slot(0).quantity(), 0.04, 0.25, "a protein", "4 to 25 %")
		},
		"corn-weight": func(s *reading) {
			g.CornWeight = b.checked(s.slot(0).quantity(), 0.001, 0.5, "a weight of a thousand corns", "1 to 500 g")
		},
		"treated": func(s *reading) { g.Treated = s.slot(0).chosen() },
		"ergot":   func(s *reading) { g.Ergot = s.slot(0).chosen() },
		"mould":   func(s *reading) { g.Mould = s.slot(0).chosen() },
	})
	b.house.Grains = append(b.house.Grains, g)
}

func (b *builder) germination(s *reading) (Germination, bool) {
	share := b.checked(s.slot(0).quantity(), 0, 1, "a share", "0 to 100 %")
	if share == nil {
		return Germination{}, false
	}
	t := Germination{Place: s.place, Share: *share, Water: s.clause("at", 0).quantity()}
	t.Corns = b.checked(s.clause("of", 0).quantity(), 1, 1e6, "a count", "1 to 1,000,000 corns")
	if on := s.clause("on", 0); on != nil {
		w := on.chosen()
		t.On = &w
	}
	return t, true
}

func (b *builder) site(f *source.File, r *reading) {
	s := &Site{}
	s.Name, s.Place = r.name()
	b.facts(f, r, vocabulary.Site, map[string]func(*reading){
		"air":      func(st *reading) { s.Air = b.band(st, celsius(-30), celsius(50), "room air", "-30 to 50 °C") },
		"humidity": func(st *reading) { s.Humidity = b.humidity(st) },
		"water":    func(st *reading) { s.Water = b.band(st, celsius(0), celsius(60), "water", "0 to 60 °C") },
		"altitude": func(st *reading) {
			s.Altitude = b.checked(st.slot(0).quantity(), -430, 5000, "a height above the sea", "-430 to 5000 m")
		},
		"awake": func(st *reading) {
			if v := st.slot(0); v != nil {
				s.Awake = &Clock{v.clock[0], v.clock[1], v.place}
			}
		},
	})
	b.house.Sites = append(b.house.Sites, s)
}

// band reads the range of a fact and checks both its ends.
func (b *builder) band(s *reading, low, high float64, what, interval string) *Range {
	r := b.upright(s.slot(0))
	if r == nil || r.Low.SI >= low && r.High.SI <= high {
		return r
	}
	b.refuse(outOfRange.At(r.Place, fmt.Sprintf("%s of %s is outside %s", what, r, interval)))
	return nil
}

func (b *builder) humidity(s *reading) *Range {
	return b.band(s, 0.01, 1, "a relative humidity", "1 to 100 %")
}

func celsius(t float64) float64 { return t + 273.15 }

func (b *builder) vessel(f *source.File, r *reading) {
	v := &Vessel{}
	v.Name, v.Place = r.name()
	b.facts(f, r, vocabulary.Vessel, map[string]func(*reading){
		"holds": func(s *reading) { v.Holds = b.positive(s.slot(0).quantity(), "a volume") },
	})
	b.house.Vessels = append(b.house.Vessels, v)
}

func (b *builder) floor(f *source.File, r *reading) {
	v := &Floor{}
	v.Name, v.Place = r.name()
	b.facts(f, r, vocabulary.Floor, map[string]func(*reading){
		"area": func(s *reading) { v.Area = b.positive(s.slot(0).quantity(), "an area") },
	})
	b.house.Floors = append(b.house.Floors, v)
}

// positive reports a quantity that is not above nothing and drops it.
func (b *builder) positive(q *Quantity, what string) *Quantity {
	if q == nil || q.SI > 0 {
		return q
	}
	b.refuse(outOfRange.At(q.Place, fmt.Sprintf("%s of %s; it is more than nothing", what, q)))
	return nil
}

func (b *builder) kiln(f *source.File, r *reading) {
	k := &Kiln{}
	k.Name, k.Place = r.name()
	b.facts(f, r, vocabulary.KilnFacts, map[string]func(*reading){
		"area":    func(s *reading) { k.Area = b.positive(s.slot(0).quantity(), "an area") },
		"airflow": func(s *reading) { k.Airflow = b.positive(s.slot(0).quantity(), "an airflow") },
		"reaches": func(s *reading) { k.Reaches = b.band(s, celsius(-20), celsius(300), "kiln air", "-20 to 300 °C") },
		"heater":  func(s *reading) { k.Heater = b.positive(s.slot(0).quantity(), "a power") },
		"fired": func(s *reading) {
			k.Fired = s.slot(0).chosen()
			k.Flue = s.clause("by", 0).chosen()
			k.Direct = k.Flue.Text == "direct"
		},
		"draught": func(s *reading) { k.Draught = s.slot(0).chosen() },
		"returns": func(s *reading) {
			k.Returns = b.checked(s.slot(0).quantity(), 0, 0.95, "a share of the air", "0 to 95 %")
		},
	})
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
	for _, d := range b.house.definitions() {
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

func (h *House) definitions() []definition {
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
	for _, d := range b.house.definitions() {
		if d.kind != "process" && d.kind != "batch" && d.place.File == b.main && !b.used[d.of] {
			b.note(unusedDefinition.At(d.place, fmt.Sprintf("no process of this file uses %s %q", d.kind, d.name)))
		}
	}
}
