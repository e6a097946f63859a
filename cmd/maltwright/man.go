package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/alecthomas/kong"

	"maltwright/cmd/answer/reference"
	"maltwright/cmd/words"
	"maltwright/cmd/write/man"
	"maltwright/lang/sorted"
)

// Man prints pages of the manual.
type Man struct {
	Name []string `arg:"" optional:"" help:"A command, such as forecast or reckon target; or language. The program itself if left out."`
	Into string   `placeholder:"FOLDER" help:"Write every page into this folder of manuals, by its section."`
}

// Help is the longer help of the command.
func (Man) Help() string {
	return `Prints a page of the manual as the program man reads it. There is one for the program,
one for each command and one for the language; each says what --help and explain say.

Examples:

  maltwright man forecast | man -l -
  maltwright man language | man -l -
  maltwright man --into ~/.local/share/man

Pages of an older version are written over; a file that is no page of ours is not.

Exit code: 0 written, 2 the command line cannot be understood, 3 the pages cannot be written.`
}

// Run prints or writes the pages.
func (m Man) Run(w *World, parser *kong.Kong) error {
	pages := manual(parser)
	if m.Into != "" {
		return m.into(w, pages)
	}
	if err := m.meant(pages); err != nil {
		return err
	}
	name := strings.Join(append([]string{"maltwright"}, m.Name...), "-")
	at := slices.IndexFunc(pages, func(p man.Page) bool { return p.Name == name })
	if at < 0 {
		asked := strings.Join(m.Name, " ")
		if explained(asked) {
			return usage("there is no page of %s; type: %s", asked, commandLine("explain", asked))
		}
		return usage("there is no page of %s; each command has one: maltwright --help", asked)
	}
	if _, err := fmt.Fprint(w.Out, pages[at].Text); err != nil {
		return failed("cannot write: %v", err)
	}
	return nil
}

// into writes all pages below a folder of manuals.
func (m Man) into(w *World, pages []man.Page) error {
	if len(m.Name) > 0 {
		return usage("--into writes every page; leave %s out", strings.Join(m.Name, " "))
	}
	for _, p := range pages {
		name := filepath.Join(m.Into, filepath.FromSlash(p.File()))
		if err := os.MkdirAll(filepath.Dir(w.at(name)), 0o755); err != nil {
			return failed("cannot write: %v", err)
		}
		o := w.writing
		o.Create = true
		err := w.editWith(o, name, w.at(name), func(old []byte) ([]byte, error) {
			if len(old) > 0 && !bytes.HasPrefix(old, []byte(man.Mark)) {
				return nil, usage("%s is there already, and is no page that maltwright man has written; move it away", name)
			}
			return []byte(p.Text), nil
		})
		if err != nil {
			return err
		}
	}
	w.say("%s: %s", words.Safe(m.Into), words.Plural(len(pages), "page"))
	return nil
}

// manual gives all pages there are.
func manual(parser *kong.Kong) []man.Page {
	s := man.Stamp{}
	if b := built(); b.version != "" {
		s.Version, s.Time = b.version, b.time
	}
	pages := man.Pages(helpOf(parser.Model.Node, ""), s)
	return append(pages, man.Language(man.Reference{Entries: entries(), Units: reference.AllUnits()}, s))
}

// entries are all meanings of the words of the language, by the alphabet.
func entries() (list []reference.Entry) {
	for _, first := range reference.Words() {
		for _, e := range reference.Of(first.Name) {
			if e.Name == first.Name {
				list = append(list, e)
			}
		}
	}
	sorted.Stable(list, func(a, b reference.Entry) int { return strings.Compare(a.Name, b.Name) })
	return list
}

// helpOf is the help of a command and of those below it.
func helpOf(n *kong.Node, path string) man.Command {
	c := man.Command{Path: path, About: n.Help, Detail: n.Detail}
	if path == "" {
		c.About, c.Detail, _ = strings.Cut(n.Help, "\n\n")
	}
	for _, group := range n.AllFlags(true) {
		for _, f := range group {
			c.Flags = append(c.Flags, man.Word{Name: flagShown(f), Help: kong.DefaultHelpValueFormatter(f.Value)})
		}
	}
	usage := []string{}
	for _, f := range n.Flags {
		if f.Required {
			usage = append(usage, flagShown(f))
		}
	}
	for _, a := range n.Positional {
		usage = append(usage, a.Summary())
		c.Arguments = append(c.Arguments, man.Word{Name: a.Name, Help: kong.DefaultHelpValueFormatter(a)})
	}
	for _, child := range n.Children {
		if child.Type == kong.CommandNode && !child.Hidden {
			c.Commands = append(c.Commands, helpOf(child, strings.TrimSpace(path+" "+child.Name)))
		}
	}
	if len(c.Commands) > 0 {
		usage = append(usage, "<command>")
	}
	c.Usage = strings.Join(append(usage, "[flags]"), " ")
	return c
}

// flagShown is a flag as its help shows it.
func flagShown(f *kong.Flag) string {
	name := "--" + f.Name
	if !f.IsBool() {
		name += "=" + strings.Trim(f.FormatPlaceHolder(), `"`)
	}
	if f.Short != 0 {
		name = fmt.Sprintf("-%c, %s", f.Short, name)
	}
	return name
}
