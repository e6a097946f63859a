package read

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/nearest"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// process builds one process and then looks at it as a whole.
func (b *builder) process(f *source.File, r *reading) {
	p := &model.Process{Scope: r.scope(f), House: b.house, Limits: b.house.Limits}
	p.Name, p.Place = r.name()
	b.house.Processes = append(b.house.Processes, p)
	if r.Body == nil {
		p.Broken = true
		return
	}
	before := len(b.house.Accepts)
	whole := b.block(f, r.Body, vocabulary.Process, r.scope(f), r.place, func(s *reading) {
		if do := processStatements[s.Verb.Text]; do != nil {
			do(b, f, p, s)
		}
	})
	b.unread[p] = !whole
	p.Broken = p.Broken || !whole // a stage may have found it broken already
	p.Accepts = b.house.Accepts[before:]
	b.sense(p)
}

// processStatements builds what stands in a process, by its word.
var processStatements = map[string]func(*builder, *source.File, *model.Process, *reading){
	"make": func(b *builder, f *source.File, p *model.Process, s *reading) {
		p.Make = s.slot(0).chosen()
		if p.Make.Text == "crystal" {
			p.Make.Text = "caramel"
		}
	},
	"from": func(b *builder, f *source.File, p *model.Process, s *reading) {
		p.Charge = s.slot(0).quantity()
		p.Grain = find(b, s.clause("of", 0), "grain", b.house.Grains, func(g *model.Grain) string { return g.Name })
	},
	"at": func(b *builder, f *source.File, p *model.Process, s *reading) {
		b.siteNamed[p] = true
		p.Site = find(b, s.slot(0), "site", b.house.Sites, func(g *model.Site) string { return g.Name })
	},
	"expect": func(b *builder, f *source.File, p *model.Process, s *reading) {
		if v := s.slot(0); v != nil && v.condition != nil {
			p.Expect = append(p.Expect, *v.condition)
		}
	},
	"limits": func(b *builder, f *source.File, p *model.Process, s *reading) {
		if s.Body != nil {
			p.Limits = append(append([]model.Limit(nil), p.Limits...), b.limits(f, s)...)
		}
	},
	"steep": (*builder).steep, "germinate": (*builder).germinate, "wither": (*builder).wither,
	"kiln": (*builder).kilnStage, "deculm": (*builder).deculm, "store": (*builder).store,
}

// find resolves a name among the definitions of one kind and notes that it is used,
// as is the one that a wrong name is nearest to, so that it is not called unused as
// well.
func find[T any](b *builder, v *value, kind string, among []*T, name func(*T) string) *T {
	found, meant := lookUp(b, v, kind, among, name)
	for _, d := range []*T{found, meant} {
		if d != nil {
			b.used[d] = true
		}
	}
	return found
}

// lookUp resolves a name among the definitions of one kind. It reports one that
// nothing has, and gives the definition that is nearest to it.
func lookUp[T any](b *builder, v *value, kind string, among []*T, name func(*T) string) (found, near *T) {
	if v == nil || v.word == "" && !v.place.Known() {
		return nil, nil
	}
	names := make([]string, len(among))
	for i, d := range among {
		names[i] = name(d)
		if names[i] == v.word {
			return d, nil
		}
	}
	f := unknownName.At(v.place, fmt.Sprintf("no %s is called %q", kind, v.word))
	meant, ok := b.nearest(v.word, names)
	if !ok && b.lost {
		return nil, nil // the file that could not be brought in may define it
	}
	if ok {
		near = among[slices.Index(names, meant)]
		f.Hint = fmt.Sprintf("did you mean %q?", meant)
	} else if len(names) > 0 {
		f.Hint = "known: " + quotedNames(names)
	} else {
		f.Hint = fmt.Sprintf("define it with %s %q { … }, or bring its definition in with use", kind, v.word)
	}
	b.note(f)
	return nil, near
}

// mostSought and mostNames keep a file of thousands of names from taking minutes.
const (
	mostSought = 20 // names for which the nearest is looked for
	mostNames  = 8  // names listed in a hint
)

func (b *builder) nearest(name string, among []string) (string, bool) {
	if b.sought++; b.sought > mostSought {
		return "", false
	}
	return nearest.Word(name, among)
}

func quotedNames(names []string) string {
	more := ""
	if n := len(names) - mostNames; n > 0 {
		names, more = names[:mostNames], fmt.Sprintf(" and %d more", n)
	}
	out := make([]string, len(names))
	for i, name := range names {
		out[i] = strconv.Quote(name)
	}
	if more != "" {
		return strings.Join(out, ", ") + more
	}
	return quoted(out)
}

// stage begins a stage and puts it into the process.
func (b *builder) stage(p *model.Process, kind model.StageKind, s *reading) *model.Stage {
	st := &model.Stage{Kind: kind, Place: s.place}
	b.unread[st] = !s.whole
	p.Stages = append(p.Stages, st)
	return st
}

// stageBlock reads the block of a stage by a table of what each statement sets. It
// notes in unread that some of it did not read.
func (b *builder) stageBlock(f *source.File, p *model.Process, s *reading, in vocabulary.Block, of any, set map[string]func(*reading)) {
	if s.Body == nil {
		b.unread[of] = true
		return
	}
	if !b.block(f, s.Body, in, s.scope(f), s.place, func(r *reading) {
		if do := set[r.Verb.Text]; do != nil {
			do(r)
		}
	}) {
		p.Broken, b.unread[of] = true, true
	}
}

func (b *builder) steep(f *source.File, p *model.Process, s *reading) {
	st := b.stage(p, model.Steep, s)
	st.Vessel = find(b, s.clause("in", 0), "vessel", b.house.Vessels, func(v *model.Vessel) string { return v.Name })
	st.Target = b.upright(s.clause("to", 1))
	if st.Target != nil {
		if b.moisture(&model.Quantity{Quantity: st.Target.High, Place: st.Target.Place}, p.Limits) == nil {
			st.Target = nil
		}
	}
	b.stageBlock(f, p, s, vocabulary.Steep, st, b.steepWords(f, p, &st.Steps, st))
}

// steepWords is what may stand in a steep, or in a repeat inside it.
func (b *builder) steepWords(f *source.File, p *model.Process, steps *[]*model.Step, st *model.Stage) map[string]func(*reading) {
	add := func(s *model.Step) { *steps = append(*steps, s) }
	words := map[string]func(*reading){
		"soak": func(r *reading) { add(b.wetStep(r, model.Soak)) },
		"rest": func(r *reading) { add(b.wetStep(r, model.Rest)) },
		"gate": func(r *reading) { add(b.gate(r)) },
		"repeat": func(r *reading) {
			s := b.step(r, model.Repeat)
			s.Times = b.times(r.slot(0))
			b.unread[s] = b.unread[s] || r.slot(0) != nil && s.Times == nil
			b.timesBound(s, r.slot(0))
			add(s)
			b.stageBlock(f, p, r, vocabulary.Repeat, s, b.steepWords(f, p, &s.Steps, nil))
		},
	}
	if st != nil {
		words["until"] = func(r *reading) { st.Until = r.slot(0).holds() }
	}
	return words
}

func (b *builder) germinate(f *source.File, p *model.Process, s *reading) {
	st := b.growing(p, model.Germinate, s)
	b.stageBlock(f, p, s, vocabulary.Germinate, st, b.growingWords(st, map[string]func(*reading){
		"hold": func(r *reading) { st.Steps = append(st.Steps, b.step(r, model.Hold)) },
		"gate": func(r *reading) { st.Steps = append(st.Steps, b.gate(r)) },
		"sprinkle": func(r *reading) {
			water, often := b.positive(r.slot(0).quantity(), "an amount of water"), b.interval(r)
			if water != nil && often != nil {
				st.Sprinkle = &model.Sprinkle{Water: *water, Every: *often}
			}
		},
	}))
}

func (b *builder) wither(f *source.File, p *model.Process, s *reading) {
	st := b.growing(p, model.Wither, s)
	b.stageBlock(f, p, s, vocabulary.Wither, st, b.growingWords(st, map[string]func(*reading){
		"air":  func(r *reading) { st.Air = b.warmth(r.clause("at", 0)) },
		"gate": func(r *reading) { st.Steps = append(st.Steps, b.gate(r)) },
	}))
}

// growing begins a stage on the floor, with the clauses of its head.
func (b *builder) growing(p *model.Process, kind model.StageKind, s *reading) *model.Stage {
	st := b.stage(p, kind, s)
	st.Floor = find(b, s.clause("on", 0), "floor", b.house.Floors, func(v *model.Floor) string { return v.Name })
	st.Until, st.Allow, st.For = s.clause("until", 0).holds(), b.guard(s.clause("allow", 0)), b.positive(s.clause("for", 0).quantity(), "a time")
	return st
}

func (b *builder) growingWords(st *model.Stage, own map[string]func(*reading)) map[string]func(*reading) {
	own["turn"] = func(r *reading) { st.Turn = b.interval(r) }
	own["humidity"] = func(r *reading) { st.Humidity = b.upright(r.slot(0)) }
	own["until"] = func(r *reading) {
		if st.Until != nil {
			b.headToo(r, st, st.Until.Place)
		}
		st.Until = r.slot(0).holds()
	}
	own["allow"] = func(r *reading) {
		if st.Allow != nil {
			b.headToo(r, st, st.Allow.Place)
		}
		st.Allow = b.guard(r.slot(0))
	}
	own["for"] = func(r *reading) {
		if st.For != nil {
			b.headToo(r, st, st.For.Place)
		}
		st.For = b.positive(r.slot(0).quantity(), "a time")
	}
	return own
}

// headToo reports what the block of a stage says and its head has said before.
func (b *builder) headToo(r *reading, st *model.Stage, before source.Place) {
	if before.Start < r.place.Start && before.End <= st.Place.End {
		b.again(r.place, before, fmt.Sprintf("%s of %s is given in its head already", r.Verb.Text, st.Kind))
	}
}

func (b *builder) kilnStage(f *source.File, p *model.Process, s *reading) {
	st := b.stage(p, model.KilnStage, s)
	st.Kiln = find(b, s.clause("in", 0), "kiln", b.house.Kilns, func(k *model.Kiln) string { return k.Name })
	add := func(step *model.Step) { st.Steps = append(st.Steps, step) }
	b.stageBlock(f, p, s, vocabulary.Kiln, st, map[string]func(*reading){
		"dry":  func(r *reading) { add(b.step(r, model.Dry)) },
		"stew": func(r *reading) { add(b.step(r, model.Stew)) },
		"cure": func(r *reading) { add(b.step(r, model.Cure)) },
		"cool": func(r *reading) { add(b.step(r, model.Cool)) },
		"gate": func(r *reading) { add(b.gate(r)) },
		"stir": func(r *reading) { st.Turn = b.interval(r) },
	})
}

func (b *builder) deculm(f *source.File, p *model.Process, s *reading) {
	b.stage(p, model.Deculm, s).Within = b.positive(s.clause("within", 0).quantity(), "a time")
}

func (b *builder) store(f *source.File, p *model.Process, s *reading) {
	st := b.stage(p, model.Store, s)
	if v := s.clause("in", 0); v != nil {
		w := v.chosen()
		st.Keep = &w
	}
	if v := s.clause("for", 0); v != nil {
		st.Rest, st.RestAt = v.bound(), v.place
		b.restBound(v)
	}
}
