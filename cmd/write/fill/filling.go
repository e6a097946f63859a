package fill

import (
	"fmt"
	"reflect"
	"strings"
	"text/template/parse"
)

// filling is a page that is being filled.
type filling struct {
	*parsed
	funcs Funcs
	out   strings.Builder
	vars  []variable
}

type variable struct {
	name  string
	value reflect.Value
}

// part fills a part of its own, which sees nothing but its data.
func (f *filling) part(root *parse.ListNode, data reflect.Value) error {
	was := f.vars
	f.vars = []variable{{"$", data}}
	err := f.list(data, root)
	f.vars = was
	return err
}

func (f *filling) list(dot reflect.Value, list *parse.ListNode) error {
	if list == nil {
		return nil
	}
	for _, node := range list.Nodes {
		if err := f.node(dot, node); err != nil {
			return err
		}
	}
	return nil
}

func (f *filling) node(dot reflect.Value, node parse.Node) error {
	switch node := node.(type) {
	case *parse.TextNode:
		f.out.Write(node.Text)
		return nil
	case *parse.ActionNode:
		return f.action(dot, node)
	case *parse.IfNode:
		return f.branch(dot, &node.BranchNode, func(reflect.Value) reflect.Value { return dot })
	case *parse.WithNode:
		return f.branch(dot, &node.BranchNode, func(v reflect.Value) reflect.Value { return v })
	case *parse.RangeNode:
		return f.each(dot, node)
	case *parse.TemplateNode:
		data := reflect.Value{}
		if node.Pipe != nil {
			var err error
			if data, err = f.pipe(dot, node.Pipe); err != nil {
				return err
			}
		}
		return f.part(f.parts[node.Name], data)
	}
	return fmt.Errorf("%s is not known here", node) // none such parses
}

func (f *filling) action(dot reflect.Value, node *parse.ActionNode) error {
	v, err := f.pipe(dot, node.Pipe)
	if err != nil || len(node.Pipe.Decl) > 0 {
		return err
	}
	text, err := f.escapes[node].of(v)
	if err != nil {
		return fmt.Errorf("%s: %w", node, err)
	}
	f.out.WriteString(text)
	return nil
}

// branch fills one way of a branch, or the other.
func (f *filling) branch(dot reflect.Value, b *parse.BranchNode, inner func(reflect.Value) reflect.Value) error {
	mark := len(f.vars)
	defer func() { f.vars = f.vars[:mark] }()
	v, err := f.pipe(dot, b.Pipe)
	switch {
	case err != nil:
		return err
	case isTrue(v):
		return f.list(inner(v), b.List)
	}
	return f.list(dot, b.ElseList)
}

func (f *filling) each(dot reflect.Value, node *parse.RangeNode) error {
	mark := len(f.vars)
	defer func() { f.vars = f.vars[:mark] }()
	v, err := f.value(dot, node.Pipe)
	if err != nil {
		return err
	}
	v = pointed(v)
	n := 0
	switch v.Kind() {
	case reflect.Slice, reflect.Array:
		n = v.Len()
	case reflect.Invalid:
	default:
		return fmt.Errorf("%s is no list", node.Pipe)
	}
	if n == 0 {
		return f.list(dot, node.ElseList)
	}
	for i := range n {
		f.vars = f.vars[:mark]
		names := node.Pipe.Decl
		if len(names) > 1 {
			f.set(names[0], reflect.ValueOf(i))
			names = names[1:]
		}
		if len(names) > 0 {
			f.set(names[0], v.Index(i))
		}
		if err := f.list(v.Index(i), node.List); err != nil {
			return err
		}
	}
	return nil
}

func (f *filling) set(name *parse.VariableNode, v reflect.Value) {
	f.vars = append(f.vars, variable{name.Ident[0], v})
}

// pipe gives the value of a pipeline, and sets the variable that it names.
func (f *filling) pipe(dot reflect.Value, pipe *parse.PipeNode) (reflect.Value, error) {
	v, err := f.value(dot, pipe)
	if err != nil {
		return v, err
	}
	for _, name := range pipe.Decl {
		f.set(name, v)
	}
	return v, nil
}
