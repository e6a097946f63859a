// Package filltest holds pages to html/template of the standard library. Only tests use this package.
package filltest

import (
	"bytes"
	"html/template"
	"reflect"
	"sync"
	"text/template/parse"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/cmd/write/fill"
)

// Same fills a part of a page, and tells where html/template fills in anything else.
func Same(t require.TestingT, p *fill.Page, part string, data any) string {
	var out bytes.Buffer
	require.NoError(t, p.WritePart(&out, part, data))
	want, is := Standard(t, p, part, data), out.String()
	at := 0
	for at < min(len(want), len(is)) && want[at] == is[at] {
		at++
	}
	from := max(0, at-40)
	require.True(t, want == is, "filled in otherwise:\n%.120q\n%.120q", want[from:], is[from:])
	return is
}

// Standard is a part of a page as html/template fills it.
func Standard(t require.TestingT, p *fill.Page, part string, data any) string {
	all, made := standards.Load(p)
	if !made {
		all = standard(p)
		standards.Store(p, all)
	}
	var out bytes.Buffer
	require.NoError(t, all.(*template.Template).ExecuteTemplate(&out, part, data))
	return out.String()
}

// standards are the pages as html/template has them, by ours.
var standards sync.Map

func standard(p *fill.Page) *template.Template {
	funcs := template.FuncMap{"trusted": trusted}
	for name, f := range p.Funcs() {
		switch name {
		case "not", "eq", "gt", "len", "index": // it has them itself
		default:
			funcs[name] = f
		}
	}
	all := template.New("").Funcs(funcs)
	for _, text := range p.Texts() {
		all = template.Must(all.Parse(text))
	}
	for _, one := range all.Templates() {
		if one.Tree != nil {
			trust(one.Tree.Root)
		}
	}
	return all
}

// trusted gives what a page writes as it stands the type that html/template knows.
func trusted(v any) any {
	switch v := v.(type) {
	case fill.HTML:
		return template.HTML(v)
	case fill.CSS:
		return template.CSS(v)
	}
	return v
}

// trust puts the function behind everything that is filled in.
func trust(list *parse.ListNode) {
	if list == nil {
		return
	}
	for _, node := range list.Nodes {
		switch node := node.(type) {
		case *parse.ActionNode:
			if len(node.Pipe.Decl) == 0 {
				node.Pipe.Cmds = append(node.Pipe.Cmds, &parse.CommandNode{NodeType: parse.NodeCommand, Args: []parse.Node{parse.NewIdentifier("trusted")}})
			}
		case *parse.IfNode:
			trust(node.List)
			trust(node.ElseList)
		case *parse.WithNode:
			trust(node.List)
			trust(node.ElseList)
		case *parse.RangeNode:
			trust(node.List)
			trust(node.ElseList)
		}
	}
}

// Hostile are texts that would be something else than text where they are not escaped, and some that would not.
func Hostile() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.SampledFrom([]string{"", "44 %", "<script>alert(1)</script>", `" onload="alert(1)`, "javascript:alert(1)", "JaVaScript:x", "data:text/html,<b>", "https://x.example/a?b=c&d#e",
			"/batch/0a1b?x=1&n=2", "</title>", "</style><b>", "</textarea>", "a b, javascript:c 2x", "%3c%zz", "it's + 'so'", "\x00", "\xff<", "–°½", "a/b:c", "mailto:a@b", "{{.}}", "<!--", "a\u2028b", "expression(1)"}),
		rapid.StringOf(rapid.RuneFrom([]rune(`<>"'&+=/:;?#%-_.,()[]!{} aZ09é°`+"\n\t\x00\u00a0`"))),
	)
}

// Any is any value of the type of a value, with hostile texts in it. Lists are short; interfaces, HTML and CSS stay as they are.
func Any[T any](t *rapid.T, like T) T {
	v := reflect.New(reflect.TypeFor[T]()).Elem()
	v.Set(reflect.ValueOf(&like).Elem())
	spoil(t, v, 0)
	return v.Interface().(T)
}

// deepest is where lists and pointers end.
const deepest = 6

func spoil(t *rapid.T, v reflect.Value, deep int) {
	if !v.CanSet() || v.Type() == reflect.TypeFor[fill.HTML]() || v.Type() == reflect.TypeFor[fill.CSS]() {
		return
	}
	switch v.Kind() {
	case reflect.String:
		v.SetString(Hostile().Draw(t, "text"))
	case reflect.Bool:
		v.SetBool(rapid.Bool().Draw(t, "bool"))
	case reflect.Int, reflect.Int64:
		v.SetInt(rapid.Int64Range(-2, 3).Draw(t, "int"))
	case reflect.Float64:
		v.SetFloat(rapid.Float64Range(0, 300).Draw(t, "float"))
	case reflect.Struct:
		for i := range v.NumField() {
			spoil(t, v.Field(i), deep)
		}
	case reflect.Pointer:
		if deep < deepest && rapid.Bool().Draw(t, "there") {
			v.Set(reflect.New(v.Type().Elem()))
			spoil(t, v.Elem(), deep+1)
		} else {
			v.SetZero()
		}
	case reflect.Slice:
		if deep < deepest {
			n := rapid.IntRange(0, 3).Draw(t, "how many")
			v.Set(reflect.MakeSlice(v.Type(), n, n))
			for i := range n {
				spoil(t, v.Index(i), deep+1)
			}
		}
	}
}
