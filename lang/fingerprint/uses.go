package fingerprint

import (
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// name is a definition by what it is and what it is called.
type name struct {
	of   vocabulary.Block
	text string
}

// uses finds what a process is made by.
type uses struct {
	trees []*syntax.Tree
	made  source.Place // of the process
	names map[name]bool
	told  bool // what people are told of counts too
}

// process notes what the process names, what that names, and so on.
func (u *uses) process(p *model.Process) {
	u.made = p.Scope
	u.each(func(f *source.File, s *syntax.Statement) {
		if at(f, s, u.made) {
			u.named(s, vocabulary.File)
		}
	})
	for before := -1; before < len(u.names); {
		before = len(u.names)
		u.each(func(_ *source.File, s *syntax.Statement) {
			if u.names[defined(s)] {
				u.named(s, vocabulary.File)
			}
		})
	}
}

// each goes over the statements at the top of the files.
func (u *uses) each(do func(*source.File, *syntax.Statement)) {
	for _, t := range u.trees {
		for _, s := range t.Top.Statements {
			do(t.File, s)
		}
	}
}

// defined is what a statement at the top of a file defines.
func defined(s *syntax.Statement) name {
	if len(s.Terms) == 0 {
		return name{}
	}
	called, _ := s.Terms[0].(syntax.Text)
	return name{vocabulary.Opens(vocabulary.File, s.Verb.Text), called.Value}
}

// named notes the definitions that a statement and its block name.
func (u *uses) named(s *syntax.Statement, in vocabulary.Block) {
	row, ok := vocabulary.Lookup(in, s.Verb.Text)
	if !ok {
		return
	}
	u.values(row.Slots, s.Terms)
	for _, c := range s.Clauses {
		if def, ok := row.Clause(c.Word.Text); ok {
			u.values(def.Slots, c.Terms)
		}
	}
	if s.Body != nil {
		for _, inner := range s.Body.Statements {
			u.named(inner, row.Opens)
		}
	}
}

func (u *uses) values(slots []vocabulary.Slot, terms []syntax.Term) {
	for _, slot := range slots {
		if slot.Kind != vocabulary.Name {
			continue
		}
		for _, t := range terms {
			if text, ok := t.(syntax.Text); ok {
				u.names[name{slot.Of, text.Value}] = true
			}
		}
	}
}

// kept are the statements that count, of each file.
func (u *uses) kept() (out []*syntax.Tree) {
	for _, t := range u.trees {
		var list []*syntax.Statement
		for _, s := range t.Top.Statements {
			if !u.counts(t.File, s) {
				continue
			}
			if one := u.bare(s, vocabulary.File); one.Body == nil || len(one.Body.Statements) > 0 || len(s.Body.Statements) == 0 {
				list = append(list, one)
			}
		}
		if len(list) > 0 {
			out = append(out, &syntax.Tree{File: t.File, Top: syntax.Block{Span: t.Top.Span, Statements: list}})
		}
	}
	return out
}

// counts tells whether the process is made by a statement at the top of a file.
func (u *uses) counts(f *source.File, s *syntax.Statement) bool {
	switch vocabulary.Opens(vocabulary.File, s.Verb.Text) {
	case vocabulary.Process:
		return at(f, s, u.made)
	case vocabulary.Limits, vocabulary.House:
		return true
	case vocabulary.Batch, vocabulary.None:
		return false
	}
	return u.names[defined(s)]
}

// bare is a statement without its comments, and without those of its block that do not
// count.
func (u *uses) bare(s *syntax.Statement, in vocabulary.Block) *syntax.Statement {
	out := *s
	out.Lead, out.Trail, out.Spaced = nil, nil, false
	if s.Body == nil {
		return &out
	}
	block, inside := syntax.Block{Span: s.Body.Span}, vocabulary.Opens(in, s.Verb.Text)
	for _, inner := range s.Body.Statements {
		row, ok := vocabulary.Lookup(inside, inner.Verb.Text)
		switch {
		case !ok: // the words of limits have no rows
			block.Statements = append(block.Statements, u.bare(inner, inside))
		case !row.Aside && (u.told || !row.Told) && !u.ofAnother(row, inner):
			block.Statements = append(block.Statements, u.forecastBy(row, u.bare(inner, inside)))
		}
	}
	out.Body = &block
	return &out
}

// forecastBy leaves those clauses out of a statement that people are only told of.
func (u *uses) forecastBy(row *vocabulary.Row, s *syntax.Statement) *syntax.Statement {
	if u.told {
		return s
	}
	s.Clauses = slices.DeleteFunc(slices.Clone(s.Clauses), func(c *syntax.Clause) bool {
		def, ok := row.Clause(c.Word.Text)
		return ok && def.Told
	})
	return s
}

// ofAnother tells whether a figure that was learnt is of a lot or a kiln that the process
// does not use.
func (u *uses) ofAnother(row *vocabulary.Row, s *syntax.Statement) bool {
	if row.By != vocabulary.ByName {
		return false
	}
	for _, c := range s.Clauses {
		def, ok := row.Clause(c.Word.Text)
		if !ok || !slices.ContainsFunc(def.Slots, func(x vocabulary.Slot) bool { return x.Kind == vocabulary.Name }) {
			continue
		}
		for _, t := range c.Terms {
			text, ok := t.(syntax.Text)
			if ok && !u.used(text.Value) {
				return true
			}
		}
	}
	return false
}

// used tells whether the process uses something of that name.
func (u *uses) used(text string) bool {
	for n := range u.names {
		if n.text == text {
			return true
		}
	}
	return false
}
