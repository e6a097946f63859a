package command

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"maltwright/cmd/words"
	"maltwright/lang/read"
	"maltwright/lang/source"
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

const attributesLine = "*" + extension + " diff=maltwright merge=maltwright"

// setting is a line of a repository's configuration.
type setting struct{ key, value string }

// settings: plain shows the meaning; the heads of stages and definitions stand over
// the pieces of a diff; and where merge cannot read a file git merges its lines.
var settings = []setting{
	{"diff.maltwright.textconv", "maltwright plain --"},
	{"diff.maltwright.xfuncname", "^ *((process|steep|repeat|germinate|wither|kiln|grain|site|vessel|floor|limits).*)$"},
	{"merge.maltwright.name", "process files, by meaning"},
	{"merge.maltwright.driver", "maltwright merge --name=%P -- %O %A %B; e=$?; test $e -lt 2 && exit $e; git merge-file -L ours -L base -L theirs -- %A %O %B"},
}

const hook = `#!/bin/sh
# Looks at the process files as they are about to be committed, not as they lie in
# the folder: they must be tidy, and sound.
set -eu
git diff --cached --quiet -- '*.malt' && exit 0
[ -n "$(git ls-files -- '*.malt')" ] || exit 0
staged=$(mktemp -d)
trap 'rm -rf "$staged"' EXIT
git ls-files -z -- '*.malt' | git checkout-index -z --stdin --prefix="$staged/"
cd "$staged"
maltwright tidy --verify .
maltwright check .
`

// Run prints or sets.
func (c Git) Run(w *World) error {
	switch {
	case c.Hook:
		fmt.Fprint(w.Out, hook)
	case c.Write:
		return c.write(w)
	default:
		fmt.Fprintf(w.Out, "In the file .gitattributes at the top of the repository:\n\n  %s\n\nAnd once in every clone:\n\n", attributesLine)
		for _, s := range settings {
			fmt.Fprintf(w.Out, "  git config %s %s\n", s.key, quoted(s.value))
		}
		fmt.Fprintf(w.Out, "\nmaltwright git --write does both in this repository.\n")
	}
	return nil
}

// quoted is the text as one word of a shell.
func quoted(text string) string { return "'" + strings.ReplaceAll(text, "'", `'\''`) + "'" }

func (c Git) write(w *World) error {
	top, err := git(w.Folder, "rev-parse", "--show-toplevel")
	if err != nil {
		return failed("cannot set up: %v", gitError(err, "this folder is in no git repository with files"))
	}
	path := filepath.Join(strings.TrimRight(string(top), "\r\n"), ".gitattributes")
	changed, err := addLine(w, path, attributesLine)
	if err != nil {
		return err
	}
	tell(w, changed, ".gitattributes: "+attributesLine)
	for _, s := range settings {
		now, _ := git(w.Folder, "config", "--local", "--get", s.key) // no value is no error
		if strings.TrimRight(string(now), "\r\n") == s.value {
			tell(w, false, s.key)
			continue
		}
		if _, err := git(w.Folder, "config", "--local", s.key, s.value); err != nil {
			return failed("git config %s: %v", s.key, gitError(err, w.notSet()))
		}
		tell(w, true, s.key)
	}
	return nil
}

// notSet says why the configuration was not written. A git that was killed leaves its lock
// behind, which holds up every later one; whether it is left behind only people can tell.
func (w World) notSet() string {
	path, err := git(w.Folder, "rev-parse", "--git-path", "config.lock")
	if err != nil {
		return "it could not be set"
	}
	lock := w.at(filepath.FromSlash(strings.TrimRight(string(path), "\r\n")))
	if _, err := os.Lstat(lock); err != nil {
		return "it could not be set"
	}
	return fmt.Sprintf("it could not be set, since another git is writing the configuration or was killed while it did; if none is running, take away %s and try again", lock)
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

// git runs git in a folder and gives what it writes.
func git(folder string, args ...string) ([]byte, error) {
	cmd := exec.Command("git", args...)
	cmd.Dir = folder
	var out bytes.Buffer
	cmd.Stdout = &out
	err := cmd.Run()
	return out.Bytes(), err
}

// gitError says that git is not there, or else what it means that it failed.
func gitError(err error, meaning string) error {
	if errors.Is(err, exec.ErrNotFound) {
		return errors.New("git is not installed")
	}
	return errors.New(meaning)
}

// revision reads files of a commit, by their path below the folder of one of them.
type revision struct{ folder, rev, file string }

// revision finds the file of a commit, its path counted from the working folder.
func (w World) revision(rev, name string) (revision, error) {
	shown := rev + ":" + name
	if strings.HasPrefix(rev, "-") {
		return revision{}, usage("%q is no revision", rev)
	}
	prefix, err := git(w.Folder, "rev-parse", "--show-prefix")
	if err != nil {
		return revision{}, failed("%s: there is no such file, and %v", shown, gitError(err, "this folder is in no git repository"))
	}
	commit, err := git(w.Folder, "rev-parse", "--verify", "--quiet", rev+"^{commit}")
	if err != nil {
		return revision{}, failed("%s: git knows no revision %q", shown, rev)
	}
	full := filepath.ToSlash(filepath.Join(strings.TrimRight(string(prefix), "\r\n"), name))
	return revision{w.Folder, strings.TrimSpace(string(commit)), full}, nil
}

// Read gives a file of the commit by its path below the folder of the first one.
func (r revision) Read(name string) ([]byte, error) {
	full := filepath.ToSlash(filepath.Join(filepath.Dir(r.file), name))
	object := r.rev + ":" + full
	size, err := git(r.folder, "cat-file", "-s", object)
	if err != nil {
		return nil, fmt.Errorf("%w in that revision: %s", os.ErrNotExist, full)
	}
	if n, err := strconv.ParseInt(strings.TrimSpace(string(size)), 10, 64); err != nil || n > source.MaxBytes {
		return nil, tooLarge{n}
	}
	text, err := git(r.folder, "cat-file", "blob", object)
	if err != nil {
		return nil, fmt.Errorf("%w in that revision: %s", os.ErrNotExist, full)
	}
	return read.ReadAll(bytes.NewReader(text))
}

// tooLarge is the error of a file of a commit that is larger than any may be. It is not
// even fetched.
type tooLarge struct{ bytes int64 }

func (e tooLarge) Error() string {
	return fmt.Sprintf("it has %.1f MiB, and %d MiB is the most", float64(e.bytes)/(1<<20), source.MaxBytes>>20)
}
