package founding

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
)

// Look reads what a folder holds. A folder that is not there yet holds nothing. The caller
// closes what close gives.
func Look(folder string) (there There, close func() error, err error) {
	close = func() error { return nil }
	if _, err := os.Stat(folder); os.IsNotExist(err) {
		return There{}, close, nil
	}
	root, err := read.OpenRoot(folder)
	if err != nil {
		return There{}, close, err
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		return There{}, root.Close, err
	}
	var files []File
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
		if !strings.EqualFold(filepath.Ext(e.Name()), ".malt") {
			continue
		}
		text, err := root.Read(e.Name())
		if err != nil || len(text) > source.MaxBytes {
			continue // what cannot be read is added to by nobody; its name is still taken
		}
		files = append(files, File{Name: e.Name(), Text: text, Was: text})
	}
	there = Among(files, root)
	there.Taken = names
	return there, root.Close, nil
}

// texts are files that are read by their name alone.
type texts []File

func (list texts) Read(path string) ([]byte, error) {
	for _, f := range list {
		if f.Name == path {
			return f.Text, nil
		}
	}
	return nil, os.ErrNotExist
}

// Among gives what a folder holds of which these are the files; r reads what they use, one
// another where it is nil. The house is the file with the most facts of one.
func Among(files []File, r read.Reader) There {
	if r == nil {
		r = texts(files)
	}
	there := There{Files: files, Root: r}
	for _, f := range files {
		there.Taken = append(there.Taken, f.Name)
	}
	most := 0
	for _, f := range files {
		house, _ := read.Load(f.Name, f.Text, ".", r)
		if n := own(house); n > most {
			most, there.Main, there.House = n, f.Name, house
		}
	}
	return there
}

// own counts the facts that stand in the main file of a house itself.
func own(h *model.House) (n int) {
	main := h.Files[0]
	of := func(f *source.File) {
		if f == main {
			n++
		}
	}
	for _, x := range h.Grains {
		of(x.Place.File)
	}
	for _, x := range h.Sites {
		of(x.Place.File)
	}
	for _, x := range h.Vessels {
		of(x.Place.File)
	}
	for _, x := range h.Floors {
		of(x.Place.File)
	}
	for _, x := range h.Kilns {
		of(x.Place.File)
	}
	return n
}

// text is a file of the folder, nil where there is none.
func (t There) text(name string) []byte {
	text, _ := texts(t.Files).Read(name)
	return text
}

// fahrenheit tells whether the house that is there writes °F.
func (t There) fahrenheit() bool {
	return slices.ContainsFunc(t.Files, func(f File) bool { return f.Name == t.Main && bytes.Contains(f.Text, []byte("°F")) })
}
