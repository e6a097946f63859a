package folder

import (
	"crypto/sha256"
	"fmt"
	"io/fs"
	"os"
	"path"
	"strings"
	"time"

	"maltwright/lang/read"
	"maltwright/lang/regular"
)

// seen is a file as it was read.
type seen struct {
	info  fs.FileInfo
	when  time.Time // when it was read
	text  []byte
	err   error
	sum   [sha256.Size]byte
	round int
}

const (
	mostFiles   = 5000            // process files of a folder that are read
	mostEntries = 100_000         // files and folders that are looked at
	settles     = 2 * time.Second // within which a file may change again without a sign of it in its time
)

// list gives the paths of the process files below the folder. Hidden folders are not entered, and
// links are not followed.
func (x *index) list() (names []string, unread []Unread, err error) {
	entries := 0
	err = fs.WalkDir(x.root.FS(), ".", func(at string, d fs.DirEntry, err error) error {
		entries++
		switch {
		case err != nil && at == ".":
			return &Failed{x.path, Plain(err), err}
		case err != nil:
			unread = append(unread, Unread{at, Plain(err)})
			return fs.SkipDir
		case d.IsDir() && at != "." && strings.HasPrefix(d.Name(), "."):
			return fs.SkipDir
		case d.Type().IsRegular() && strings.HasSuffix(at, Extension):
			names = append(names, at)
		}
		if entries >= mostEntries || len(names) >= mostFiles {
			unread = append(unread, Unread{at, fmt.Sprintf("behind it nothing is read: the folder holds more than %d files, or %d process files", mostEntries, mostFiles)})
			return fs.SkipAll
		}
		return nil
	})
	return names, unread, err
}

// file is a file of the folder as it stands.
func (x *index) file(at string) *seen {
	at = path.Clean(at)
	was := x.files[at]
	if was != nil && was.round == x.round {
		return was
	}
	info, err := x.root.Stat(at)
	if was != nil && err == nil && was.same(info) {
		was.round = x.round
		return was
	}
	s := x.read(at, info, err)
	s.round = x.round
	x.files[at] = s
	return s
}

// same tells whether a file can only be what was read.
func (s *seen) same(now fs.FileInfo) bool {
	return s.err == nil && os.SameFile(s.info, now) && s.info.Size() == now.Size() && s.info.ModTime().Equal(now.ModTime()) && s.when.Sub(now.ModTime()) > settles
}

func (x *index) read(at string, info fs.FileInfo, err error) *seen {
	s := &seen{info: info, when: time.Now(), err: err}
	if err != nil {
		return s
	}
	f, err := regular.OpenIn(x.root, at)
	if err != nil {
		s.err = err
		return s
	}
	defer f.Close()
	if s.info, s.err = f.Stat(); s.err == nil {
		s.text, s.err = read.ReadAll(f)
	}
	s.sum = sha256.Sum256(s.text)
	return s
}

// reader reads the files of the index, and keeps which a unit was read from.
type reader struct {
	x     *index
	needs map[string][sha256.Size]byte
}

// Read gives the text of a file of the folder.
func (r reader) Read(at string) ([]byte, error) {
	s := r.x.file(at)
	r.needs[path.Clean(at)] = s.sum
	return s.text, s.err
}

// forget lets go of files that were not asked for in this round.
func (x *index) forget() {
	for at, s := range x.files {
		if s.round != x.round {
			delete(x.files, at)
		}
	}
}
