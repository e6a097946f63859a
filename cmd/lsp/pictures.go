package lsp

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"time"
	"unicode"
)

// pictureFolder is where charts and sheets are kept, in the folder of what is kept.
const pictureFolder = "pictures"

// pictureLasts is how long a picture that was drawn is kept.
const pictureLasts = 30 * 24 * time.Hour

var errNoCache = errors.New("there is no cache folder to write it to; maltwright chart and maltwright sheet write a file of your own")

// put writes what was drawn of a file: one picture of each name and kind, whole or not at all.
func (s *session) put(of, name, ending string, data []byte) (string, error) {
	if s.options.Cache == "" {
		return "", errNoCache
	}
	folder := filepath.Join(s.options.Cache, pictureFolder)
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return "", err
	}
	old(folder)
	sum := sha256.Sum256([]byte(of + "\x00" + name))
	at := filepath.Join(folder, plainly(name)+"-"+hex.EncodeToString(sum[:6])+ending)
	f, err := os.CreateTemp(folder, "new-*.tmp")
	if err != nil {
		return "", err
	}
	_, err = f.Write(data)
	if err = cmp.Or(err, f.Close()); err == nil {
		err = os.Rename(f.Name(), at)
	}
	if err != nil {
		_ = os.Remove(f.Name())
		return "", err
	}
	return at, nil
}

// longestName is how many letters of a name stand in that of a file.
const longestName = 40

// plainly is a name of letters, digits and hyphens.
func plainly(name string) string {
	plain := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return r
		}
		return '-'
	}, name)
	if letters := []rune(plain); len(letters) > longestName {
		plain = string(letters[:longestName])
	}
	return plain
}

// old takes out pictures that were drawn long ago.
func old(folder string) {
	entries, _ := os.ReadDir(folder)
	for _, e := range entries {
		info, err := e.Info()
		if err == nil && info.Mode().IsRegular() && time.Since(info.ModTime()) > pictureLasts {
			_ = os.Remove(filepath.Join(folder, e.Name()))
		}
	}
}
