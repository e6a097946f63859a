package main

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"maltwright/cmd/repository"
	"maltwright/cmd/words"
)

// Git tells how a git repository is to show and merge process files.
type Git struct {
	Write bool `help:"Set this repository up, and no other." xor:"how"`
	Hook  bool `help:"Print a hook that looks at what is about to be committed." xor:"how"`
}

// Help is the longer help of the command.
func (Git) Help() string {
	return `Set up like this, git diff and git log -p show what changed by meaning, and git
merge joins two seasons value by value. Without --write nothing is changed.

Examples:

  maltwright git
  maltwright git --write
  maltwright git --hook > .git/hooks/pre-commit && chmod +x .git/hooks/pre-commit

Exit code: 0 done, 2 the command line cannot be understood, 3 there is no
repository here, or it cannot be written.`
}

// Run prints or sets.
func (c Git) Run(w *World) error {
	switch {
	case c.Hook:
		fmt.Fprint(w.Out, repository.Hook)
	case c.Write:
		return c.write(w)
	default:
		fmt.Fprintf(w.Out, "In the file .gitattributes at the top of the repository:\n\n  %s\n\nAnd once in every clone:\n\n", repository.AttributesLine)
		for _, s := range repository.Settings {
			fmt.Fprintf(w.Out, "  git config %s %s\n", s.Key, quoted(s.Value))
		}
		fmt.Fprintf(w.Out, "\nmaltwright git --write does both in this repository.\n")
	}
	return nil
}

// quoted is the text as one word of a shell.
func quoted(text string) string { return "'" + strings.ReplaceAll(text, "'", `'\''`) + "'" }

func (c Git) write(w *World) error {
	top, err := repository.Top(w.Folder)
	if err != nil {
		return failed("%v", err)
	}
	changed, err := addLine(w, filepath.Join(top, ".gitattributes"), repository.AttributesLine)
	if err != nil {
		return err
	}
	tell(w, changed, ".gitattributes: "+repository.AttributesLine)
	for _, s := range repository.Settings {
		changed, err := repository.Set(w.Folder, s)
		if err != nil {
			return failed("%v", err)
		}
		tell(w, changed, s.Key)
	}
	return nil
}

func tell(w *World, changed bool, what string) {
	word := "as it is"
	if changed {
		word = "set"
	}
	fmt.Fprintf(w.Out, "%-8s  %s\n", word, words.Safe(what))
}

// addLine adds a line to a text file that may not be there yet, and tells whether
// it had to.
func addLine(w *World, path, line string) (added bool, err error) {
	o := w.writing
	o.Create = true
	err = w.editWith(o, path, path, func(old []byte) ([]byte, error) {
		end := "\n"
		if bytes.Contains(old, []byte("\r\n")) {
			end = "\r\n"
		}
		if added = !slices.Contains(strings.Split(strings.ReplaceAll(string(old), "\r\n", "\n"), "\n"), line); !added {
			return old, nil
		}
		out := slices.Clone(old)
		if len(out) > 0 && out[len(out)-1] != '\n' {
			out = append(out, end...)
		}
		return append(out, line+end...), nil
	})
	return added, err
}

// revision finds the file of a commit, its path counted from the working folder.
func (w World) revision(rev, name string) (repository.Revision, error) {
	r, err := repository.Find(w.Folder, rev, name)
	switch misuse := repository.Misuse(""); {
	case errors.As(err, &misuse):
		return r, usage("%v", err)
	case err != nil:
		return r, failed("%v", err)
	}
	return r, nil
}
