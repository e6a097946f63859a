package folder

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"maltwright/cmd/journal"
	"maltwright/cmd/recall"
	"maltwright/cmd/repository"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
)

// nameFor is the name of the new batch: the one that was asked for, or the next of its year.
func (f File) nameFor(asked string, year int) (string, error) {
	taken, err := f.taken()
	if err != nil {
		return "", err
	}
	switch {
	case asked == "":
		return journal.Next(taken, year), nil
	case asked != words.Safe(asked) || strings.ContainsAny(asked, `/\:*?"<>|`) || strings.HasPrefix(asked, ".") || strings.TrimSpace(asked) != asked || len(asked) > mostName:
		return "", wrong("name", asked, " cannot be the name of a file")
	case slices.Contains(taken, asked):
		return "", &Refused{&Wrong{"name", "", fmt.Sprintf("there is a batch %q beside %s already", asked, f.Name)}}
	}
	return asked, nil
}

// mostName is how long the name of a batch may be as that of a file, in bytes.
const mostName = 100

// taken lists the batches in the files of the folder of a file, and the names of those files,
// which a new one cannot have either.
func (f File) taken() (names []string, err error) {
	folder := filepath.Dir(f.Path)
	list, err := os.ReadDir(folder)
	if err != nil {
		return nil, &Failed{folder, Plain(err), err}
	}
	for _, e := range list {
		own, is := strings.CutSuffix(e.Name(), Extension)
		if !is {
			continue
		}
		names = append(names, own)
		if !e.Type().IsRegular() {
			continue
		}
		if other, err := Read(filepath.Join(folder, e.Name()), f.Root); err == nil { // one that cannot be read names no batch
			names = append(names, journal.Batches(other.Name, other.Text)...)
		}
	}
	return names, nil
}

// committed is the revision of git that holds the text of a process, "" where the latest one does
// not.
func (f File) committed(p *model.Process) string {
	root, err := read.OpenRoot(f.Root)
	if err != nil {
		return ""
	}
	defer root.Close()
	revision := repository.Head(f.Root)
	past := recall.Reader{Reader: root, Root: f.Root, Below: func(s *source.File) string { return f.Below(root, s) }}
	if revision == "" || !past.Holds(p, revision) {
		return ""
	}
	return revision
}

// Kept tells whether git keeps the text of the process, or there is no git that could.
func (o Opening) Kept() bool {
	_, err := repository.Top(filepath.Dir(o.Path))
	return o.Revision != "" || err != nil
}
