package folder

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"maltwright/check"
	"maltwright/cmd/recall"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
)

// index is what the folder holds, as it was seen last. A file is read again where its size, its
// time or the file itself is another than it was, and loaded again where a text is another that its
// meaning goes by: its own, or one that it uses.
type index struct {
	mu    sync.Mutex
	path  string // absolute
	root  *os.Root
	files map[string]*seen // by their path below the folder
	units map[string]*unit
	names map[ID]place
	round int // of looking, so that a file is looked at once in each
}

// unit is a process file with what it means.
type unit struct {
	File
	at      string // below the folder, with /
	house   *model.House
	found   []finding.Finding
	needs   map[string][sha256.Size]byte // of each file that it was read from
	sum     []byte                       // of all of them
	batches []*standing                  // as house.Batches

	processes []ID // as house.Processes
	checking  once[check.Report]
}

// place is where a batch or a process is found.
type place struct {
	unit  *unit
	nth   int
	batch bool
}

// id names a batch or a process by where it lies and what it is called; nth tells those of one
// name in one file apart. The folder is in it: a browser keeps readings by the address of a page, where
// another folder may be shown next, with a batch of the same name.
func (x *index) id(kind, at, name string, nth int) ID {
	sum := sha256.Sum256([]byte(strings.Join([]string{x.path, kind, at, name, fmt.Sprint(nth)}, "\x00")))
	return ID(hex.EncodeToString(sum[:8]))
}

// scan looks at the folder, and gives its units in the order of their paths, and what cannot be read.
func (x *index) scan() (list []*unit, unread []Unread, err error) {
	x.mu.Lock()
	defer x.mu.Unlock()
	x.round++
	names, unread, err := x.list()
	if err != nil {
		return nil, nil, err
	}
	known, units := recall.Known{}, map[string]*unit{}
	for _, at := range names {
		u, err := x.unit(at, known)
		if err != nil {
			unread = append(unread, Unread{at, Plain(err)})
			continue
		}
		units[at], list = u, append(list, u)
	}
	x.units = units
	x.forget()
	x.name(list)
	return list, unread, nil
}

// unit gives a process file as it stands.
func (x *index) unit(at string, known recall.Known) (*unit, error) {
	s := x.file(at)
	if s.err != nil {
		return nil, s.err
	}
	if was := x.units[at]; was != nil && x.holds(was) {
		return was, nil
	}
	u := &unit{at: at, needs: map[string][sha256.Size]byte{at: s.sum}}
	u.File = File{Name: filepath.FromSlash(at), Path: filepath.Join(x.path, filepath.FromSlash(at)), Text: s.text, Root: x.path, Dir: path.Dir(at)}
	u.house, u.found = read.Load(u.Name, u.Text, u.Dir, u.Past(reader{x, u.needs}, known))
	u.name(x)
	u.sum = sumOfAll(u.needs)
	return u, nil
}

// name gives the batches and processes of a unit their IDs.
func (u *unit) name(x *index) {
	times := map[string]int{}
	next := func(kind, name string) ID {
		id := x.id(kind, u.at, name, times[kind+name])
		times[kind+name]++
		return id
	}
	for _, b := range u.house.Batches {
		u.batches = append(u.batches, standingOf(u, next("batch", b.Name), b))
	}
	for _, p := range u.house.Processes {
		u.processes = append(u.processes, next("process", p.Name))
	}
}

// sumOfAll tells apart what a unit was read from.
func sumOfAll(needs map[string][sha256.Size]byte) []byte {
	all := sha256.New()
	for _, at := range slices.Sorted(maps.Keys(needs)) {
		fmt.Fprintf(all, "%s %x\n", at, needs[at])
	}
	return all.Sum(nil)
}

// holds tells whether a unit still means what it meant.
func (x *index) holds(u *unit) bool {
	for at, sum := range u.needs {
		if x.file(at).sum != sum {
			return false
		}
	}
	return true
}

// name gives every batch and process its ID.
func (x *index) name(list []*unit) {
	x.names = map[ID]place{}
	for _, u := range list {
		for i, s := range u.batches {
			x.names[s.id] = place{u, i, true}
		}
		for i, id := range u.processes {
			x.names[id] = place{u, i, false}
		}
	}
}

// find gives what an ID names, as it stands now.
func (x *index) find(id ID, batch bool) (place, error) {
	if _, _, err := x.scan(); err != nil {
		return place{}, err
	}
	x.mu.Lock()
	defer x.mu.Unlock()
	p, ok := x.names[id]
	if !ok || p.batch != batch {
		return place{}, &Gone{id}
	}
	return p, nil
}
