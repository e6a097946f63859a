package lessons

import (
	"path/filepath"

	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/infer/learn"
)

// Files is where the files of the records lie. It is only reckoned with; none is opened.
type Files struct {
	Paths  map[*source.File]string // absolute; what came from standard input has none
	Folder string                  // paths below it are told relative to it
}

// Seat is where the house block may stand, and which files it has to use there for the
// lots and kilns that it names.
type Seat struct {
	Beside string   // the file in whose folder it belongs; "" for none in particular
	Inside *string  // the file that must hold it, since it defines them beside a process that is to use the block; "" for standard input
	Uses   []string // paths from that folder, with slashes
}

// seat finds the seat of what was learnt. A file that a process stands in cannot be used
// by the block: the process is to use the block, and that would be a circle.
func (f Files) seat(r *learn.Result) Seat {
	processes := map[string]bool{}
	for _, b := range asked(r) {
		processes[f.Paths[b.Process.Place.File]] = true
	}
	var s Seat
	folder, seen := "", map[string]bool{}
	for _, file := range definitions(r) {
		path := f.Paths[file]
		switch {
		case seen[path]:
			continue
		case processes[path] || path == "":
			shown := f.shown(path)
			return Seat{Inside: &shown}
		case s.Beside == "":
			s.Beside, folder = f.shown(path), filepath.Dir(path)
		}
		seen[path] = true
		rel, err := filepath.Rel(folder, path)
		if err != nil { // on another drive
			rel = path
		}
		s.Uses = append(s.Uses, filepath.ToSlash(rel))
	}
	return s
}

// asked are all batches that have a process, used or not.
func asked(r *learn.Result) []*model.Batch {
	list := append([]*model.Batch{}, r.Batches...)
	for _, x := range r.Left {
		if x.Batch.Process != nil {
			list = append(list, x.Batch)
		}
	}
	return list
}

// definitions are the files that define the lots and kilns which the block names.
func definitions(r *learn.Result) []*source.File {
	var list []*source.File
	for _, f := range r.Factors {
		switch {
		case !f.Known():
		case f.Grain != nil:
			list = append(list, f.Grain.Place.File)
		case f.Kiln != nil:
			list = append(list, f.Kiln.Place.File)
		}
	}
	return list
}

// shown is a path as somebody in the working folder writes it.
func (f Files) shown(path string) string {
	if path == "" {
		return ""
	}
	if rel, err := filepath.Rel(f.Folder, path); err == nil && filepath.IsLocal(rel) {
		return rel
	}
	return path
}
