package merge

import (
	"strconv"
	"strings"

	"maltwright/lang/contrast"
	"maltwright/lang/layout"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// statement merges a statement that stands on both sides; b is nil where both
// brought it.
func (m *merging) statement(b, o, t *syntax.Statement, in vocabulary.Block) *syntax.Statement {
	known := b != nil
	if !known {
		b = &syntax.Statement{Verb: o.Verb, Spaced: o.Spaced && t.Spaced}
	}
	out := &syntax.Statement{Verb: o.Verb, Spaced: flag(b.Spaced, o.Spaced, t.Spaced), Lead: comments(b.Lead, o.Lead, t.Lead)}
	var extra *syntax.Comment
	if out.Trail, extra = comment(b.Trail, o.Trail, t.Trail); extra != nil {
		out.Lead = append(out.Lead[:len(out.Lead):len(out.Lead)], *extra)
	}
	values := m.unit(out, valuesOf(b, known), valuesOf(o, true), valuesOf(t, true))
	out.Terms = values.terms
	m.clauses(out, b, o, t, known)
	out.Body = m.body(out, b, o, t, in)
	return out
}

// flag merges yes and no: whoever changed it has it.
func flag(b, o, t bool) bool {
	if o != b {
		return o
	}
	return t
}

// unit is what is merged as a whole: the values of a statement, or a clause.
type unit struct {
	word  string // of a clause
	terms []syntax.Term
	there bool // it stands
	known bool // it can be said whether it stands; not of a base that there is none of
}

func valuesOf(s *syntax.Statement, known bool) unit {
	return unit{"", s.Terms, len(s.Terms) > 0, known}
}

func (u unit) text() string {
	if !u.there {
		return ""
	}
	words := make([]string, 0, len(u.terms)+1)
	if u.word != "" {
		words = append(words, u.word)
	}
	for _, t := range u.terms {
		words = append(words, layout.Term(t))
	}
	return strings.Join(words, " ")
}

func (u unit) says() string {
	if !u.there {
		return ""
	}
	return u.word + "(" + contrast.Says(u.terms) + ")"
}

// told is the unit in the words of a mark.
func (u unit) told() string {
	switch {
	case !u.known:
		return ""
	case u.there:
		return u.text()
	case u.word == "":
		return "without a value"
	}
	return "without " + u.word
}

// unit gives the merged unit, and marks the statement where both sides changed it.
func (m *merging) unit(s *syntax.Statement, b, o, t unit) unit {
	switch {
	case o.text() == b.text():
		return t
	case t.text() == b.text() || o.text() == t.text():
		return o
	case o.says() == t.says(): // the same in other words
		if o.text() < t.text() {
			return o
		}
		return t
	case o.says() == b.says():
		return t
	case t.says() == b.says():
		return o
	}
	m.mark(s, o.told(), t.told(), b.told())
	if !o.there {
		return t
	}
	return o
}

// clauses merges the clauses, each for itself; a word that stands twice makes two.
func (m *merging) clauses(out, b, o, t *syntax.Statement, known bool) {
	was, ours, theirs := clausesOf(b), clausesOf(o), clausesOf(t)
	first, second := ours.order, theirs.order
	if strings.Join(first, " ") == strings.Join(was.order, " ") {
		first, second = second, first
	}
	done := map[string]bool{}
	for _, key := range append(first[:len(first):len(first)], append(second[:len(second):len(second)], was.order...)...) {
		if done[key] {
			continue
		}
		done[key] = true
		u := m.unit(out, was.get(key, known), ours.get(key, true), theirs.get(key, true))
		if u.there {
			out.Clauses = append(out.Clauses, &syntax.Clause{Word: syntax.Word{Text: u.word}, Terms: u.terms})
		}
	}
}

type clauseList struct {
	order []string
	of    map[string]*syntax.Clause
}

func clausesOf(s *syntax.Statement) clauseList {
	list := clauseList{of: map[string]*syntax.Clause{}}
	count := map[string]int{}
	for _, c := range s.Clauses {
		count[c.Word.Text]++
		key := c.Word.Text + ":" + strconv.Itoa(count[c.Word.Text])
		list.order, list.of[key] = append(list.order, key), c
	}
	return list
}

func (l clauseList) get(key string, known bool) unit {
	word, _, _ := strings.Cut(key, ":")
	if c := l.of[key]; c != nil {
		return unit{word, c.Terms, true, known}
	}
	return unit{word, nil, false, known}
}

// body merges the blocks of a statement.
func (m *merging) body(out, b, o, t *syntax.Statement, in vocabulary.Block) *syntax.Block {
	was := b.Body
	if was == nil {
		was = &syntax.Block{}
	}
	switch {
	case o.Body == nil && t.Body == nil:
		return nil
	case o.Body == nil:
		return m.halfBody(out, b, t, in, "took the block out", "changed it")
	case t.Body == nil:
		return m.halfBody(out, b, o, in, "changed the block", "took it out")
	}
	return m.block(was, o.Body, t.Body, vocabulary.Opens(in, o.Verb.Text))
}

// halfBody is a block that stands on one side only.
func (m *merging) halfBody(out, b, s *syntax.Statement, in vocabulary.Block, ours, theirs string) *syntax.Block {
	if b.Body == nil {
		return s.Body
	}
	if before, now := onlyBody(b), onlyBody(s); layout.Statement(before, in) == layout.Statement(now, in) {
		return nil
	}
	m.mark(out, ours, theirs, "")
	return s.Body
}

func onlyBody(s *syntax.Statement) *syntax.Statement {
	return &syntax.Statement{Verb: s.Verb, Body: s.Body}
}
