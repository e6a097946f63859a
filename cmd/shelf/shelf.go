// Package shelf keeps small results in a folder from one run of the program to the next: in
// the user's own cache, which may be deleted at any time.
//
// # How it works
//
// A result stands in a file of its own, named by the SHA-256 of the program that made it and
// of its key, so that another program, or the same one built anew, never finds it (Program).
// It is written beside its place and renamed into it, so that nobody reads half of one. When
// the folder has grown beyond its bound the files that were not asked for the longest go.
// Only files that are named like a result are looked at, read or deleted. Nothing that goes
// wrong here is an error: a shelf that cannot be read is empty, and one that cannot be
// written forgets.
package shelf

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"time"

	"maltwright/lang/regular"
	"maltwright/lang/sorted"
)

// Bounds of a shelf.
const (
	Most    = 32 << 20 // bytes of all results together
	MostOne = 4 << 20  // bytes of one of them
)

// Shelf is a folder of results. Its zero value keeps nothing.
type Shelf struct {
	folder  string
	program string
	most    int64
	lasts   time.Duration // how long after it was last asked for a result goes; 0: never by its age
}

// In gives the shelf in a folder, which need not be there yet, for the results of a program.
// Without the one or the other it keeps nothing.
func In(folder, program string) *Shelf {
	if program == "" {
		folder = ""
	}
	return &Shelf{folder: folder, program: program, most: Most}
}

// For gives the shelf with results that go when they were not asked for so long.
func (s *Shelf) For(d time.Duration) *Shelf {
	out := *s
	out.lasts = d
	return &out
}

// Program tells the running program apart from every other, and from itself before it was
// built anew: by the SHA-256 of its file. It is "" where that cannot be read.
func Program() string {
	path, err := os.Executable()
	if err != nil {
		return ""
	}
	return programOf(path)
}

func programOf(path string) string {
	f, err := regular.Open(path)
	if err != nil {
		return ""
	}
	defer f.Close()
	sum := sha256.New()
	if _, err := io.Copy(sum, f); err != nil {
		return ""
	}
	return hex.EncodeToString(sum.Sum(nil))
}

// results are what the files of a shelf are called.
var results = regexp.MustCompile(`^[0-9a-f]{64}\.kept$`)

func (s *Shelf) path(key string) string {
	sum := sha256.Sum256([]byte(s.program + "\n" + key))
	return filepath.Join(s.folder, hex.EncodeToString(sum[:])+".kept")
}

// Get gives what is kept under a key, nil where there is nothing.
func (s *Shelf) Get(key string) []byte {
	if s.folder == "" {
		return nil
	}
	f, err := regular.Open(s.path(key))
	if err != nil {
		return nil
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, MostOne+1))
	if err != nil || len(data) > MostOne {
		return nil
	}
	now := time.Now()
	_ = os.Chtimes(s.path(key), now, now) // it was asked for
	return data
}

// Put keeps data under a key, whole or not at all.
func (s *Shelf) Put(key string, data []byte) {
	if s.folder == "" || len(data) > MostOne || os.MkdirAll(s.folder, 0o700) != nil {
		return
	}
	f, err := os.CreateTemp(s.folder, "new-*.tmp")
	if err != nil {
		return
	}
	_, err = f.Write(data)
	if err = cmp.Or(err, f.Close()); err == nil {
		err = os.Rename(f.Name(), s.path(key))
	}
	if err != nil {
		_ = os.Remove(f.Name())
	}
	s.prune()
}

// prune takes out what was not asked for the longest, until the rest is within the bound,
// and what a run that was ended has left half written.
func (s *Shelf) prune() {
	var kept []fs.FileInfo
	sum := int64(0)
	entries, _ := os.ReadDir(s.folder)
	for _, e := range entries {
		info, err := e.Info()
		switch half, _ := filepath.Match("new-*.tmp", e.Name()); {
		case err != nil || !info.Mode().IsRegular():
		case half && time.Since(info.ModTime()) > time.Hour, s.lasts > 0 && results.MatchString(e.Name()) && time.Since(info.ModTime()) > s.lasts:
			_ = os.Remove(filepath.Join(s.folder, e.Name()))
		case results.MatchString(e.Name()):
			kept, sum = append(kept, info), sum+info.Size()
		}
	}
	sorted.Stable(kept, func(a, b fs.FileInfo) int { return a.ModTime().Compare(b.ModTime()) })
	for _, info := range kept {
		if sum <= s.most {
			return
		}
		if err := os.Remove(filepath.Join(s.folder, info.Name())); err == nil || errors.Is(err, fs.ErrNotExist) { // another run may have been quicker
			sum -= info.Size()
		}
	}
}
