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
func (b *builder) process(r *filled) {
	p := &model.Process{Scope: r.scope(), House: b.house, Limits: b.house.Limits}
	p.Name, p.Place = r.name()
	b.house.Processes = append(b.house.Processes, p)
	if r.Body == nil {
		p.Broken = true
		return
	}
	before := len(b.house.Accepts)
	whole := fill(b, r.Body, vocabulary.Process, r.scope(), r.place, p, processStatements)
	b.mixture(p)
	b.unread[p] = !whole
	p.Broken = p.Broken || !whole // a stage may have found it broken already
	p.Accepts = b.house.Accepts[before:]
	b.bagSense(p.Bag, p.Charge)
	b.sense(p)
}

// processStatements builds what stands in a process, by its word.
var processStatements = table[model.Process]{
	"make": func(b *builder, p *model.Process, s *filled) {
		p.Make = s.slot(0).chosen()
		if p.Make.Text == vocabulary.MaltCrystal {
			p.Make.Text = vocabulary.MaltCaramel
		}
	},
	"from": func(b *builder, p *model.Process, s *filled) {
		p.Lots = append(p.Lots, b.taken(s))
	},
	"bag": func(b *builder, p *model.Process, s *filled) { p.Bag = b.positive(s.slot(0).quantity(), "a weight") },
	"at": func(b *builder, p *model.Process, s *filled) {
		b.siteNamed[p] = true
		p.Site = find(b, s.slot(0), "site", b.house.Sites, func(g *model.Site) string { return g.Name })
	},
	"expect": func(b *builder, p *model.Process, s *filled) {
		if v := s.slot(0); v != nil && v.condition != nil {
			p.Expect = append(p.Expect, *v.condition)
		}
	},
	"limits": func(b *builder, p *model.Process, s *filled) {
		if s.Body != nil {
			p.Limits = append(append([]model.Limit(nil), p.Limits...), b.limits(s)...)
		}
	},
	"steep": (*builder).steep, "germinate": (*builder).germinate, "wither": (*builder).wither,
	"kiln": (*builder).kilnStage, "deculm": (*builder).deculm, "store": (*builder).store,
}

// taken is what a line says that was taken, and of which lot.
func (b *builder) taken(s *filled) model.Taken {
	return model.Taken{Place: s.place, Weight: s.slot(0).quantity(),
		Grain: find(b, s.clause("of", 0), "grain", b.house.Grains, func(g *model.Grain) string { return g.Name })}
}

// find resolves a name among the definitions of one kind and notes that it is used,
// as is the one that a wrong name is nearest to, so that it is not called unused as
// well.
func find[T any](b *builder, v *given, kind string, among []*T, name func(*T) string) *T {
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
func lookUp[T any](b *builder, v *given, kind string, among []*T, name func(*T) string) (found, near *T) {
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
	parts := b.parts(v.word, names)
	if ok {
		near = among[slices.Index(names, meant)]
		f.Ask(v.place, strconv.Quote(meant))
	} else if len(parts) > 0 {
		near = among[slices.Index(names, parts[0])]
		f.Ask(v.place, quotedEach(parts)...)
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

// parts are the names that may be meant by a part of them, where those are few.
func (b *builder) parts(name string, among []string) []string {
	list := []string{}
	if b.sought <= mostSought {
		list = nearest.Parts(name, among)
	}
	if len(list) > mostOffered {
		return nil
	}
	return list
}

func quotedEach(names []string) []string {
	out := make([]string, len(names))
	for i, name := range names {
		out[i] = strconv.Quote(name)
	}
	return out
}

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

// stage puts a stage into the process, but for one that stands there word for word.
func (b *builder) stage(p *model.Process, st model.Stage, s *filled) {
	b.unread[st] = !s.whole
	if n := len(p.Stages); n > 0 && sameWords(b.written[p.Stages[n-1]], s.scope()) {
		b.again(s.place, p.Stages[n-1].Place(), fmt.Sprintf("%s is written twice, word for word", st.Kind()))
		return
	}
	b.written[st] = s.scope()
	p.Stages = append(p.Stages, st)
}

// sameWords tells whether two statements are written alike but for the space between words.
func sameWords(a, b source.Place) bool {
	return a.Known() && slices.Equal(strings.Fields(a.Text()), strings.Fields(b.Text()))
}

// fillStage reads the block of a stage, or of a repeat, by its table. It notes in unread
// that some of it did not read.
func fillStage[T any](b *builder, p *model.Process, s *filled, in vocabulary.Block, of any, it *T, set table[T]) {
	if s.Body == nil {
		b.unread[of] = true
		return
	}
	if !fill(b, s.Body, in, s.scope(), s.place, it, set) {
		p.Broken, b.unread[of] = true, true
	}
}
