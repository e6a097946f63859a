package main

import (
	"io"
	"slices"
	"strings"

	"github.com/alecthomas/kong"

	"maltwright/lang/nearest"
)

// How it works
//
// A command line that does not parse is changed as people's slips are undone: a flag written with
// other dashes, without any, by another name; a choice in capitals; what is glued together. The
// first line that parses, after one change or two, is the one to type. None of the changes
// touches a value.

// mostRetyped is how many lines are tried.
const mostRetyped = 200

// retyped gives the line that is meant by one that does not parse.
func (w World) retyped(args []string) ([]string, bool) {
	lists, tries := [][]string{args}, 0
	for range 2 {
		var next [][]string
		for _, list := range lists {
			for _, other := range w.changes(list) {
				other = joinTimes(ordered(other))
				if tries++; tries > mostRetyped {
					return nil, false
				}
				if parses(other) {
					return other, true
				}
				next = append(next, other)
			}
		}
		lists = next
	}
	return nil, false
}

// parses tells whether a line is one, or asks for help.
func parses(args []string) (ok bool) {
	defer func() {
		if r := recover(); r != nil {
			if _, ok = r.(done); !ok {
				panic(r)
			}
		}
	}()
	if slices.Equal(args, []string{"--version"}) {
		return true
	}
	var cli Line
	parser, err := newParser(World{Out: io.Discard, Err: io.Discard}, &cli)
	if err != nil {
		return false
	}
	_, err = parser.Parse(signed(args))
	return err == nil
}

// otherFlags are words that people write for flags; of those of one row the first that the
// command has is meant.
var otherFlags = []struct{ written, meant []string }{
	{[]string{"json"}, []string{"--format json"}},
	{[]string{"csv"}, []string{"--format csv"}},
	{[]string{"html"}, []string{"--format html"}},
	{[]string{"sarif"}, []string{"--format sarif"}},
	{[]string{"ics", "ical", "calendar"}, []string{"--format ics"}},
	{[]string{"output", "out", "as", "type", "o", "f", "fmt"}, []string{"--format"}},
	{[]string{"begin", "start", "at", "from", "when", "on", "date", "time", "begins", "starts", "since"}, []string{"--start", "--at", "--on"}},
	{[]string{"fix", "repair", "correct", "autofix", "write"}, []string{"--mend"}},
	{[]string{"dry", "simulate", "preview", "no-write", "n"}, []string{"--dry-run"}},
	{[]string{"id", "called", "title"}, []string{"--name"}},
	{[]string{"strict", "level", "severity"}, []string{"--fail-on"}},
	{[]string{"force", "yes", "y"}, []string{"--sure"}},
	{[]string{"version", "v", "V"}, []string{"--version"}},
	{[]string{"help", "?", "h", "H", "usage"}, []string{"--help"}},
}

const dashes = "-–—−/"

// changes gives a line with one change at one of its words, the likeliest first.
func (w World) changes(args []string) (list [][]string) {
	flags := flagsOf(args)
	for i, a := range args {
		for _, words := range append(w.fileMeant(a, i), flagMeant(a, i, args, flags)...) {
			list = append(list, slices.Concat(args[:i], words, args[i+1:]))
		}
	}
	return list
}

// fileMeant gives the name without the comma that is not part of it.
func (w World) fileMeant(a string, i int) [][]string {
	name := strings.TrimRight(a, ", ")
	if i == 0 || name == a || name == "" {
		return nil
	}
	return [][]string{{name}}
}

// flagMeant gives what may be meant by a word as a flag of a command, or as its choice.
func flagMeant(a string, i int, args []string, flags []*kong.Flag) (list [][]string) {
	name, value, glued := strings.Cut(strings.TrimLeft(a, dashes), "=")
	with := func(flag string) {
		words := strings.Fields(flag)
		if glued {
			words = append(words, value)
		}
		list = append(list, words)
	}
	has := func(flag string) bool {
		return flag == "--version" && len(args) == 1 || slices.ContainsFunc(flags, func(f *kong.Flag) bool { return "--"+f.Name == strings.Fields(flag)[0] })
	}
	dashed := name != strings.TrimSuffix(a, "="+value)
	if i > 0 || dashed {
		if flag := "--" + name; has(flag) && a != flag && !strings.HasPrefix(a, flag+"=") {
			with(flag)
		}
		for _, o := range otherFlags {
			if slices.Contains(o.written, name) {
				if k := slices.IndexFunc(o.meant, has); k >= 0 && o.meant[k] != "--"+name {
					with(o.meant[k])
				}
			}
		}
	}
	if dashed && len(list) == 0 {
		names := make([]string, len(flags))
		for k, f := range flags {
			names[k] = f.Name
		}
		if meant, ok := nearest.Word(name, append(names, withoutDash(names)...)); ok {
			if k := slices.Index(withoutDash(names), meant); k >= 0 && !slices.Contains(names, meant) {
				meant = names[k]
			}
			with("--" + meant)
		}
	}
	return append(list, choiceMeant(a, i, args, flags)...)
}

// withoutDash are names as they are written by who forgets what parts their words.
func withoutDash(names []string) []string {
	out := make([]string, len(names))
	for i, n := range names {
		out[i] = strings.ReplaceAll(n, "-", "")
	}
	return out
}

// choiceMeant gives the choice that is meant behind a flag that has some.
func choiceMeant(a string, i int, args []string, flags []*kong.Flag) [][]string {
	if i == 0 {
		return nil
	}
	k := slices.IndexFunc(flags, func(f *kong.Flag) bool { return "--"+f.Name == args[i-1] && f.Enum != "" })
	if k < 0 {
		return nil
	}
	choices := strings.Split(flags[k].Enum, ",")
	for n := range choices {
		choices[n] = strings.TrimSpace(choices[n])
		if strings.EqualFold(choices[n], a) {
			return [][]string{{choices[n]}}
		}
	}
	if meant, ok := nearest.Word(strings.ToLower(a), choices); ok {
		return [][]string{{meant}}
	}
	return nil
}

// flagsOf lists the flags of the command that a line begins with.
func flagsOf(args []string) []*kong.Flag {
	var cli Line
	parser, err := newParser(World{Out: io.Discard, Err: io.Discard}, &cli)
	if err != nil {
		return nil
	}
	node, list := parser.Model.Node, slices.Clone(parser.Model.Flags)
	for _, a := range args {
		i := slices.IndexFunc(node.Children, func(n *kong.Node) bool { return n.Type == kong.CommandNode && n.Name == a })
		if i < 0 {
			break
		}
		node = node.Children[i]
		list = append(list, node.Flags...)
	}
	return list
}
