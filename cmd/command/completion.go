package command

import (
	"fmt"
	"slices"
	"strings"

	"github.com/alecthomas/kong"
)

// Completion prints a completion script.
type Completion struct {
	Shell string `arg:"" enum:"bash,zsh,fish" help:"bash, zsh or fish."`
}

// Help is the longer help of the command.
func (Completion) Help() string {
	return `The script completes commands, flags, their values, the words that explain knows,
and the names of process files. To try it in the shell you are in:

  source <(maltwright completion bash)
  source <(maltwright completion zsh)
  maltwright completion fish | source

To keep it, write it where your shell looks for completions, such as:

  maltwright completion bash > ~/.local/share/bash-completion/completions/maltwright
  maltwright completion zsh > "${fpath[1]}/_maltwright"
  maltwright completion fish > ~/.config/fish/completions/maltwright.fish`
}

// Run prints the script.
func (c Completion) Run(w *World, parser *kong.Kong) error {
	script := completionScripts[c.Shell](places(parser.Model.Node, ""))
	if _, err := fmt.Fprint(w.Out, script); err != nil {
		return failed("cannot write: %v", err)
	}
	return nil
}

var completionScripts = map[string]func([]place) string{"bash": bashScript, "zsh": zshScript, "fish": fishScript}

// place is where one may stand on the command line: behind a command, with what may
// follow. It is read off kong's model, so that no command is forgotten.
type place struct {
	path     string // "" at the start, "reckon target" behind these two words
	commands []offer
	flags    []flagOffer
	values   values // of the arguments
}

// offer is a word with what it means.
type offer struct{ word, help string }

// flagOffer is a flag with its values.
type flagOffer struct {
	offer
	takes  bool // a value
	values values
}

// values are what may stand for a value: some of the words, a process file in any
// folder, or a folder.
type values struct {
	words          []string
	files, folders bool
}

// places lists the place of a command and of those below it.
func places(n *kong.Node, path string) []place {
	p := place{path: path}
	for _, group := range n.AllFlags(true) {
		for _, f := range group {
			p.flags = append(p.flags, flagOffer{offer{"--" + f.Name, firstSentence(f.Help)}, !f.IsBool(), flagValues(f)})
		}
	}
	for _, a := range n.Positional {
		p.values = argumentValues(path, a)
	}
	list := []place{}
	for _, child := range n.Children {
		if child.Type != kong.CommandNode || child.Hidden {
			continue
		}
		p.commands = append(p.commands, offer{child.Name, firstSentence(child.Help)})
		list = append(list, places(child, strings.TrimSpace(path+" "+child.Name))...)
	}
	return append([]place{p}, list...)
}

func flagValues(f *kong.Flag) values {
	return values{words: enum(f.Value), folders: f.PlaceHolder == "FOLDER"}
}

// argumentValues are the values of the arguments of a command: process files are
// named so by every command that reads them.
func argumentValues(path string, a *kong.Value) values {
	switch {
	case a.Enum != "":
		return values{words: enum(a)}
	case a.Name == "path" || a.Name == "file":
		return values{files: true}
	case path == "explain":
		words := slices.Concat(allWords(), ruleNames())
		slices.Sort(words)
		return values{words: slices.Compact(words)}
	}
	return values{}
}

func enum(v *kong.Value) []string {
	if v.Enum == "" {
		return nil
	}
	return v.EnumSlice()
}

// firstSentence is a help text short enough to stand beside a word.
func firstSentence(text string) string {
	text, _, _ = strings.Cut(text, ". ")
	return strings.TrimSuffix(text, ".")
}

// quoteShell writes a text as one word of any of the shells.
func quoteShell(text string) string {
	return "'" + strings.NewReplacer("\\", "", "'", "’").Replace(text) + "'"
}

func wordsOf[T any](list []T, word func(T) string) string {
	words := make([]string, len(list))
	for i, o := range list {
		words[i] = word(o)
	}
	return strings.Join(words, " ")
}

// steps writes one line of a shell's case for each place but the first: where the
// word behind one place leads to the next.
func steps(list []place, line func(from, word, to string) string) string {
	var b strings.Builder
	for _, p := range list {
		for _, c := range p.commands {
			b.WriteString(line(p.path, c.word, strings.TrimSpace(p.path+" "+c.word)))
		}
	}
	return b.String()
}
