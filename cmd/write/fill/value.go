package fill

import (
	"fmt"
	"reflect"
	"strings"
	"text/template/parse"
)

// value gives the value of a pipeline of one command.
func (f *filling) value(dot reflect.Value, pipe *parse.PipeNode) (reflect.Value, error) {
	if len(pipe.Cmds) != 1 || pipe.IsAssign {
		return reflect.Value{}, fmt.Errorf("%s: give one command", pipe)
	}
	args := pipe.Cmds[0].Args
	if name, ok := args[0].(*parse.IdentifierNode); ok {
		return f.call(dot, name.Ident, args[1:])
	}
	if len(args) > 1 {
		return reflect.Value{}, fmt.Errorf("%s is no function", args[0])
	}
	return f.operand(dot, args[0])
}

func (f *filling) operand(dot reflect.Value, node parse.Node) (reflect.Value, error) {
	switch node := node.(type) {
	case *parse.DotNode:
		return dot, nil
	case *parse.FieldNode:
		return fields(dot, node.Ident)
	case *parse.VariableNode:
		i := len(f.vars) - 1
		for f.vars[i].name != node.Ident[0] {
			i-- // one that is not set does not parse
		}
		return fields(f.vars[i].value, node.Ident[1:])
	case *parse.StringNode:
		return reflect.ValueOf(node.Text), nil
	case *parse.NumberNode:
		if node.IsInt {
			return reflect.ValueOf(int(node.Int64)), nil
		}
	case *parse.PipeNode:
		return f.value(dot, node)
	case *parse.IdentifierNode:
		return f.call(dot, node.Ident, nil)
	}
	return reflect.Value{}, fmt.Errorf("%s is not known here", node)
}

// fields follows the names of fields.
func fields(v reflect.Value, names []string) (reflect.Value, error) {
	for _, name := range names {
		v = pointed(v)
		switch v.Kind() {
		case reflect.Struct:
			if field, ok := v.Type().FieldByName(name); !ok || !field.IsExported() {
				return v, fmt.Errorf("a %s has no field %s", v.Type(), name)
			}
			v = v.FieldByName(name)
		case reflect.Map:
			if v = v.MapIndex(reflect.ValueOf(name)); !v.IsValid() {
				return v, fmt.Errorf("there is no %s", name)
			}
		default:
			return v, fmt.Errorf("there is no %s of nothing (%s)", name, strings.Join(names, "."))
		}
	}
	if v.Kind() == reflect.Interface {
		v = v.Elem()
	}
	return v, nil
}

// pointed is what a pointer or an interface holds.
func pointed(v reflect.Value) reflect.Value {
	for v.Kind() == reflect.Pointer || v.Kind() == reflect.Interface {
		v = v.Elem()
	}
	return v
}

// isTrue tells whether a value is more than nothing.
func isTrue(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Invalid:
		return false
	case reflect.Struct:
		return true
	case reflect.Slice, reflect.Map, reflect.Array, reflect.String:
		return v.Len() > 0
	}
	return !v.IsZero()
}

// call calls a function. Of and, or no more is reckoned than is needed.
func (f *filling) call(dot reflect.Value, name string, nodes []parse.Node) (v reflect.Value, err error) {
	if name == "and" || name == "or" {
		for _, node := range nodes {
			if v, err = f.operand(dot, node); err != nil || isTrue(v) == (name == "or") {
				return v, err
			}
		}
		return v, nil
	}
	args := make([]reflect.Value, len(nodes))
	for i, node := range nodes {
		if args[i], err = f.operand(dot, node); err != nil {
			return v, err
		}
	}
	function := reflect.ValueOf(f.funcs[name])
	kind := function.Type()
	if len(args) != kind.NumIn() || kind.NumOut() != 1 {
		return v, fmt.Errorf("%s: give it %d values", name, kind.NumIn())
	}
	for i := range args {
		switch want := kind.In(i); {
		case !args[i].IsValid():
			args[i] = reflect.Zero(want)
		case !args[i].Type().AssignableTo(want):
			return v, fmt.Errorf("%s takes a %s, and not a %s", name, want, args[i].Type())
		}
	}
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("%s: %v", name, r)
		}
	}()
	v = function.Call(args)[0]
	if v.Kind() == reflect.Interface {
		v = v.Elem()
	}
	return v, nil
}

// builtin are the functions that every page has, beside and, or.
var builtin = Funcs{
	"not":   func(x any) bool { return !isTrue(reflect.ValueOf(x)) },
	"eq":    func(a, b any) bool { return a == b },
	"gt":    func(a, b int) bool { return a > b },
	"len":   func(list any) int { return reflect.ValueOf(list).Len() },
	"index": func(list []string, i int) string { return list[i] },
}
