package folder

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"maltwright/cmd/journal"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/regular"
)

// forgotten is how long nothing is written of a batch that is still taken to be under way.
const forgotten = 30 * 24 * time.Hour

// GoesOn tells whether a batch is under way: its malt is not weighed, and the last that is written
// of it is not long ago.
func GoesOn(b *model.Batch, now time.Time) bool { return open(b) && now.Sub(lastOf(b)) <= forgotten }

// open tells whether a batch was begun, and its malt not weighed.
func open(b *model.Batch) bool {
	return !b.Began.IsZero() && !slices.ContainsFunc(b.Readings, model.Clean)
}

// lastOf is the time of the last that is written of a batch.
func lastOf(b *model.Batch) time.Time {
	last := b.Began.Time
	for _, x := range b.Lines() {
		if x.When().After(last) {
			last = x.When().Time
		}
	}
	return last
}

// Found is a batch in a record.
type Found struct {
	Record
	Model *model.Batch
}

// Beside lists the process files that lie in a folder itself, by their names. The error is a *Failed.
func Beside(folder string) (names []string, err error) {
	list, err := os.ReadDir(folder)
	if err != nil {
		return nil, &Failed{folder, Plain(err), err}
	}
	for _, e := range list {
		if e.Type().IsRegular() && strings.HasSuffix(e.Name(), Extension) {
			names = append(names, e.Name())
		}
	}
	return names, nil
}

// Batches gives the batches of the records among files. A file that cannot be read holds none.
func Batches(names []string, read func(name string) (File, error)) (list []Found) {
	for _, name := range names {
		f, err := read(name)
		if err != nil || len(journal.Batches(f.Name, f.Text)) == 0 {
			continue
		}
		house, _, err := f.Load()
		if err != nil {
			continue
		}
		for _, b := range house.Batches {
			list = append(list, Found{Record{File: f, Batch: b.Name}, b})
		}
	}
	return list
}

// Read reads a file at an absolute path, which is named by that. Use may read its root.
func Read(path, root string) (File, error) {
	f, err := regular.Open(path)
	if err != nil {
		return File{}, &Failed{path, Plain(err), err}
	}
	defer f.Close()
	text, err := read.ReadAll(f)
	if err != nil {
		return File{}, &Failed{path, Plain(err), err}
	}
	dir, err := filepath.Rel(root, filepath.Dir(path))
	if err != nil || !filepath.IsLocal(dir) {
		root, dir = filepath.Dir(path), "."
	}
	return File{Name: path, Path: path, Text: text, Root: root, Dir: filepath.ToSlash(dir)}, nil
}
