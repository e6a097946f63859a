package main

import (
	"errors"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"

	"maltwright/cmd/words"
	"maltwright/lang/nearest"
)

// neighbour are words that people write where a command has another name. They are no
// commands: they are answered with the one to type, so that everybody ends up with the same.
type neighbour struct {
	command string
	behind  []string // words behind the command and its file
	written []string
}

// neighbours is the one table of such words.
var neighbours = []neighbour{
	{command: "check", behind: []string{"--mend"}, written: []string{"mend", "fix", "repair", "correct"}},
	{command: "check", written: []string{"lint", "validate", "verify", "test", "audit", "inspect", "review", "proof", "examine", "look"}},
	{command: "forecast", written: []string{"simulate", "sim", "run", "predict", "plan", "estimate", "project", "model", "prognosis"}},
	{command: "visits", written: []string{"schedule", "calendar", "timetable", "agenda", "tasks", "todo", "remind", "when", "visit"}},
	{command: "sheet", written: []string{"print", "paper", "form", "worksheet", "checklist", "pdf"}},
	{command: "follow", written: []string{"status", "progress", "track", "watch", "where"}},
	{command: "note", written: []string{"log", "add", "record", "enter", "append", "write", "reading", "measure"}},
	{command: "note", behind: []string{"weighed"}, written: []string{"weigh", "weight", "weighed"}},
	{command: "note", behind: []string{"counted"}, written: []string{"count", "counted"}},
	{command: "note", behind: []string{"felt"}, written: []string{"feel", "felt"}},
	{command: "note", behind: []string{"turned"}, written: []string{"turn", "turned"}},
	{command: "note", behind: []string{"read"}, written: []string{"read"}},
	{command: "note", behind: []string{"changed"}, written: []string{"change", "changed"}},
	{command: "note", behind: []string{"remark"}, written: []string{"remark", "comment"}},
	{command: "begin", written: []string{"start", "open", "begun"}},
	{command: "serve", written: []string{"web", "page", "server", "http", "browser", "phone", "ui", "gui", "dashboard"}},
	{command: "tidy", written: []string{"format", "fmt", "pretty", "beautify", "indent", "clean"}},
	{command: "contrast", written: []string{"diff", "compare", "cmp", "differences"}},
	{command: "reckon", written: []string{"calc", "calculate", "compute", "math", "maths", "convert", "calculator"}},
	{command: "reckon", behind: []string{"target"}, written: []string{"target"}},
	{command: "reckon", behind: []string{"moisture"}, written: []string{"moisture"}},
	{command: "reckon", behind: []string{"yield"}, written: []string{"yield"}},
	{command: "explain", written: []string{"docs", "doc", "manual", "describe", "define", "meaning", "info", "what"}},
	{command: "explain", behind: []string{"words"}, written: []string{"words", "reference", "language"}},
	{command: "explain", behind: []string{"rules"}, written: []string{"rules"}},
	{command: "explain", behind: []string{"units"}, written: []string{"units"}},
	{command: "seasons", written: []string{"history", "summary", "stats", "batches", "list", "table"}},
	{command: "learn", written: []string{"fit", "calibrate", "train"}},
	{command: "new", written: []string{"init", "create", "setup", "wizard", "template", "generate"}},
	{command: "version", written: []string{"ver"}},
	{command: "completion", written: []string{"completions", "complete"}},
}

// byTable gives the command line that is meant by one that begins with a neighbour word, or with
// a command in capitals; nil where it begins with neither.
func byTable(args []string) []string {
	word, rest := strings.ToLower(args[0]), args[1:]
	if isCommand(word) {
		return slices.Concat([]string{word}, rest)
	}
	i := slices.IndexFunc(neighbours, func(n neighbour) bool { return isCommand(n.command) && slices.Contains(n.written, word) })
	if i < 0 {
		return nil
	}
	line := []string{neighbours[i].command}
	if word == "what" && len(rest) > 1 { // what is soak
		rest = rest[len(rest)-1:]
	}
	if behind := neighbours[i].behind; len(rest) > 0 && strings.HasSuffix(rest[0], extension) && (len(behind) == 0 || behind[0][0] != '-') {
		line, rest = append(line, rest[0]), rest[1:]
	}
	return slices.Concat(line, neighbours[i].behind, rest)
}

// noCommand answers a command line that begins with no command. It gives nil where it begins
// with one, or with a flag.
func (w World) noCommand(args []string) error {
	word := args[0]
	if word == "" || word[0] == '-' || isCommand(word) {
		return nil
	}
	const unknown = "there is no command %s; type: %s"
	info, err := os.Stat(w.at(word))
	switch {
	case err == nil && info.IsDir():
		return usage("%s is a folder; to check the files below it, type: %s", word, commandLine("check", word))
	case err == nil || strings.HasSuffix(word, extension):
		return w.fileAlone(word, args[1:])
	}
	if meant := byTable(args); meant != nil {
		return usage(unknown, word, commandLine(meant...))
	}
	if name, ok := w.beside(word); ok {
		return w.fileAlone(name, args[1:])
	}
	if command, ok := nearest.Word(word, commandWords); ok {
		return usage(unknown, word, commandLine(append([]string{command}, args[1:]...)...))
	}
	return usage("there is no command %s; maltwright --help lists them", word)
}

// fileAlone says what can be done with a file that stands where a command is wanted.
func (w World) fileAlone(name string, rest []string) error {
	in, err := w.file(name, "")
	if err != nil {
		return err
	}
	if len(rest) > 0 && isCommand(rest[0]) {
		return usage("the command comes first; type: %s", commandLine(slices.Concat([]string{rest[0], in.name}, rest[1:])...))
	}
	lines := [][2]string{{commandLine("check", in.name), "what is wrong with it"}}
	if house, _, err := in.load(); err == nil && len(house.Processes) > 0 {
		lines = append(lines, [2]string{commandLine("forecast", in.name), "what a batch will do, and when"},
			[2]string{commandLine("begin", in.name), "open the record of a batch"})
	} else if err == nil && len(house.Batches) > 0 {
		lines = append(lines, [2]string{commandLine("follow", in.name), "how the batch stands"},
			[2]string{commandLine("note", in.name, "weighed", "7.1", "kg"), "write a reading into it"})
	}
	w.aside(fmt.Sprintf("%s is a file; say what to do with it:", words.Safe(in.name)))
	wide := 0
	for _, l := range lines {
		wide = max(wide, len(l[0]))
	}
	for _, l := range lines {
		fmt.Fprintf(w.Err, "  %-*s   %s\n", wide, words.Safe(l[0]), l[1])
	}
	return failure{ExitUsage, errors.New("")}
}

// commandLine is a command line as it is typed.
func commandLine(args ...string) string {
	out := make([]string, 0, len(args)+1)
	out = append(out, "maltwright")
	for _, a := range args {
		out = append(out, quotedForShell(a))
	}
	return strings.Join(out, " ")
}

// quotedForShell puts an argument in quotes where a shell would take it for more than one, or
// for something else.
func quotedForShell(arg string) string {
	if arg != "" && !strings.ContainsAny(arg, " \t\n\"'`$&|;<>()*?[]{}!#~\\") {
		return arg
	}
	return quoted(arg)
}

// termsForShell is a line of a record as it is typed behind a command: a text in quotes in which a shell would see
// more than letters is quoted for it.
func termsForShell(line string) string {
	return textOfLine.ReplaceAllStringFunc(line, func(text string) string {
		bare := unescaped.Replace(text[1 : len(text)-1])
		if strings.ContainsAny(bare, "$`\\!\"") {
			return quoted(bare)
		}
		return text
	})
}

var (
	textOfLine = regexp.MustCompile(`"(?:\\.|[^"\\])*"`)
	unescaped  = strings.NewReplacer(`\\`, `\`, `\"`, `"`)
)

// ordered puts the command in front of the flags, and answers help with what it is asked of.
func ordered(args []string) []string {
	switch {
	case args[0] == "help":
		return append(slices.Clone(args[1:]), "--help")
	case len(args) == 2 && args[1] == "help" && isCommand(args[0]):
		return []string{args[0], "--help"}
	}
	if args[0] == "" || args[0][0] != '-' || args[0] == "--" {
		return args
	}
	at := slices.IndexFunc(args, isCommand)
	if at < 1 {
		return args
	}
	return slices.Concat(args[at:at+1], args[:at], args[at+1:])
}
