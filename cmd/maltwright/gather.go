package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"maltwright/check"
	"maltwright/cmd/folder"
	"maltwright/lang/read"
	"maltwright/lang/regular"
)

// extension is how the name of a process file ends.
const extension = folder.Extension

// input is one process file to be read.
type input struct {
	name string // as findings show it
	path string // absolute; "" for standard input
	text []byte
	root string // folder that use may read
	dir  string // folder of the file below the root, with /
}

// gather finds the files that paths stand for and reads them. Nothing is checked
// unless all of them can be read.
func (w World) gather(paths []string, root string) ([]input, error) {
	var list []input
	for i, p := range paths {
		switch {
		case p == "":
			return nil, usage("a path is empty; write . for this folder")
		case p == "-" && slices.Contains(paths[:i], p):
			return nil, usage("standard input can be read once, and - stands twice")
		}
		more, err := w.one(p, root)
		if err != nil {
			return nil, err
		}
		list = append(list, more...)
	}
	return list, nil
}

func (w World) one(path, root string) ([]input, error) {
	if path == "-" {
		text, err := read.ReadAll(w.In)
		if err != nil {
			return nil, failed("cannot read standard input: %v", err)
		}
		return []input{{name: "-", text: text, root: w.at(root), dir: "."}}, nil
	}
	info, err := os.Stat(w.at(path))
	switch {
	case errors.Is(err, fs.ErrNotExist):
		in, err := w.file(path, root)
		return []input{in}, err
	case err != nil:
		return nil, w.notOpened(path, err)
	case info.IsDir():
		return w.folder(path, root)
	case !info.Mode().IsRegular():
		return nil, failed("%s: not a regular file", path)
	}
	in, err := w.file(path, root)
	return []input{in}, err
}

func (w World) at(path string) string {
	if path == "" {
		return w.Folder
	}
	if filepath.IsAbs(path) {
		return path
	}
	return filepath.Join(w.Folder, path)
}

// folder finds the process files below a folder, in the order of their names.
func (w World) folder(path, root string) ([]input, error) {
	var list []input
	err := filepath.WalkDir(w.at(path), func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			return failed("%s: %s", p, plainError(err))
		}
		if d.IsDir() && strings.HasPrefix(d.Name(), ".") && p != w.at(path) {
			return fs.SkipDir
		}
		if d.Type().IsRegular() && strings.HasSuffix(p, extension) {
			rel, _ := filepath.Rel(w.at(path), p) // p lies below path
			in, err := w.file(filepath.Join(path, rel), root)
			if err != nil {
				return err
			}
			list = append(list, in)
		}
		return nil
	})
	if err == nil && len(list) == 0 {
		return nil, w.none(path)
	}
	return list, err
}

func (w World) file(path, root string) (input, error) {
	f, err := regular.Open(w.at(path))
	if errors.Is(err, fs.ErrNotExist) {
		if other, ok := w.beside(path); ok {
			w.reading(path, other)
			path = other
			f, err = regular.Open(w.at(path))
		}
	}
	if err != nil {
		return input{}, w.notOpened(path, err)
	}
	defer f.Close()
	text, err := read.ReadAll(f)
	if err != nil {
		return input{}, failed("%s: %s", path, plainError(err))
	}
	in := input{name: path, path: w.at(path), text: text, root: filepath.Dir(w.at(path)), dir: "."}
	if root != "" {
		rel, err := filepath.Rel(w.at(root), filepath.Dir(w.at(path)))
		if err != nil || !filepath.IsLocal(rel) {
			return input{}, usage("%s does not lie below --root %s", path, root)
		}
		in.root, in.dir = w.at(root), filepath.ToSlash(rel)
	}
	return in, nil
}

// notOpened says why a file could not be opened. A name that begins with a sign has
// become a number with a minus on the way here; it is told as it was written.
func (w World) notOpened(path string, err error) error {
	name, signed := strings.CutPrefix(path, minus)
	if near, ok := w.near(path); ok && !signed && errors.Is(err, fs.ErrNotExist) {
		return failed("%s: there is no such file; did you mean %s?", path, near)
	}
	if !signed || !errors.Is(err, fs.ErrNotExist) {
		return failed("%s: %s", path, plainError(err))
	}
	name = "-" + name
	if _, err := os.Lstat(w.at(name)); err != nil {
		return failed("%s: there is no such file", name)
	}
	return failed("%s: a name that begins with a sign reads as a number here; write ./%[1]s, or put -- before it", name)
}

// plainError is an error of the file system without the call and the path.
func plainError(err error) string { return folder.Plain(err) }

func inputOf(f folder.File) input { return input{f.Name, f.Path, f.Text, f.Root, f.Dir} }

// as is the input as a folder has it.
func (in input) as() folder.File {
	return folder.File{Name: in.name, Path: in.path, Text: in.text, Root: in.root, Dir: in.dir}
}

// check checks the input.
func (in input) check(o check.Options) (check.Report, error) {
	root, err := read.OpenRoot(in.root)
	if err != nil {
		return check.Report{}, failed("%s: %s", in.root, plainError(err))
	}
	defer root.Close()
	r := check.File(in.name, in.text, in.dir, in.past(root, nil), o)
	if o.Context != nil && o.Context.Err() != nil { // what was found is not all
		return r, errInterrupted
	}
	return r, nil
}
