package main

import (
	"fmt"

	"maltwright/cmd/rewrite"
	"maltwright/cmd/words"
	"maltwright/cmd/write/text"
	"maltwright/lang/finding"
	"maltwright/lang/merge"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// Merge joins what two people did to one file.
type Merge struct {
	Base   string `arg:"" help:"The file as it was when the two parted."`
	Ours   string `arg:"" help:"What we made of it; the result is written here."`
	Theirs string `arg:"" help:"What they made of it."`
	Name   string `help:"The name of the file in messages." placeholder:"NAME"`
	Show   bool   `help:"Print the result and write nothing."`
}

// Help is the longer help of the command.
func (Merge) Help() string {
	return `Edits to different values go together, wherever they stand. Where both changed
one value, one of them stays in force and a comment above the statement names both:

  # both: ours for 5 h; theirs for 6 h; before for 4 h
  cure at air-on 82 °C for 5 h

Such a comment is a fault until somebody has chosen and deleted it. No comment is
lost. A file that does not read is left alone. maltwright git shows how git can
use this command.

Examples:

  maltwright merge --show spring.malt ours.malt theirs.malt

Exit code: 0 merged, 1 merged but for what is marked, 2 the command line cannot be
understood, 3 a file cannot be read or written, or does not read as a process.`
}

// Run merges.
func (c Merge) Run(w *World) error {
	files, err := w.gather([]string{c.Base, c.Ours, c.Theirs}, "")
	if err != nil {
		return err
	}
	if len(files) != 3 {
		return usage("merge takes three files, and no folder")
	}
	name := c.Ours
	if c.Name != "" { // the paths that git gives say nothing to people
		name = c.Name
		files[0].name, files[1].name, files[2].name = name+" (base)", name+" (ours)", name+" (theirs)"
	}
	got, err := c.merged(w, name, files)
	if err == nil {
		got, err = c.write(w, name, files, got)
	}
	if err != nil {
		return err
	}
	if got.Unsettled > 0 {
		w.aside(fmt.Sprintf("%s: %s for you to settle, marked # both:", words.Safe(name), words.Plural(got.Unsettled, "place")))
		return errFindings
	}
	return nil
}

// merged joins the three files.
func (c Merge) merged(w *World, name string, files []input) (got merge.Result, err error) {
	var trees [3]*syntax.Tree
	for i, f := range files {
		if trees[i], err = c.parse(w, f.name, f.text); err != nil {
			return got, err
		}
	}
	if got, err = merge.Trees(trees[0], trees[1], trees[2]); err != nil {
		return got, failed("%s: %v; nothing was written", name, err)
	}
	return got, nil
}

func (c Merge) parse(w *World, name string, bytes []byte) (*syntax.Tree, error) {
	tree, found := syntax.Parse(source.New(name, bytes))
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		_ = text.Lines(w.Err, found, text.Options{Folder: w.Folder})
		return nil, failed("%s does not read; nothing was written", name)
	}
	return tree, nil
}

// write puts the result in the place of ours. Where ours has changed since it was read,
// it is merged anew, under the lock.
func (c Merge) write(w *World, name string, files []input, got merge.Result) (merge.Result, error) {
	ours := files[1]
	switch {
	case c.Show || ours.path == "":
		if _, err := w.Out.Write(got.Text); err != nil {
			return got, failed("cannot write: %v", err)
		}
	case string(got.Text) == string(ours.text):
		rewrite.Sweep(ours.path)
	default:
		err := w.edit(ours.name, ours.path, func(old []byte) (_ []byte, err error) {
			if string(old) != string(files[1].text) {
				files[1].text = old
				got, err = c.merged(w, name, files)
			}
			return got.Text, err
		})
		return got, err
	}
	return got, nil
}
