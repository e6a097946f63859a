package main

import (
	"bytes"

	"maltwright/cmd/sheet"
	"maltwright/cmd/words"
)

// write puts the sheet where it is wanted.
func (c Sheet) write(w *World, s sheet.Sheet, write sheetWriter) error {
	var text bytes.Buffer
	lost, err := write(&text, s)
	if err != nil {
		return failed("cannot write: %v", err)
	}
	if lost != "" {
		w.aside(lost + "; a browser prints them: --format html")
	}
	if c.Out == "" {
		if _, err := w.Out.Write(text.Bytes()); err != nil {
			return failed("cannot write: %v", err)
		}
		return nil
	}
	o := w.writing
	o.Create = true
	err = w.editWith(o, c.Out, w.at(c.Out), func(old []byte) ([]byte, error) {
		if old != nil && !isSheet(old) {
			return nil, usage("%s is there already, and is no sheet; name another file", c.Out)
		}
		return text.Bytes(), nil
	})
	if err == nil {
		w.say("%s: %s", words.Safe(c.Out), words.Plural(len(s.Pages), "page"))
	}
	return err
}

// isSheet tells whether a file may be written over: it is a page of a browser or a PDF.
func isSheet(text []byte) bool {
	return len(text) == 0 || bytes.HasPrefix(text, []byte("%PDF-")) || bytes.HasPrefix(text, []byte("<!doctype html>"))
}
