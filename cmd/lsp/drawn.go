package lsp

import (
	"crypto/sha256"
	"encoding/hex"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"unicode"

	"maltwright/cmd/folder"
)

// drawn is where pictures are written: a folder of the cache, since they are made anew whenever they are
// asked for, and an editor shows files.
type drawn struct {
	cache string // "" where nothing may be kept: then it is a folder of its own
	once  sync.Once
	dir   string
	err   error
}

// put writes a picture of a document, over the one that was there, and gives its path.
func (d *drawn) put(document, of, ending string, made []byte) (string, error) {
	d.once.Do(func() {
		if d.cache == "" {
			d.dir, d.err = os.MkdirTemp("", "maltwright-")
			return
		}
		d.dir = filepath.Join(d.cache, "drawn")
		d.err = os.MkdirAll(d.dir, 0o700)
	})
	if d.err != nil {
		return "", d.err
	}
	sum := sha256.Sum256([]byte(document + "\x00" + of))
	name := called(strings.TrimSuffix(filepath.Base(document), folder.Extension)) + "-" + hex.EncodeToString(sum[:4]) + ending
	path := filepath.Join(d.dir, name)
	return path, os.WriteFile(path, made, 0o600)
}

// called is a name that every system takes for a file: letters, digits, blanks and -_. of it, and not too many.
// A buffer that is no file may be called anything.
func called(name string) string {
	const most = 60
	letters := []rune(strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || strings.ContainsRune(" -_.", r) {
			return r
		}
		return '-'
	}, name))
	return string(letters[:min(most, len(letters))])
}

// clear takes away a folder of its own.
func (d *drawn) clear() {
	if d.cache == "" && d.dir != "" {
		_ = os.RemoveAll(d.dir) // it is a folder for what passes
	}
}
