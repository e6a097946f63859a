package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// noTerminal refuses to write onto a terminal what is no text for one.
func (w *World) noTerminal(format string) error {
	if what := map[string]string{"pdf": "a PDF", "html": "a page for a browser"}[format]; what != "" && w.Terminal {
		return usage("%s is no text for a terminal; write it into a file, with > and its name behind the command", what)
	}
	return nil
}

// room tells whether a file may be made where it is wanted.
func (w *World) room(name string) error {
	if name == "" {
		return nil
	}
	path := w.at(name)
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return usage("%s is a folder; name a file in it", name)
	}
	folder := filepath.Dir(path)
	if info, err := os.Stat(folder); errors.Is(err, fs.ErrNotExist) || err == nil && !info.IsDir() {
		return failed("%s cannot be written: there is no folder %s", name, filepath.Dir(name))
	}
	return nil
}

// onPaper tells which letters a PDF that was written lacks.
func (w *World) onPaper(lost string, err error) error {
	if err == nil && lost != "" {
		w.aside(lost)
	}
	return err
}
