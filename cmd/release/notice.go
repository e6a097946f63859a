package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// licence is a text that goes with a program since a part of it is of other people.
type licence struct {
	of   string // the module and its version
	file string // of it
	text []byte
}

// licensing are the names of files that say on which terms something may be handed on.
var licensing = regexp.MustCompile(`(?i)^(licen[cs]es?|copying|notice|patents|unlicense|third.?party.*)([-._].*)?$`)

// listed is what go list says of a package.
type listed struct {
	ImportPath, Dir string
	Standard        bool
	Module          *struct {
		Path, Version, Dir string
		Main               bool
	}
}

// notice is the file of all licences of what is in the program of a target.
func notice(ctx context.Context, root string, t target) ([]byte, error) {
	list, err := licences(ctx, root, t)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	b.WriteString("The program holds parts of other people. Below stand the terms of each,\nas its authors give them.\n")
	of := ""
	for _, l := range list {
		if l.of != of {
			of = l.of
			fmt.Fprintf(&b, "\n%s\n%s\n", strings.Repeat("=", 78), of)
		}
		fmt.Fprintf(&b, "\n--- %s\n\n%s\n", l.file, bytes.TrimSpace(bytes.ReplaceAll(l.text, []byte("\r\n"), []byte("\n"))))
	}
	return b.Bytes(), nil
}

// licences are those of Go itself, of every module in the program of a target, and of every folder of one that has
// terms of its own. A module without any is an error: it may not be handed on.
func licences(ctx context.Context, root string, t target) ([]licence, error) {
	out, err := output(ctx, root, t.env(), "go", "list", "-deps", "-json=ImportPath,Dir,Standard,Module", "./cmd/maltwright")
	if err != nil {
		return nil, err
	}
	folders := map[string]string{} // a folder with its module
	named := map[string]string{}   // of a module, its name with its version
	for dec := json.NewDecoder(strings.NewReader(out)); ; {
		var p listed
		if err := dec.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		if p.Standard || p.Module == nil {
			continue
		}
		named[p.Module.Dir] = strings.TrimSpace(p.Module.Path + " " + p.Module.Version)
		for dir := p.Dir; dir != p.Module.Dir; dir = filepath.Dir(dir) {
			folders[dir] = p.Module.Dir
		}
		if !p.Module.Main {
			folders[p.Module.Dir] = p.Module.Dir
		}
	}
	list, err := ofGo(ctx, root)
	if err != nil {
		return nil, err
	}
	found := map[string]bool{root: true}
	for dir, module := range folders {
		for _, path := range terms(dir) {
			l, err := read(path, module, named[module])
			if err != nil {
				return nil, err
			}
			list, found[module] = append(list, l), true
		}
	}
	for module, name := range named {
		if !found[module] && folders[module] != "" {
			return nil, fmt.Errorf("%s has no file of its licence, and so may not be handed on", name)
		}
	}
	slices.SortFunc(list, func(a, b licence) int { return strings.Compare(a.of+"\x00"+a.file, b.of+"\x00"+b.file) })
	return list, nil
}

// terms are the files in a folder of a module that are terms.
func terms(dir string) (list []string) {
	entries, _ := os.ReadDir(dir) // a folder that cannot be read has no licence, which is told
	for _, e := range entries {
		path := filepath.Join(dir, e.Name())
		switch {
		case !licensing.MatchString(e.Name()) || strings.HasSuffix(e.Name(), ".go"):
		case e.IsDir():
			inside, _ := filepath.Glob(filepath.Join(path, "*"))
			list = append(list, inside...)
		default:
			list = append(list, path)
		}
	}
	return list
}

func read(path, module, name string) (licence, error) {
	text, err := os.ReadFile(path)
	if err != nil {
		return licence{}, err
	}
	file, err := filepath.Rel(module, path)
	return licence{of: name, file: filepath.ToSlash(file), text: text}, err
}

// ofGo are the terms of Go itself, whose library is in every program.
func ofGo(ctx context.Context, root string) (list []licence, err error) {
	out, err := output(ctx, root, nil, "go", "env", "GOROOT", "GOVERSION")
	if err != nil {
		return nil, err
	}
	at := strings.Fields(out)
	for _, name := range []string{"LICENSE", "PATENTS"} {
		l, err := read(filepath.Join(at[0], name), at[0], "Go, its library, "+at[1])
		if err != nil {
			return nil, err
		}
		list = append(list, l)
	}
	return list, nil
}
