package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/alecthomas/kong"

	"maltwright/cmd/answer/reference"
	"maltwright/cmd/founding"
	"maltwright/cmd/write/shell"
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

To keep it, write it where your shell looks for completions. Bash looks in this folder
only where the package bash-completion is installed:

  mkdir -p ~/.local/share/bash-completion/completions
  maltwright completion bash > ~/.local/share/bash-completion/completions/maltwright

Without that package, let bash read it each time, by this line in ~/.bashrc:

  source <(maltwright completion bash)

Zsh and fish:

  maltwright completion zsh > "${fpath[1]}/_maltwright"
  mkdir -p ~/.config/fish/completions
  maltwright completion fish > ~/.config/fish/completions/maltwright.fish`
}

// Run prints the script.
func (c Completion) Run(w *World, parser *kong.Kong) error {
	script := shell.Scripts[c.Shell](places(parser.Model.Node, ""))
	if _, err := fmt.Fprint(w.Out, script); err != nil {
		return failed("cannot write: %v", err)
	}
	return nil
}

// places lists the place of a command and of those below it.
func places(n *kong.Node, path string) []shell.Place {
	p := shell.Place{Path: path}
	for _, group := range n.AllFlags(true) {
		for _, f := range group {
			p.Flags = append(p.Flags, shell.Flag{Offer: shell.Offer{Word: "--" + f.Name, Help: firstSentence(f.Help)}, Takes: !f.IsBool(), Values: flagValues(f)})
		}
	}
	for _, a := range n.Positional {
		p.Values = argumentValues(path, a)
		if path == "man" {
			p.Values = shell.Values{Words: pageNames(n.Parent)}
		}
	}
	list := []shell.Place{}
	for _, child := range n.Children {
		if child.Type != kong.CommandNode || child.Hidden {
			continue
		}
		p.Commands = append(p.Commands, shell.Offer{Word: child.Name, Help: firstSentence(child.Help)})
		list = append(list, places(child, strings.TrimSpace(path+" "+child.Name))...)
	}
	return append([]shell.Place{p}, list...)
}

func flagValues(f *kong.Flag) shell.Values {
	if f.Name == "like" {
		return shell.Values{Words: founding.Likes()}
	}
	return shell.Values{Words: enum(f.Value), Folders: f.PlaceHolder == "FOLDER"}
}

// argumentValues are the values of the arguments of a command: process files are
// named so by every command that reads them.
func argumentValues(path string, a *kong.Value) shell.Values {
	switch {
	case a.Enum != "":
		return shell.Values{Words: enum(a)}
	case a.Name == "path" || a.Name == "file":
		return shell.Values{Files: true}
	case path == "explain":
		words := slices.Concat(reference.Names(), explainable())
		slices.Sort(words)
		return shell.Values{Words: slices.Compact(words)}
	}
	return shell.Values{}
}

// pageNames are the commands that have a page of the manual, and the language.
func pageNames(program *kong.Node) []string {
	list := []string{"language"}
	for _, child := range program.Children {
		if child.Type == kong.CommandNode && !child.Hidden {
			list = append(list, child.Name)
		}
	}
	slices.Sort(list)
	return list
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
