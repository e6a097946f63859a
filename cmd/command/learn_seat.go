package command

import (
	"cmp"
	"path/filepath"
	"slices"
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/infer/learn"
)

// seat is where a house block may stand, and which files it has to use there for the
// lots and kilns that it names.
type seat struct {
	beside string   // shown: the file in whose folder it belongs; "" for none in particular
	inside string   // shown: the file that must hold it, since it defines them beside a process that is to use the block
	uses   []string // paths from that folder
}

// located notes where the files of a record lie, while its root is open.
func (r record) located() record {
	r.files = map[*source.File]string{}
	for _, f := range r.house.Files {
		if at := below(r.in, r.root, f); at != "" {
			r.files[f] = filepath.Join(r.in.root, filepath.FromSlash(at))
		}
	}
	return r
}

// seatOf finds the seat of what was learnt. A file that a process stands in cannot be
// used by the block: the process is to use the block, and that would be a circle.
func (w World) seatOf(all []record, r *learn.Result) seat {
	paths, processes := map[*source.File]string{}, map[string]bool{}
	for _, x := range all {
		for f, path := range x.files {
			paths[f] = path
		}
		processes[paths[x.batch.Process.Place.File]] = true
	}
	var s seat
	folder, seen := "", map[string]bool{}
	for _, f := range definitions(r) {
		path := paths[f]
		switch {
		case seen[path]:
			continue
		case processes[path] || path == "":
			return seat{inside: w.shown(path)}
		case s.beside == "":
			s.beside, folder = w.shown(path), filepath.Dir(path)
		}
		seen[path] = true
		rel, err := filepath.Rel(folder, path)
		if err != nil { // on another drive
			rel = path
		}
		s.uses = append(s.uses, filepath.ToSlash(rel))
	}
	return s
}

// shown is a path as somebody in the working folder writes it.
func (w World) shown(path string) string {
	if path == "" {
		return "the file of the process" // which came from standard input
	}
	if rel, err := filepath.Rel(w.Folder, path); err == nil && filepath.IsLocal(rel) {
		return rel
	}
	return path
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

// nameOf is the name of the house block: as asked, or that of the batch's site.
func nameOf(asked string, b *model.Batch) string {
	site := ""
	if s := b.Process.Site; s != nil {
		site, _, _ = strings.Cut(s.Name, ",")
	}
	return cmp.Or(asked, strings.TrimSpace(site), "house")
}

// names lists the names of batches as a sentence does.
func names(batches []*model.Batch) string {
	var list []string
	for _, b := range batches {
		list = append(list, b.Name)
	}
	return sentenceList(list)
}

func sentenceList(list []string) string {
	if n := len(list); n > 1 {
		return strings.Join(list[:n-1], ", ") + " and " + list[n-1]
	}
	return strings.Join(list, "")
}

// processesOf lists the processes of batches, each once.
func processesOf(batches []*model.Batch) string {
	var list []string
	for _, b := range batches {
		if !slices.Contains(list, b.Process.Name) {
			list = append(list, b.Process.Name)
		}
	}
	return sentenceList(list)
}
