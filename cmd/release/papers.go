package main

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// papers are the files that go with every program.
type papers []entry

// carried are the files and folders of the repository that go with a program: what its first page leads to.
var carried = []string{"README.md", "LICENSE", "DEVELOPERS.md", "docs", "examples"}

// stays are the folders below those that nobody needs who does not build the project.
var stays = []string{"docs/editors/vscode/test/", "docs/editors/vscode/trial/"}

// goesAlong tells whether a file of the repository goes with a program.
func goesAlong(name string) bool {
	return !slices.ContainsFunc(stays, func(folder string) bool { return strings.HasPrefix(name, folder) })
}

// completions are the scripts for shells, each under the name that its shell looks for.
var completions = map[string]string{"bash": "maltwright.bash", "zsh": "_maltwright", "fish": "maltwright.fish"}

// papers gathers what goes with every program. The manual and the completions are written by the program itself, built for
// this computer.
func (r release) papers(ctx context.Context) (list papers, err error) {
	names, err := output(ctx, r.root, nil, "git", append([]string{"ls-files", "-z", "--"}, carried...)...)
	if err != nil {
		return nil, err
	}
	for _, name := range strings.Split(strings.TrimRight(names, "\x00"), "\x00") {
		if !goesAlong(name) {
			continue
		}
		data, err := os.ReadFile(filepath.Join(r.root, filepath.FromSlash(name)))
		if err != nil {
			return nil, err
		}
		list = append(list, entry{name, 0o644, data})
	}
	self := filepath.Join(r.scratch, "here", here().executable())
	if err := r.build(ctx, here(), self); err != nil {
		return nil, err
	}
	for shell, name := range completions {
		script, err := output(ctx, r.scratch, nil, self, "completion", shell)
		if err != nil {
			return nil, err
		}
		list = append(list, entry{path.Join("completions", name), 0o644, []byte(script)})
	}
	manual := filepath.Join(r.scratch, "man")
	if _, err := output(ctx, r.scratch, nil, self, "man", "--into", manual); err != nil {
		return nil, err
	}
	pages, err := below(manual, "man")
	return slices.Concat(list, pages), err
}

// below gives the files of a folder, under a folder of another name.
func below(folder, name string) (list []entry, err error) {
	tree := os.DirFS(folder)
	err = fs.WalkDir(tree, ".", func(at string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(tree, at)
		list = append(list, entry{path.Join(name, at), 0o644, data})
		return err
	})
	return list, err
}

// with gives the papers together with a program and the licences of its parts.
func (list papers) with(p program) ([]entry, error) {
	data, err := os.ReadFile(p.path)
	if err != nil {
		return nil, fmt.Errorf("the program is gone: %w", err)
	}
	return append(slices.Clone(list), entry{"NOTICE", 0o644, p.notice}, entry{p.target.executable(), 0o755, data}), nil
}
