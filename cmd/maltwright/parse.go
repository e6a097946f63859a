package main

import (
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/alecthomas/kong"
)

// kong is asked for what a line says, for the values of it and for the help; that all of it fits together, and which
// method is run, is told here. The library looks methods up by names that are made while it runs. A program in
// which that happens keeps every method of every type: ours would be almost twice as large.

// parse fills in the command line, and gives what was found in it.
func parse(parser *kong.Kong, args []string) (*kong.Context, error) {
	line, err := kong.Trace(parser, args)
	if err == nil {
		err = line.Error
	}
	if err != nil || asksHelp(line) {
		return line, err
	}
	if err := line.Reset(); err != nil {
		return line, err
	}
	if _, err := line.Apply(); err != nil {
		return line, err
	}
	return line, fits(line)
}

func asksHelp(line *kong.Context) bool { return line.Model.HelpFlag.Set }

// fits tells what is wrong with a line whose words were all understood, in the words of the library.
func fits(line *kong.Context) error {
	for _, p := range line.Path {
		value := p.Positional
		if p.Flag != nil {
			value = p.Flag.Value
		}
		if value != nil && value.Enum != "" {
			if err := oneOf(value); err != nil {
				return err
			}
		}
		if err := noneMissing(p.Flags); err != nil {
			return err
		}
	}
	node := line.Selected()
	if node == nil {
		node = line.Model.Node
	}
	if err := goesOn(node); err != nil {
		return err
	}
	return together(line.Path)
}

// oneOf tells whether a value is one of those that may stand there.
func oneOf(v *kong.Value) error {
	target := v.Target
	if target.Kind() == reflect.Pointer {
		target = target.Elem()
	}
	words := v.EnumSlice()
	if slices.Contains(words, target.String()) {
		return nil
	}
	for i := range words {
		words[i] = strconv.Quote(words[i])
	}
	return fmt.Errorf("%s must be one of %s but got %q", v.ShortSummary(), strings.Join(words, ","), target.String())
}

func noneMissing(flags []*kong.Flag) error {
	var missing []string
	for _, f := range flags {
		if f.Required && !f.Set {
			missing = append(missing, f.Summary())
		}
	}
	if len(missing) == 0 {
		return nil
	}
	slices.Sort(missing)
	return fmt.Errorf("missing flags: %s", strings.Join(missing, ", "))
}

// goesOn tells what must stand behind a command that is not whole.
func goesOn(node *kong.Node) error {
	var args, missing []string
	for _, arg := range node.Positional {
		if arg.Required && !arg.Set {
			args = append(args, arg.Summary())
		}
	}
	if len(args) > 0 {
		missing = append(missing, strconv.Quote(strings.Join(args, " ")))
	}
	if runs(node) == nil {
		for _, child := range node.Children {
			missing = append(missing, strconv.Quote(child.Name))
		}
	}
	const most = 5
	switch {
	case len(missing) == 0:
		return nil
	case len(missing) == 1:
		return fmt.Errorf("expected %s", missing[0])
	case len(missing) > most:
		missing = append(missing[:most], "...")
	}
	return fmt.Errorf("expected one of %s", strings.Join(missing, ", "))
}

// together tells of flags that exclude each other.
func together(path []*kong.Path) error {
	for _, p := range path {
		seen := map[string]string{}
		for _, f := range p.Flags {
			if !f.Set {
				continue
			}
			for _, group := range f.Xor {
				if other := seen[group]; other != "" {
					return fmt.Errorf("--%s and --%s can't be used together", other, f.Name)
				}
				seen[group] = f.Name
			}
		}
	}
	return nil
}

// runs gives what a command runs; nil for one that only has commands below it.
func runs(node *kong.Node) func(w *World, parser *kong.Kong) error {
	switch c := node.Target.Addr().Interface().(type) {
	case interface{ Run(*World) error }:
		return func(w *World, _ *kong.Kong) error { return c.Run(w) }
	case interface {
		Run(*World, *Reckon) error
	}:
		return func(w *World, _ *kong.Kong) error {
			return c.Run(w, node.Parent.Target.Addr().Interface().(*Reckon))
		}
	case interface {
		Run(*World, *kong.Kong) error
	}:
		return c.Run
	}
	return nil
}
