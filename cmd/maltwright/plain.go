package main

import (
	"fmt"

	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/layout"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// Plain prints what a file says, a statement a line.
type Plain struct {
	File string `arg:"" help:"The file; - is standard input."`
}

// Help is the longer help of the command.
func (Plain) Help() string {
	return `For programs that compare lines, such as git: comments, braces and layout are
left out, and each kind of quantity stands in one unit, so that two files that say
the same are the same. A file that does not read is printed as it is.

Examples:

  maltwright plain pale.malt

Exit code: 0 printed, 2 the command line cannot be understood, 3 the file cannot
be read.`
}

// Run prints.
func (c Plain) Run(w *World) error {
	files, err := w.gather([]string{c.File}, "")
	if err != nil {
		return err
	}
	if len(files) != 1 || files[0].path != w.at(c.File) && c.File != "-" {
		return usage("%s is a folder; plain takes a file", c.File)
	}
	text := files[0].text
	tree, found := syntax.Parse(source.New(files[0].name, text))
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		w.aside(fmt.Sprintf("%s does not read, and is shown as it is", words.Safe(files[0].name)))
	} else {
		text = layout.Plain(tree)
	}
	if _, err := fmt.Fprint(w.Out, safeLines(string(text))); err != nil {
		return failed("cannot write: %v", err)
	}
	return nil
}
