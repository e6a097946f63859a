package repository

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"

	"maltwright/lang/read"
	"maltwright/lang/source"
)

// git runs git in a folder and gives what it writes.
func git(folder string, args ...string) ([]byte, error) {
	cmd := exec.Command("git", args...)
	cmd.Dir = folder
	var out bytes.Buffer
	cmd.Stdout = &out
	err := cmd.Run()
	return out.Bytes(), err
}

// meaning says that git is not there, or else what it means that it failed.
func meaning(err error, otherwise string) error {
	if errors.Is(err, exec.ErrNotFound) {
		return errors.New("git is not installed")
	}
	return errors.New(otherwise)
}

// Revision reads files of a commit, by their path below the folder of one of them.
type Revision struct {
	folder, rev string
	File        string // its path below the top of the repository
}

// Misuse is the error of a revision that can be none.
type Misuse string

func (e Misuse) Error() string { return string(e) }

// Find finds the file of a commit, its path counted from the folder.
func Find(folder, rev, name string) (Revision, error) {
	shown := rev + ":" + name
	if strings.HasPrefix(rev, "-") {
		return Revision{}, Misuse(fmt.Sprintf("%q is no revision", rev))
	}
	prefix, err := git(folder, "rev-parse", "--show-prefix")
	if err != nil {
		return Revision{}, fmt.Errorf("%s: there is no such file, and %v", shown, meaning(err, "this folder is in no git repository"))
	}
	commit, err := git(folder, "rev-parse", "--verify", "--quiet", rev+"^{commit}")
	if err != nil {
		return Revision{}, fmt.Errorf("%s: git knows no revision %q", shown, rev)
	}
	full := filepath.ToSlash(filepath.Join(strings.TrimRight(string(prefix), "\r\n"), name))
	return Revision{folder, strings.TrimSpace(string(commit)), full}, nil
}

// Read gives a file of the commit by its path below the folder of the first one.
func (r Revision) Read(name string) ([]byte, error) {
	full := filepath.ToSlash(filepath.Join(filepath.Dir(r.File), name))
	object := r.rev + ":" + full
	size, err := git(r.folder, "cat-file", "-s", object)
	if err != nil {
		return nil, fmt.Errorf("%w in that revision: %s", os.ErrNotExist, full)
	}
	if n, err := strconv.ParseInt(strings.TrimSpace(string(size)), 10, 64); err != nil || n > source.MaxBytes {
		return nil, TooLarge{n}
	}
	text, err := git(r.folder, "cat-file", "blob", object)
	if err != nil {
		return nil, fmt.Errorf("%w in that revision: %s", os.ErrNotExist, full)
	}
	return read.ReadAll(bytes.NewReader(text))
}

// TooLarge is the error of a file of a commit that is larger than any may be. It is not
// even fetched.
type TooLarge struct{ bytes int64 }

func (e TooLarge) Error() string {
	return fmt.Sprintf("it has %.1f MiB, and %d MiB is the most", float64(e.bytes)/(1<<20), source.MaxBytes>>20)
}
