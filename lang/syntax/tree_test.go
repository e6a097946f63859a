package syntax

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/lang/source"
)

var spanType = reflect.TypeFor[source.Span]()

// node is a part of the tree that has a place in the text.
type node struct {
	name  string
	span  source.Span
	value reflect.Value
}

// children finds, by reflection so that no kind of node can be forgotten, the
// nodes that a value holds directly, in the order of its fields.
func children(name string, v reflect.Value) (list []node) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			list = children(name, v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			list = append(list, children(fmt.Sprintf("%s[%d]", name, i), v.Index(i))...)
		}
	case reflect.Struct:
		if field := v.FieldByName("Span"); field.IsValid() && field.Type() == spanType {
			return []node{{name, field.Interface().(source.Span), v}}
		}
		list = fields(name, v)
	}
	return list
}

func fields(name string, v reflect.Value) (list []node) {
	for i := range v.NumField() {
		if f := v.Type().Field(i); f.Name != "Span" && f.Name != "File" {
			list = append(list, children(name+"."+f.Name, v.Field(i))...)
		}
	}
	return list
}

// outside are the comments around a statement: they belong to it, but stand
// before it, or behind its opening brace.
func outside(name string) bool {
	return strings.Contains(name, ".Lead[") || strings.HasSuffix(name, ".Trail") || strings.HasSuffix(name, ".Close")
}

type walker struct {
	t    testing.TB
	file *source.File
	seen int
}

func (w *walker) walk(parent node) {
	last := parent.span.Start
	list := fields(parent.name, parent.value)
	if parent.value.Type() == reflect.TypeFor[Stamp]() { // a time of day may stand before its date
		slices.SortStableFunc(list, func(a, b node) int { return a.span.Start - b.span.Start })
	}
	for _, c := range list {
		if c.span == (source.Span{}) && c.value.Type() == reflect.TypeFor[Word]() {
			continue // a unit, a date or a time that is not written
		}
		w.seen++
		w.check(c)
		if !outside(c.name) {
			assert.GreaterOrEqual(w.t, c.span.Start, last, "%s begins before what stands in front of it ends", c.name)
			assert.LessOrEqual(w.t, c.span.End, parent.span.End, "%s ends behind its parent", c.name)
			last = c.span.End
		}
		w.walk(c)
	}
}

// check compares what a node says with the text at its place.
func (w *walker) check(n node) {
	text := w.file.Text(n.span)
	assert.NotEmpty(w.t, text, "%s covers nothing", n.name)
	assert.Equal(w.t, strings.Trim(text, blanks+"\r\n"), text, "%s has blanks at its ends", n.name)
	switch v := n.value.Interface().(type) {
	case Word:
		folded := strings.Join(strings.FieldsFunc(text, isBlank), " ")
		if strings.HasSuffix(n.name, ".Clock") {
			folded = strings.TrimPrefix(folded, "T")
		}
		if strings.HasSuffix(n.name, ".Clock") || strings.HasSuffix(n.name, ".Date") { // 2pm is 14:00, as it is read
			return
		}
		if strings.HasSuffix(n.name, ".Unit") && vague(folded) && v.Text != folded {
			assert.Contains(w.t, []string{"°C", "°F"}, v.Text, "%s", n.name)
			return
		}
		assert.Equal(w.t, v.Text, folded, "%s", n.name)
	case Text:
		plain := strings.NewReplacer(`\`, "", "\u00a0", " ", "\u202f", " ", "\u2009", " ")
		assert.Contains(w.t, plain.Replace(text), plain.Replace(v.Value), "%s", n.name)
	case Comment:
		assert.Equal(w.t, v.Text, text, "%s", n.name)
		assert.Equal(w.t, byte('#'), text[0], "%s", n.name)
	case Statement:
		assert.Equal(w.t, n.span.Start, v.Verb.Start, "%s begins with its verb", n.name)
		if v.Body != nil {
			assert.Equal(w.t, n.span.End, v.Body.End, "%s ends with its block", n.name)
		} else {
			assert.Equal(w.t, n.span.End, v.Head().End, "%s ends with its head", n.name)
		}
	case Block:
		assert.Equal(w.t, byte('{'), text[0], "%s", n.name)
	}
}

func checkTree(t testing.TB, tree *Tree) int {
	w := &walker{t: t, file: tree.File}
	w.walk(node{"top", source.Span{Start: 0, End: tree.File.Size()}, reflect.ValueOf(tree.Top)})
	return w.seen
}

func TestEveryNodeStandsWhereItSays(t *testing.T) {
	for name, text := range corpus(t) {
		t.Run(name, func(t *testing.T) {
			tree, _ := parse(text)
			nodes := checkTree(t, tree)
			if len(tree.Top.Statements) > 0 {
				assert.GreaterOrEqual(t, nodes, 2, "a statement and its verb")
			}
		})
	}
}

func TestEveryCommentHasOneOwner(t *testing.T) {
	for name, text := range corpus(t) {
		tree, found := parse(text)
		if len(found) > 0 {
			continue // comments inside what was skipped are lost with it
		}
		want := strings.Count(" | "+tokens(t, text), " | Comment ")
		assert.Len(t, comments(&tree.Top), want, name)
	}
}

func comments(b *Block) (list []string) {
	for _, s := range b.Statements {
		for _, c := range s.Lead {
			list = append(list, c.Text)
		}
		if s.Trail != nil {
			list = append(list, s.Trail.Text)
		}
		if s.Body != nil {
			list = append(list, comments(s.Body)...)
		}
	}
	for _, c := range b.Tail {
		list = append(list, c.Text)
	}
	if b.Close != nil {
		list = append(list, b.Close.Text)
	}
	return list
}

func TestValuesAreCutIntoTheirParts(t *testing.T) {
	tree, found := parse("rise 1 h 30 min by 45 % dry  basis at  least 8 1/3 lb 2026-03-06T07:00 to 2026-03-07 “a \\\"b”")
	assert.Empty(t, found)
	s := tree.Top.Statements[0]
	parts := s.Terms[0].(Amount).Low.Parts
	assert.Len(t, parts, 2)
	assert.Equal(t, "30", parts[1].Number.Text)
	assert.Equal(t, "min", parts[1].Unit.Text)

	terms := s.Clauses[0].Terms
	assert.Equal(t, "% dry basis", terms[0].(Amount).Low.Parts[0].Unit.Text)
	bounded := terms[1].(Bounded)
	assert.Equal(t, "at least", bounded.Bound.Text)
	assert.Equal(t, "8 1/3", bounded.Value.(Amount).Low.Parts[0].Number.Text)
	moment := terms[2].(Moment)
	assert.Equal(t, "2026-03-06", moment.From.Date.Text)
	assert.Equal(t, "07:00", moment.From.Clock.Text)
	assert.Equal(t, "2026-03-07", moment.To.Date.Text)
	assert.Equal(t, `a "b`, terms[3].(Text).Value)
}

func TestWalkVisitsOuterStatementsFirst(t *testing.T) {
	tree, _ := parse("a { b { c }; d }\ne")
	var verbs []string
	tree.Top.Walk(func(s *Statement) { verbs = append(verbs, s.Verb.Text) })
	assert.Equal(t, []string{"a", "b", "c", "d", "e"}, verbs)
}
