package main

import (
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"github.com/alecthomas/kong"

	"maltwright/lang/nearest"
)

// flagsOf lists the flags of a command and of those below it, without their dashes.
func flagsOf(parser *kong.Kong, command string) (names []string) {
	var add func(n *kong.Node)
	add = func(n *kong.Node) {
		for _, f := range n.Flags {
			names = append(names, f.Name)
		}
		for _, child := range n.Children {
			add(child)
		}
	}
	for _, child := range parser.Model.Children {
		if child.Name == command {
			add(child)
		}
	}
	return names
}

// dashes are what stands in front of a flag; some programs for texts make one long one of two.
const dashes = "-–—\u2212"

// withDashes writes the flags of a command with two dashes, whatever dashes they were typed
// with, and a form to write in small letters.
func withDashes(args, flags []string) []string {
	out := slices.Clone(args)
	for i, a := range out {
		if a == "--" {
			break
		}
		name := strings.TrimLeft(a, dashes)
		bare, _, _ := strings.Cut(name, "=")
		if name != a && len(bare) > 1 && slices.Contains(flags, bare) {
			out[i] = "--" + name
		}
		if i > 0 && out[i-1] == "--format" {
			out[i] = strings.ToLower(a)
		}
	}
	return out
}

// otherFlags are flags that people write where a command has another one, which may have a value.
var otherFlags = []struct {
	written []string
	flag    []string // in the place of it; the first that the command has counts
	value   string   // in the place of its own
}{
	{[]string{"json"}, []string{"format"}, "json"},
	{[]string{"csv"}, []string{"format"}, "csv"},
	{[]string{"ics", "ical", "calendar"}, []string{"format"}, "ics"},
	{[]string{"sarif"}, []string{"format"}, "sarif"},
	{[]string{"output", "out", "o"}, []string{"out", "format"}, ""},
	{[]string{"as", "type"}, []string{"format"}, ""},
	{[]string{"paper", "papersize", "page", "paper-size"}, []string{"size"}, ""},
	{[]string{"begin", "begins", "begun", "from", "at", "when", "time", "date"}, []string{"start", "at", "on"}, ""},
	{[]string{"start"}, []string{"at"}, ""},
	{[]string{"finish", "end", "by", "until"}, []string{"ready"}, ""},
	{[]string{"fix", "repair", "write", "correct"}, []string{"mend"}, ""},
	{[]string{"n", "test", "preview", "dryrun"}, []string{"dry-run"}, ""},
}

// intoFile gives the line that writes to the file which follows a flag for one, where the command has none; "" where that
// is not meant.
func intoFile(args, flags []string, wrong string) string {
	at := slices.IndexFunc(args, func(a string) bool { return a == wrong || strings.HasPrefix(a, wrong+"=") })
	if at < 1 {
		return ""
	}
	name, file, glued := strings.Cut(strings.TrimLeft(args[at], dashes), "=")
	if !slices.Contains([]string{"out", "output", "o"}, name) || slices.Contains(flags, "out") {
		return ""
	}
	line, rest := slices.Clone(args[:at]), args[at+1:]
	if !glued && len(rest) > 0 {
		file, rest = rest[0], rest[1:]
	}
	ending := strings.TrimPrefix(filepath.Ext(file), ".")
	if ending == "" {
		return ""
	}
	line = append(line, rest...)
	if slices.Contains(flags, "format") && !slices.Contains(line, "--format") && slices.Contains([]string{"pdf", "html", "svg", "csv", "json", "ics"}, ending) {
		line = append(line, "--format", ending)
	}
	return commandLine(line...) + " > " + quotedForShell(file)
}

// flagMeant gives the line with the flag that is meant by a word or a flag that a command
// does not have; nil where none is known.
func flagMeant(args, flags []string, wrong string) []string {
	name, value, glued := strings.Cut(strings.TrimLeft(wrong, dashes), "=")
	at := slices.IndexFunc(args, func(a string) bool { return a == wrong || strings.HasPrefix(a, wrong+"=") })
	if at < 1 || name == "" {
		return nil
	}
	instead := []string{}
	switch {
	case slices.Contains(flags, name):
		instead = append(instead, "--"+name)
	default:
		for _, o := range otherFlags {
			i := slices.IndexFunc(o.flag, func(f string) bool { return slices.Contains(flags, f) })
			if !slices.Contains(o.written, name) || i < 0 {
				continue
			}
			instead = append(instead, "--"+o.flag[i])
			if o.value != "" {
				instead = append(instead, o.value)
			}
			break
		}
	}
	if len(instead) == 0 && name != wrong {
		if meant, ok := nearest.Word(name, flags); ok {
			instead = append(instead, "--"+meant)
		}
	}
	if len(instead) == 0 {
		return nil
	}
	if _, own, has := strings.Cut(args[at], "="); has && !glued {
		value, glued = own, true
	}
	if glued {
		instead = append(instead, value)
	}
	return joinTimes(slices.Concat(args[:at], instead, args[at+1:]))
}

var oneOfValues = regexp.MustCompile(`^(--[a-z-]+) must be one of (.*) but got "(.*)"$`)

// valueMeant gives the line with the value of a flag that is meant by one it does not take.
func valueMeant(args []string, text string) []string {
	m := oneOfValues.FindStringSubmatch(text)
	if m == nil {
		return nil
	}
	meant, ok := nearest.Word(strings.ToLower(m[3]), strings.Split(strings.ReplaceAll(m[2], `"`, ""), ","))
	at := slices.Index(args, m[3])
	if !ok || at < 0 {
		return nil
	}
	out := slices.Clone(args)
	out[at] = meant
	return out
}
